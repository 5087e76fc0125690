package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import greyground.app.Greyground;
import greyground.app.chart.WedgeWork;
import greyground.app.files.KeptFiles;
import greyground.app.recipe.JobPlate;
import greyground.film.job.Job;
import greyground.fit.MeasuredResponse;
import greyground.output.FilmPdfReader;
import greyground.plate.PlateProcess;
import greyground.plate.VirtualResponse;
import greyground.raster.Progress;
import greyground.simulation.HiddenWorkshop;
import greyground.simulation.ProofOfFilm;
import greyground.tone.Lightness;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Photogravure's test plate: a continuous-tone film and its screen film, bitten and proofed by an invented workshop, and read back. */
class ReadPhotogravureIT {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @TempDir
    private static Path folder;

    private static Path film;
    private static Path proof;
    private static HiddenWorkshop hidden;

    @BeforeAll
    static void printAndScan() throws Exception {
        film = folder.resolve("gravure.pdf");
        proof = folder.resolve("proof.png");
        String words = Attempt.done(
                        "wedge",
                        "--kind",
                        "strip",
                        "--plate",
                        "150x40mm",
                        "--process",
                        "photogravure",
                        "--date",
                        "2026-11-20",
                        "--out",
                        film)
                .out();
        assertTrue(words.contains("pages 1 and 2 on film"), words);
        hidden = ProofOfFilm.scan(film, 3, 300, proof);
    }

    @Test
    void itsFilmIsContinuousAndItsScreenLiesOnTheSamePlate() throws Exception {
        try (FilmPdfReader reader = FilmPdfReader.open(film)) {
            assertEquals(2, reader.films().size());
            FilmPdfReader.ReadFilm tones = reader.films().get(0);
            FilmPdfReader.ReadFilm screen = reader.films().get(1);
            assertEquals(16, tones.bitsPerSample());
            assertEquals(1, screen.bitsPerSample());
            assertEquals(tones.plate().width(), screen.plate().width());
            assertEquals(tones.plate().height(), screen.plate().height());
        }
        assertTrue(KeptFiles.plan(film).summary().startsWith("expose screen "));
    }

    @Test
    void theWindowShowsItLikeAnyOther() throws Exception {
        WedgeWork.Look look = Greyground.testPlate(
                        Map.of("kind", "strip", "plate", "110x40mm"),
                        Optional.of(KeptFiles.job(film)),
                        Workshop.assumed(),
                        LocalDate.of(2026, 11, 20))
                .look(Progress.NONE);
        assertTrue(look.sheet().width() > 0);
    }

    @Test
    void whatIsLearnedLiesWithinItsBandOfTheTruthAndFilmsFollowIt() throws Exception {
        Path shop = Files.writeString(
                folder.resolve("quay.json"), "{ \"greyground\": \"workshop\", \"version\": 1, \"name\": \"quay\" }\n");
        String white = Double.toString(
                Lightness.ofDensity(hidden.secret().paper().whiteDensity().value()));
        JsonNode told = JSON.readTree(Attempt.done(
                        "read",
                        proof,
                        "--wedge",
                        film,
                        "--workshop",
                        shop,
                        "--paper",
                        white,
                        "--date",
                        "2026-11-25",
                        "--accept",
                        "--json")
                .out());
        Job job = KeptFiles.job(film);
        assertTrue(job.process() instanceof PlateProcess.Photogravure);
        JobPlate plate = JobPlate.of(hidden.secret(), job);
        VirtualResponse truth = plate.response(plate.conditions(hidden.depthMicrometres()));
        int levels = 0;
        int within = 0;
        double worst = 0;
        double predicted = 0;
        for (JsonNode level : told.get("levels")) {
            double coverage = level.get("coverage").asDouble();
            double off = Math.abs(
                    level.get("lightness").asDouble() - truth.explain(coverage).lightness());
            levels++;
            within += off <= level.get("halfWidthInAll").asDouble() ? 1 : 0;
            worst = Math.max(worst, off);
            predicted = Math.max(
                    predicted,
                    Math.abs(level.get("predicted").asDouble()
                            - truth.explain(coverage).lightness()));
        }
        MeasuredResponse learned =
                WorkshopFile.read(Files.readString(shop)).responses().get(0).response();
        double between = 0;
        for (double coverage = 0.005; coverage < learned.usable().most(); coverage += 0.02) {
            between = Math.max(
                    between,
                    Math.abs(learned.lightness(coverage)
                            - truth.explain(coverage).lightness()));
        }
        String figures = "between levels " + between + ", " + within + " of " + levels + " within the band; worst "
                + worst + " L*, predicted " + predicted;
        assertTrue(levels >= 20, figures);
        assertTrue(within >= 0.9 * levels, figures);
        assertTrue(worst < predicted / 2 && between < 2, figures);

        Path made = folder.resolve("made.pdf");
        String words = Attempt.done(
                        "positive",
                        Path.of("testimages/still-life.png"),
                        "--plate",
                        "40x30mm",
                        "--resolution",
                        "1440",
                        "--process",
                        "photogravure",
                        "--workshop",
                        shop,
                        "--out",
                        made)
                .out();
        assertTrue(words.contains("measured on 2026-11-25"), words);
        // Another screen's tones are another plate's.
        String other = Attempt.done(
                        "positive",
                        Path.of("testimages/still-life.png"),
                        "--plate",
                        "40x30mm",
                        "--process",
                        "photogravure",
                        "--screen-black",
                        "50%",
                        "--workshop",
                        shop,
                        "--out",
                        folder.resolve("other.pdf"))
                .out();
        assertTrue(other.contains("predicted, virtual plate"), other);
        assertTrue(other.contains("40 % black"), other);
    }
}
