package greyground.film.compose;

import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.film.sheet.FilmRows;
import greyground.grain.Grain;
import greyground.plan.BenchConditions;
import greyground.plate.FilmPatch;
import greyground.plate.Paper;
import greyground.plate.PlateProcess;
import greyground.plate.PlateStates;
import greyground.plate.VirtualPlate;
import greyground.plate.inspect.FilmFindings;
import greyground.raster.ArrayPlane;
import greyground.raster.PackedRows;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import greyground.workshop.Workshop;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class MendLawIT {
    private static final int ROUNDS = 8;

    /**
     * Art of every kind, with curves up to nearly solid black, whose grain alone hardly holds: mending adds no site, however
     * close the film is to open bite already.
     */
    @Test
    void mendingNeverMakesAnOpenBite() throws Exception {
        Random random = new Random(31);
        double solid = 0;
        List<Integer> tried = Sweep.rounds(ROUNDS);
        for (int round = 0; round < ROUNDS; round++) {
            double[] blobs = random.doubles(120).toArray();
            double dark = 0.5 + 0.5 * random.nextDouble();
            if (!tried.contains(round)) {
                continue;
            }
            ArrayPlane art = ArrayPlane.of(400, 300, (x, y) -> {
                double nearest = 1e9;
                for (int i = 0; i < blobs.length; i += 3) {
                    double away = Math.hypot(x - 400 * blobs[i], y - 300 * blobs[i + 1]);
                    nearest = Math.min(nearest, away - 25 * blobs[i + 2]);
                }
                // Black blobs on a ground that is itself dark.
                return nearest < 0 ? 0 : (int) (65_535 * Math.max(0, 1 - dark - 0.004 * nearest));
            });
            Grain grain = round % 2 == 0 ? MendTest.GRAIN : MendTest.DOTS_OF_HALFTONE;
            MendTest.Made made = MendTest.made(art, grain, 0.86 + 0.015 * round, false);
            FilmFindings before = MendTest.inspected(made, made.film());
            FilmFindings after = MendTest.inspected(made, made.mend().rows());
            assertTrue(
                    after.openBiteSquareMillimetres() <= before.openBiteSquareMillimetres() + 1e-9,
                    "round " + round + ": " + before.openBiteSquareMillimetres() + " mm2 before, "
                            + after.openBiteSquareMillimetres() + " after");
            solid += MendReport.of(made.mend(), 2, Progress.NONE).solidSquareMillimetres();
        }
        // Rounds differ: all of them together make so much solid, the few of a short run make some.
        assertTrue(solid > (tried.size() == ROUNDS ? 5.0 * ROUNDS : 0), "made solid in all: " + solid + " mm2");
    }

    static List<Double> widths() {
        return Sweep.of(List.of(0.4, 0.6, 0.8, 1.2));
    }

    /** Bars of black on white: solid ones turn pale in the middle as they widen, grain ones are ragged at their edges. */
    @ParameterizedTest
    @MethodSource("widths")
    void mendedBarsPrintAsDarkAsTheBetterOfSolidAndGrain(double millimetres) throws Exception {
        ArrayPlane art = ArrayPlane.of(
                400, 300, (x, y) -> Math.abs((x + 0.5) / 10 - 20) < millimetres / 2 && y > 30 && y < 270 ? 0 : 65_535);
        MendTest.Made made = MendTest.made(art, MendTest.GRAIN, 0.87, false);
        FilmRows film = made.film();
        int half = (int) Math.round(millimetres * 25);
        int middle = made.layout().plate().left() + 1000;
        byte[] solid = new byte[film.bytesPerRow() * film.height()];
        for (int y = 0; y < film.height(); y++) {
            PackedRows.blacken(solid, y * film.bytesPerRow(), middle - half, middle + half);
        }
        int top = made.layout().plate().top() + 700;
        double grain = lightness(film, film.maker().make(0, film.height()), middle, half, top);
        double mended = lightness(film, made.mend().rows().maker().make(0, film.height()), middle, half, top);
        double better = Math.min(grain, lightness(film, solid, middle, half, top));
        assertTrue(mended <= better + 1, "mended L* " + mended + ", the better of solid and grain " + better);
    }

    /** Mean lightness of the print of a bar, from a cutting of film 160 pixels wide. */
    private static double lightness(FilmRows film, byte[] bits, int middle, int half, int top) {
        int width = 160;
        int height = 200;
        int margin = 20;
        int left = (middle - width / 2) / 8 * 8;
        byte[] packed = new byte[width / 8 * height];
        for (int y = 0; y < height; y++) {
            System.arraycopy(bits, (top + y) * film.bytesPerRow() + left / 8, packed, y * width / 8, width / 8);
        }
        VirtualPlate plate = new VirtualPlate(BenchConditions.ofDepth(
                Workshop.assumed(),
                new PlateProcess.EtchedFilm(),
                Workshop.assumed().usualDepthMicrometres(),
                true));
        PlateStates states = plate.states(FilmPatch.cutting(width, height, 20, 0, 0, packed));
        Paper unspread = new Paper(plate.conditions().paper().density(), 1);
        int split = states.grid().width() / width;
        double sum = 0;
        int count = 0;
        for (int y = margin * split; y < (height - margin) * split; y++) {
            for (int x = (middle - half - left) * split; x < (middle + half - left) * split; x++) {
                double print = states.printMicrometres()[y * states.grid().width() + x];
                sum += unspread.root(plate.conditions().ink().density(print));
                count++;
            }
        }
        return Lightness.ofLuminance(sum / count);
    }
}
