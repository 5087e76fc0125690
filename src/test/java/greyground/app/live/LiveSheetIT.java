package greyground.app.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.check.PlateWarning;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.JobWords;
import greyground.app.recipe.PositiveWork;
import greyground.app.sight.LiveView;
import greyground.film.job.Job;
import greyground.output.ExternalTool;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sheet that the desk shows is the page of the film PDF, as poppler draws it. */
class LiveSheetIT {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");
    private static final Workshop SHOP = Workshop.assumed();
    private static final int CELL = 8;
    private static final double CELL_MILLIMETRES = 25.4 / 720 * CELL;

    @TempDir
    Path folder;

    private static Job job(String... words) {
        Map<String, String> given = new HashMap<>(Map.of("plate", "60x40mm", "resolution", "720dpi"));
        for (int i = 0; i < words.length; i += 2) {
            given.put(words[i], words[i + 1]);
        }
        return new JobWords(given).job(Optional.empty(), ArtSource.open(ART).source(1), SHOP, "2026-01-01");
    }

    private static LiveSheet sheet(LiveBench bench, Job job) throws Exception {
        return bench.plate(job, SHOP, Progress.NONE).sheet(false);
    }

    private static int grey(int argb) {
        return argb >> 8 & 0xFF;
    }

    /**
     * In cells of 8 by 8 film pixels, where poppler's page is all black the sheet is dark, where it is all clear the sheet is clear, and
     * in between it is in between.
     */
    private void checkAgainstPoppler(String... words) throws Exception {
        Job job = job(words);
        Path pdf = folder.resolve("film.pdf");
        PositiveWork.prepare(ArtSource.open(ART), job, SHOP, Optional.of(pdf), Optional.empty(), Progress.NONE);
        ExternalTool.run(
                folder, "pdftoppm", "-gray", "-png", "-singlefile", "-r", "720", "-aa", "no", pdf.toString(), "page");
        BufferedImage page = ImageIO.read(folder.resolve("page.png").toFile());
        int width = page.getWidth() / CELL;
        int height = page.getHeight() / CELL;
        try (LiveBench bench = LiveBench.open(ART)) {
            LiveSheet sheet = sheet(bench, job);
            int[] near = sheet.near(
                            new LiveView(0, 0, CELL_MILLIMETRES, width, height), SheetSide.AS_PRINTED, Progress.NONE)
                    .pixels();
            int clear = grey(near[0]);
            int solid = 0;
            int wrong = 0;
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    int black = 0;
                    for (int i = 0; i < CELL * CELL; i++) {
                        int dot = page.getRaster().getSample(x * CELL + i % CELL, y * CELL + i / CELL, 0);
                        black += dot < 128 ? 1 : 0;
                    }
                    int shown = grey(near[y * width + x]);
                    boolean all = black == CELL * CELL;
                    solid += all ? 1 : 0;
                    wrong += all
                            ? shown > clear / 3 ? 1 : 0
                            : black == 0 ? shown < clear - 24 ? 1 : 0 : shown > clear ? 1 : 0;
                }
            }
            assertTrue(solid > 100, "solid cells: " + solid);
            // Poppler sets letters on whole pixels of its own: only their cells may differ.
            assertTrue(wrong < 0.004 * width * height, wrong + " of " + width * height + " cells differ");
        }
    }

    @Test
    void theSheetIsTheFilmsOwnPage() throws Exception {
        checkAgainstPoppler();
    }

    @Test
    void aMirroredSheetOnLargerFilmIsTheFilmsOwnPage() throws Exception {
        checkAgainstPoppler("ink-side", "up", "sheet", "200x160mm");
    }

    /** Outside the copper, which shines through, the turned sheet is the printed one seen from behind. */
    @Test
    void onThePlateTheSheetIsTurnedOver() throws Exception {
        try (LiveBench bench = LiveBench.open(ART)) {
            LiveSheet sheet = sheet(bench, job());
            int width = 300;
            LiveView strip = new LiveView(0, 0, sheet.widthMillimetres() / width, width, 30);
            int[] printed =
                    sheet.near(strip, SheetSide.AS_PRINTED, Progress.NONE).pixels();
            int[] lying =
                    sheet.near(strip, SheetSide.ON_THE_PLATE, Progress.NONE).pixels();
            int dark = 0;
            for (int i = 0; i < printed.length; i++) {
                int behind = i / width * width + width - 1 - i % width;
                assertEquals(grey(printed[i]), grey(lying[behind]), 2);
                dark += grey(printed[i]) < grey(printed[0]) - 20 ? 1 : 0;
            }
            assertTrue(dark > 10, "marks in the strip: " + dark);
        }
    }

    /** The strip and the picture have the same tones from afar as the mean of their dots. */
    @Test
    void fromAfarTheSheetHasTheTonesOfItsDots() throws Exception {
        try (LiveBench bench = LiveBench.open(ART)) {
            LiveSheet sheet = sheet(bench, job());
            LiveView view = new LiveView(0, 0, 2, 86, 60);
            int[] far = sheet.far(view, SheetSide.AS_PRINTED).pixels();
            int[] near = sheet.near(view, SheetSide.AS_PRINTED, Progress.NONE).pixels();
            double apart = 0;
            for (int i = 0; i < far.length; i++) {
                apart += Math.abs(grey(far[i]) - grey(near[i]));
            }
            assertTrue(apart / far.length < 2.5, "mean difference of " + apart / far.length + " greys");
        }
    }

    /** {@link greyground.film.job.ReadingSide} proves by parity what must read right; printed directly, the copper must read wrong. */
    @Test
    void onTheCopperThePictureReadsAsTheCopperMust() throws Exception {
        try (LiveBench bench = LiveBench.open(ART)) {
            for (String inkSide : List.of("down", "up")) {
                for (int transfers = 1; transfers <= 2; transfers++) {
                    LiveSheet sheet = sheet(bench, job("ink-side", inkSide, "transfers", Integer.toString(transfers)));
                    assertEquals(transfers == 2, sheet.pictureReadsRight(SheetSide.ON_THE_PLATE));
                    assertEquals(inkSide.equals("up"), sheet.inkIsUp(SheetSide.ON_THE_PLATE));
                }
            }
        }
    }

    @Test
    void aSheetTooSmallForItsMarksIsAWarning() throws Exception {
        try (LiveBench bench = LiveBench.open(ART)) {
            List<String> said =
                    bench.plate(job("sheet", "100x100mm"), SHOP, Progress.NONE).remarks(Progress.NONE).stream()
                            .map(PlateWarning::words)
                            .toList();
            assertTrue(said.stream().anyMatch(each -> each.contains("the sheet is 100 x 100 mm")), said.toString());
        }
    }
}
