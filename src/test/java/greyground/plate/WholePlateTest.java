package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.edge.NoiseGrain;
import greyground.raster.Progress;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.IntBinaryOperator;
import org.junit.jupiter.api.Test;

class WholePlateTest {
    private static final double PITCH = 25_400 / 1440.0;
    private static final double WIDEST = 9;
    private static final int SIDE = 280;

    private static final NoiseGrain GRAIN = new NoiseGrain(1440, 180, 2.2, 5);

    private static PlateFilm film(IntBinaryOperator black) {
        return new DrawnFilm(SIDE, SIDE, PITCH, black);
    }

    /** An even tone of grain, tiled; with a bar and a wide block on it where wanted. */
    private static IntBinaryOperator grain(double coverage) {
        FilmPatch patch = GRAIN.at(coverage);
        return (x, y) -> patch.black(Math.floorMod(x, patch.width()), Math.floorMod(y, patch.height())) ? 1 : 0;
    }

    private static IntBinaryOperator mixed() {
        IntBinaryOperator even = grain(0.35);
        return (x, y) -> (x > 40 && x < 52) || (x > 120 && x < 240 && y > 100 && y < 220) ? 1 : even.applyAsInt(x, y);
    }

    private static PlateWindow window(double cell) {
        int cells = (int) (SIDE * PITCH / cell);
        return new PlateWindow(0, 0, cell, cells, cells);
    }

    private static float[] print(PlateFilm film, PlateConditions conditions, int tile, int threads, PlateWindow window)
            throws Exception {
        List<WholePlate.Look> looks = List.of(new WholePlate.Look(conditions, PlateView.printRoot()));
        return new WholePlate(film, null, WIDEST, tile)
                .look(window, looks, threads, Progress.NONE)
                .get(0)
                .values();
    }

    @Test
    void threadsChangeNotOneBit() throws Exception {
        PlateWindow window = window(170);
        float[] one = print(film(mixed()), Studio.etched(40, 2), 150, 1, window);
        assertArrayEquals(one, print(film(mixed()), Studio.etched(40, 2), 150, 3, window));
    }

    /** Places are rounded otherwise in another tile; 1e-5 of R^(1/n) is a thousandth of a picture's grey step. */
    @Test
    void tilesOfAnySizeShowTheSamePlate() throws Exception {
        for (PlateConditions conditions : List.of(
                Studio.etched(40, 2), Studio.etched(12, 1.2), Studio.sprayed(30, new SprayedGround(0.5, 60, 3)))) {
            for (double cell : new double[] {170, 12.5}) {
                PlateWindow window = window(cell);
                float[] whole = print(film(mixed()), conditions, 4096, 2, window);
                assertArrayEquals(whole, print(film(mixed()), conditions, 150, 2, window), 1e-5f);
                assertArrayEquals(whole, print(film(mixed()), conditions, 333, 2, window), 1e-5f);
            }
        }
    }

    @Test
    void aWindowShowsWhatTheWholeShows() throws Exception {
        PlateWindow whole = window(20);
        PlateWindow part = new PlateWindow(60 * 20, 90 * 20, 20, 50, 40);
        float[] all = print(film(mixed()), Studio.etched(40, 2), 400, 2, whole);
        float[] some = print(film(mixed()), Studio.etched(40, 2), 400, 2, part);
        for (int y = 0; y < part.rows(); y++) {
            for (int x = 0; x < part.columns(); x++) {
                assertEquals(all[(90 + y) * whole.columns() + 60 + x], some[y * part.columns() + x], 1e-5, x + "," + y);
            }
        }
    }

    @Test
    void clearFilmPrintsAsPaperEverywhere() throws Exception {
        PlateConditions conditions = Studio.etched(40, 2);
        for (float root : print(film((x, y) -> 0), conditions, 150, 2, window(170))) {
            assertEquals(Studio.PAPER.root(0), root, 1e-6);
        }
    }

    /** The pad reaches the floor of a wide black and wipes it; only its rim keeps ink. A narrow bar is bridged. */
    @Test
    void aWideBlackPrintsPaleInItsMiddle() throws Exception {
        int half = (int) (1500 / PITCH);
        int narrow = (int) (75 / PITCH);
        PlateFilm block = film((x, y) -> Math.abs(x - SIDE / 2) < half && Math.abs(y - SIDE / 2) < half ? 1 : 0);
        PlateFilm bar = film((x, y) -> Math.abs(x - SIDE / 2) < narrow ? 1 : 0);
        PlateWindow window = window(20);
        int middle = window.rows() / 2;
        float[] wide = print(block, Studio.etched(40, 2), 400, 2, window);
        float[] thin = print(bar, Studio.etched(40, 2), 400, 2, window);
        float core = wide[middle * window.columns() + window.columns() / 2];
        float rim = 1;
        for (int x = 0; x < window.columns(); x++) {
            rim = Math.min(rim, wide[middle * window.columns() + x]);
        }
        float line = thin[middle * window.columns() + window.columns() / 2];
        assertTrue(lightness(core) > 85, "middle L* " + lightness(core));
        assertTrue(lightness(rim) < 40, "rim L* " + lightness(rim));
        assertTrue(lightness(line) < 30, "bar L* " + lightness(line));
    }

    /** Mean R^(1/n) over whole repeats of the grain, against the wrapped patch itself: only the cells' edges differ. */
    @Test
    void anEvenToneIsAsLightAsItsResponse() throws Exception {
        PlateConditions conditions = Studio.etched(40, 2);
        for (double coverage : new double[] {0.1, 0.4, 0.8}) {
            FilmPatch patch = GRAIN.at(coverage);
            double side = patch.width() * PITCH;
            PlateFilm film = new DrawnFilm(patch.width(), patch.height(), PITCH, grain(coverage));
            PlateWindow window = new PlateWindow(0, 0, side / 13, 13, 13);
            float[] roots = print(film, conditions, 200, 2, window);
            double mean = 0;
            for (float root : roots) {
                mean += root / roots.length;
            }
            double response = new VirtualPlate(conditions, null, WIDEST)
                    .terms(coverage, patch)
                    .lightness();
            assertEquals(response, lightness(mean), 0.05, "coverage " + coverage);
        }
    }

    @Test
    void workCanBeStopped() {
        List<WholePlate.Look> looks = List.of(new WholePlate.Look(Studio.etched(40, 2), PlateView.printRoot()));
        assertThrows(
                CancellationException.class,
                () -> new WholePlate(film(mixed()), null, WIDEST, 100).look(window(170), looks, 2, done -> {
                    if (done > 0.3) {
                        throw new CancellationException();
                    }
                }));
    }

    private static double lightness(double root) {
        return Paper.lightness(Studio.PAPER.reflectance(root));
    }
}
