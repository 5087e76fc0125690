package greyground.app.bite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import greyground.app.recipe.JobPlate;
import greyground.app.recipe.JobWords;
import greyground.app.recipe.SourceArt;
import greyground.film.job.Job;
import greyground.plan.BenchOrder;
import greyground.plan.BiteLog;
import greyground.plan.PlanRequest;
import greyground.plate.VirtualResponse;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A plate of an invented shop, proofed twice, whose bath secretly bites slower than the workshop believes. */
class BiteLogIT {
    private static final double FIRST_DEPTH = 13;
    private static final double SECOND_DEPTH = 20;

    @TempDir
    private Path folder;

    private static PlannedPlate plate() {
        Workshop shop = Workshop.assumed();
        SourceArt none = new SourceArt("", "invented", "", 1, 1);
        Job job = new JobWords(Map.of("plate", "80x60mm", "resolution", "720", "date", "2026-03-02"))
                .job(Optional.empty(), none, shop, "2026-03-02");
        return new PlannedPlate(job, shop, BenchOrder.plan(shop, new PlanRequest(job, 0.4, "none", "")), List.of())
                .in(shop);
    }

    /** What a proof of the virtual plate bitten so deep shows, with a spread of 0.7 L*. */
    private static VirtualResponse proof(PlannedPlate plate, double depth) {
        JobPlate virtual = JobPlate.of(plate.workshop(), plate.job());
        return virtual.response(virtual.conditions(depth));
    }

    private Path table(VirtualResponse proof, long seed) throws Exception {
        Random random = new Random(seed);
        StringBuilder csv = new StringBuilder("coverage;L*\n");
        for (int percent = 0; percent <= 80; percent += 10) {
            double lightness = Math.min(100, proof.lightness(percent / 100.0) + 0.7 * random.nextGaussian());
            csv.append(
                    String.format(Locale.ROOT, "%d;%.1f%n", percent, lightness).replace('.', ','));
        }
        return Files.writeString(folder.resolve(seed + ".csv"), csv);
    }

    private Path json(VirtualResponse proof) throws Exception {
        StringBuilder levels = new StringBuilder();
        for (int percent = 0; percent <= 80; percent += 10) {
            levels.append(levels.isEmpty() ? "" : ",")
                    .append(String.format(
                            Locale.ROOT,
                            "{\"coverage\":%.2f,\"lightness\":%.3f,\"halfWidth\":0.8,\"repeats\":4}",
                            percent / 100.0,
                            proof.lightness(percent / 100.0)));
        }
        return Files.writeString(folder.resolve("read.json"), "{\"levels\":[" + levels + "]}");
    }

    @Test
    void proofsTellDepthAndRateAndWhatMoreMinutesDo() throws Exception {
        PlannedPlate plate = plate();
        Path first = table(proof(plate, FIRST_DEPTH), 3);
        Path second = json(proof(plate, SECOND_DEPTH));
        BiteWords words = new BiteWords(Map.of("bitten", "8min\n14min", "measured", first + "\n" + second));
        BenchAdvice advice = BenchAdvice.of(plate, words, false, LocalDate.of(2026, 3, 4), Progress.NONE);
        BiteLog log = advice.log().orElseThrow().log();
        BiteLog.State before = log.states().get(0);
        BiteLog.State now = log.states().get(1);
        assertEquals(FIRST_DEPTH, before.depthMicrometres(), 1.96 * before.standardError());
        assertEquals(SECOND_DEPTH, now.depthMicrometres(), 1.96 * now.standardError());
        assertTrue(before.standardError() < 1, before.toString());
        double rate = (SECOND_DEPTH - FIRST_DEPTH) / 6;
        assertEquals(
                rate, log.stretches().get(1).rate(), 2 * log.stretches().get(1).standardError());
        assertTrue(advice.text().startsWith("BITE LOG"), advice.text());
        assertTrue(advice.text().contains("CARE"), advice.text());
        JsonNode tree = new JsonMapper().readTree(advice.json()).path("biteLog");
        assertEquals(2, tree.path("states").size());
        assertEquals(log.rows().size(), tree.path("more").size());
    }

    @Test
    void logsThatDoNotPairAreRefused() throws Exception {
        for (Map<String, String> given : List.of(
                Map.of("measured", "a.csv"),
                Map.of("bitten", "8min\n14min", "measured", "a.csv"),
                Map.of("bitten", "8min\n14min", "proof-depth", "18um"),
                Map.of("bitten", "8min", "measured", "a.csv", "proof-density", "1.1"),
                Map.of("bitten", "8min", "measured", "a.csv", "depth", "30um"))) {
            assertThrows(Refusal.class, () -> new BiteWords(given), given.toString());
        }
        PlannedPlate plate = plate();
        for (String text : List.of(
                "coverage,tone\n10,50\n",
                "coverage,density\n10,7\n",
                "coverage,L*\n10,120\n",
                "{\"levels\":[{\"coverage\":0.5}]}",
                "{\"tones\":[]}",
                "{")) {
            Path file = Files.writeString(folder.resolve("bad.txt"), text);
            BiteWords words = new BiteWords(Map.of("bitten", "8min", "measured", file.toString()));
            assertThrows(
                    Refusal.class,
                    () -> BenchAdvice.of(plate, words, false, LocalDate.of(2026, 3, 4), Progress.NONE),
                    text);
        }
    }
}
