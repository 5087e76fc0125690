package greyground.app.live;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.bite.BiteTimes;
import greyground.app.check.AssumedFigures;
import greyground.app.check.PlateWarning;
import greyground.app.proof.ProofWork;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.JobWords;
import greyground.app.recipe.SourceArt;
import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.app.sight.Stage;
import greyground.film.job.Job;
import greyground.plate.PlateWindow;
import greyground.quantity.Offset;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import greyground.tone.Primaries;
import greyground.tone.Srgb;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the desk shows is the film and the proof that the commands make. */
class LivePlateIT {
    private static final Workshop SHOP = Workshop.assumed();

    @TempDir
    Path folder;

    /** A ramp with a hard-edged black in it, so that a mended film differs from a plain one. */
    private Path art() throws Exception {
        BufferedImage image = new BufferedImage(300, 200, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < 200; y++) {
            for (int x = 0; x < 300; x++) {
                boolean stroke = x > 140 && x < 146 && y > 20;
                image.getRaster().setSample(x, y, 0, stroke ? 0 : 40 + x * 200 / 300);
            }
        }
        Path file = folder.resolve("ramp.png");
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    private static Job job(SourceArt art, String... words) {
        Map<String, String> given = new java.util.HashMap<>(Map.of("plate", "60x40mm", "white", "100%", "black", "0%"));
        for (int i = 0; i < words.length; i += 2) {
            given.put(words[i], words[i + 1]);
        }
        return new JobWords(given).job(Optional.empty(), art, SHOP, "2026-01-01");
    }

    private void checkAgainstProof(String... words) throws Exception {
        Path art = art();
        PlateWindow window = new PlateWindow(28_500, 10_300, 4, 260, 180);
        LiveView view = new LiveView(28.5, 10.3, 0.004, 260, 180);
        try (LiveBench bench = LiveBench.open(art);
                ProofWork proof =
                        ProofWork.ofArt(ArtSource.open(art), job(bench.source(1), words), SHOP, Progress.NONE)) {
            LivePlate live = bench.plate(job(bench.source(1), words), SHOP, Progress.NONE);
            for (Stage stage : Stage.values()) {
                LivePicture wanted =
                        LivePicture.of(proof.pictures(window, List.of(stage), ProofWork.Held.AS_PRINTED, Progress.NONE)
                                .get(0));
                assertArrayEquals(
                        wanted.pixels(),
                        live.close(stage, view, false, Progress.NONE).pixels(),
                        stage.word());
            }
        }
    }

    /** The proof composes whole rows of film; the desk only what lies under the loupe. */
    @Test
    void theLoupeShowsTheFilmBitForBit() throws Exception {
        checkAgainstProof();
    }

    @Test
    void theLoupeShowsAMirroredMendedHalftoneBitForBit() throws Exception {
        checkAgainstProof("ink-side", "up", "mend", "", "ruling", "60");
    }

    /** An even grey prints from afar as the virtual plate prints its dots on average. */
    @Test
    void tonesFromAfarAreTheMeanOfWhatTheLoupeShows() throws Exception {
        BufferedImage image = new BufferedImage(90, 60, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < 90 * 60; i++) {
            image.getRaster().setSample(i % 90, i / 90, 0, 128);
        }
        Path file = folder.resolve("even.png");
        ImageIO.write(image, "png", file.toFile());
        try (LiveBench bench = LiveBench.open(file)) {
            LivePlate live = bench.plate(job(bench.source(1)), SHOP, Progress.NONE);
            for (Stage stage : Stage.values()) {
                // Cells of a millimetre, since light spreads in the paper between dots.
                LivePicture near = live.close(stage, new LiveView(20, 10, 1, 8, 6), false, Progress.NONE);
                double sum = 0;
                for (int pixel : near.pixels()) {
                    sum += luminance(pixel);
                }
                double mean = Lightness.ofLuminance(sum / near.pixels().length);
                int far = live.tones(stage, new LiveView(20, 10, 0.5, 10, 10)).pixels()[55];
                // A window of 8 x 6 mm is itself a sample of the grain; 1.5 L* is about what can be seen side by side.
                assertEquals(mean, Lightness.ofLuminance(luminance(far)), 1.5, stage.word());
            }
            double print = live.tone(new Offset(24, 14)).printLightness();
            int shown =
                    live.tones(Stage.PRINT, new LiveView(20, 10, 0.5, 10, 10)).pixels()[55];
            assertEquals(print, Lightness.ofLuminance(luminance(shown)), 0.5);
        }
    }

    @Test
    void offThePlateThereIsNothingAndOnThePaperOnlyPaper() throws Exception {
        try (LiveBench bench = LiveBench.open(art())) {
            LivePlate live = bench.plate(job(bench.source(1)), SHOP, Progress.NONE);
            LiveView view = new LiveView(-20, -20, 1, 100, 80);
            assertEquals(0, live.tones(Stage.COPPER, view).pixels()[0]);
            int paper = live.tones(Stage.PRINT, view).pixels()[15 * 100 + 15];
            assertEquals(live.curves().bareLightness(), Lightness.ofLuminance(luminance(paper)), 0.5);
            assertTrue(live.check(Progress.NONE).stream()
                    .allMatch(warning -> !warning.words().isEmpty()));
        }
    }

    /** A window that asked for work on its own thread would stand still meanwhile. */
    @Test
    void onlyTheThreadThatOpenedABenchMayWorkIt() throws Exception {
        try (LiveBench bench = LiveBench.open(art())) {
            LivePlate live = bench.plate(job(bench.source(1)), SHOP, Progress.NONE);
            LiveView view = new LiveView(0, 0, 1, 4, 4);
            List<java.util.concurrent.Callable<?>> works = List.of(
                    () -> bench.plate(live.job(), SHOP, Progress.NONE),
                    () -> live.art(view),
                    () -> live.tones(Stage.PRINT, view),
                    () -> live.close(Stage.PRINT, view, true, Progress.NONE),
                    () -> live.bites(Stage.PRINT, view, BiteTimes.parse("5,10min"), Progress.NONE),
                    () -> live.tone(new Offset(20, 20)),
                    () -> live.plan(),
                    () -> live.remarks(Progress.NONE),
                    () -> live.check(Progress.NONE));
            for (java.util.concurrent.Callable<?> work : works) {
                java.util.concurrent.FutureTask<?> other = new java.util.concurrent.FutureTask<>(work);
                Thread thread = new Thread(other, "window");
                thread.start();
                var failed = org.junit.jupiter.api.Assertions.assertThrows(
                        java.util.concurrent.ExecutionException.class, other::get);
                assertEquals(IllegalStateException.class, failed.getCause().getClass());
            }
        }
    }

    /** Two bites are the proofs of two workshops that bite as long; the film stays that of the usual bite. */
    @Test
    void aBiteIsTheProofOfAPlateBittenSoLong() throws Exception {
        LiveView view = new LiveView(28.5, 10.3, 0.004, 120, 90);
        try (LiveBench bench = LiveBench.open(art())) {
            LivePlate live = bench.plate(job(bench.source(1)), SHOP, Progress.NONE);
            List<LiveBite> bites = live.bites(Stage.COPPER, view, BiteTimes.parse("20,30min"), Progress.NONE);
            assertArrayEquals(
                    live.close(Stage.COPPER, view, false, Progress.NONE).pixels(),
                    bites.get(0).picture().pixels());
            assertEquals(60, bites.get(1).depthMicrometres(), 1e-9);
            assertTrue(bites.get(1).printLightness() < bites.get(0).printLightness(), "a longer bite prints darker");
        }
    }

    /** A change of tone alone leaves what is told of assumed figures as it was; a change of the workshop doesn't. */
    @Test
    void assumedFiguresAreWorkedOutAgainWhenTheWorkshopChangesAndNotBefore() throws Exception {
        try (LiveBench bench = LiveBench.open(art())) {
            Job job = job(bench.source(1));
            List<PlateWarning> first = assumed(bench.plate(job, SHOP, Progress.NONE));
            List<PlateWarning> paler = assumed(bench.plate(job(bench.source(1), "white", "90%"), SHOP, Progress.NONE));
            assertSame(first.get(0), paler.get(0));
            Workshop known = SHOP.with("bath.etchFactor", Figure.measured(2, LocalDate.of(2026, 3, 4), "this test"));
            LivePlate other = bench.plate(job, known, Progress.NONE);
            assertEquals(AssumedFigures.of(known, other.job(), Progress.NONE), assumed(other));
        }
    }

    private static List<PlateWarning> assumed(LivePlate plate) throws Exception {
        return plate.remarks(Progress.NONE).stream()
                .filter(each -> each.kind().equals("assumed"))
                .toList();
    }

    private static double luminance(int pixel) {
        double[] weights = Primaries.SRGB.luminances();
        return weights[0] * Srgb.decode((pixel >> 16 & 0xFF) / 255.0)
                + weights[1] * Srgb.decode((pixel >> 8 & 0xFF) / 255.0)
                + weights[2] * Srgb.decode((pixel & 0xFF) / 255.0);
    }
}
