package greyground.app.kept;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import greyground.app.recipe.JobPlate;
import greyground.film.compose.GrainPatches;
import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.film.job.Placing;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.plan.BenchConditions;
import greyground.plate.FilmPatches;
import greyground.plate.PlateProcess;
import greyground.plate.VirtualPlate;
import greyground.plate.VirtualResponse;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.tone.RangeMapping;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ResponseStoreTest {
    private static final Resolution COARSE = new Resolution(720);
    private static final Grain GRAIN = new Grain.Stochastic(300, 5);

    @TempDir
    Path folder;

    private static VirtualPlate plate(double depth) {
        return new VirtualPlate(
                BenchConditions.ofDepth(Workshop.assumed(), new PlateProcess.EtchedFilm(), depth, true), null, 20);
    }

    private static FilmPatches patches() {
        return GrainPatches.of(GRAIN, ThresholdTile.of(GRAIN, COARSE), COARSE);
    }

    private List<Path> kept() throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    @Test
    void keptResponseIsTheOneComputedAndDamageIsComputedAnew() throws Exception {
        ResponseStore store = new ResponseStore(new CacheFolder(folder));
        VirtualResponse computed = VirtualResponse.of(plate(30), patches());
        assertEquals(computed.levels(), store.response(plate(30), patches()).levels());
        assertEquals(1, kept().size());
        VirtualResponse kept = store.response(plate(30), patches());
        assertEquals(computed.levels(), kept.levels());
        assertEquals(computed.usable(), kept.usable());
        assertEquals(computed.digest(), kept.digest());
        byte[] whole = Files.readAllBytes(kept().get(0));
        whole[whole.length / 2] ^= 1;
        Files.write(kept().get(0), whole);
        assertEquals(computed.levels(), store.response(plate(30), patches()).levels());
    }

    @Test
    void anAlgorithmOfAnotherNumberIsNotServedTheResponseOfThisOne() throws Exception {
        double depth = 30;
        VirtualResponse computed = new ResponseStore(new CacheFolder(folder), 1).response(plate(depth), patches());
        Path file = kept().get(0);
        // As if the code of number 1 had computed another depth.
        Path other = Files.createDirectory(folder.resolve("other"));
        new ResponseStore(new CacheFolder(other), 1).response(plate(20), patches());
        try (Stream<Path> made = Files.list(other)) {
            Files.copy(made.findAny().orElseThrow(), file, StandardCopyOption.REPLACE_EXISTING);
        }
        assertNotEquals(
                computed.levels(),
                new ResponseStore(new CacheFolder(folder), 1)
                        .response(plate(depth), patches())
                        .levels());
        assertEquals(
                computed.levels(),
                new ResponseStore(new CacheFolder(folder), 2)
                        .response(plate(depth), patches())
                        .levels());
    }

    /**
     * Not what a tone should be, but what it is: where this changes, {@link VirtualResponse#ALGORITHM} must be raised and this written anew,
     * lest the response of before be served from people's caches.
     */
    @Test
    void tonesOfTheNumberAreTheseAndNoOthers() {
        CRC32 sum = new CRC32();
        sum.update(VirtualResponse.of(plate(30), patches()).levels().toString().getBytes(StandardCharsets.UTF_8));
        assertEquals("1: 9a8709f3", VirtualResponse.ALGORITHM + ": " + Long.toHexString(sum.getValue()));
    }

    @Test
    void anotherDepthIsAnotherResponse() throws Exception {
        ResponseStore store = new ResponseStore(new CacheFolder(folder));
        double shallow = store.response(plate(20), patches()).lightness(0.3);
        assertNotEquals(shallow, store.response(plate(40), patches()).lightness(0.3));
        assertEquals(2, kept().size());
    }

    /** Laws of the planned plate: each with its reason, over whole jobs. */
    @Test
    void theWorkshopsFiguresReachThePlate() {
        Job job = new Job(
                "",
                "",
                new Size(60, 60),
                new PlateProcess.EtchedFilm(),
                COARSE,
                GRAIN,
                ArtChoice.WHOLE,
                Placing.USUAL,
                RangeMapping.DEFAULT,
                false,
                Optional.of(0.0),
                List.of());
        Workshop assumed = Workshop.assumed();
        double usual = lightness(assumed, job);
        // More of the ink on the paper prints darker.
        assertLess(lightness(with(assumed, "ink.transferFraction", 0.95), job), usual);
        // More undercut for the same depth opens wider wells.
        assertLess(lightness(with(assumed, "bath.etchFactor", 1.5), job), usual);
        // A longer bite is deeper.
        assertLess(usual, lightness(with(assumed, "bath.biteMinutes", 10), job));
        // More light closes the edges of openings.
        assertLess(usual, lightness(with(assumed, "exposure.targetStep", 10), job));
        // Dots printed larger open more.
        assertLess(lightness(with(assumed, "filmPrinter.spotGrowthMicrometres", 12), job), usual);
        // Greyer paper is darker everywhere.
        assertLess(lightness(with(assumed, "paper.whiteDensity", 0.2), job), usual);
    }

    private static void assertLess(double darker, double lighter) {
        assertEquals(-1, Double.compare(darker, lighter), darker + " is not below " + lighter);
    }

    private static Workshop with(Workshop workshop, String path, double value) {
        return workshop.with(path, Figure.assumed(value, "invented for a test"));
    }

    private static double lightness(Workshop workshop, Job job) {
        JobPlate plate = JobPlate.of(workshop, job);
        return plate.plate().terms(0.3, plate.patches().at(0.3)).lightness();
    }
}
