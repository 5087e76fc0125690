package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.edge.Grid;
import greyground.plate.edge.Rim;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class WipeTest {
    /** Sag of a circular pad over a width, s = w^2 / 8r, by elementary geometry. */
    @Test
    void criticalWidthIsTheRootOfEightRadiusDepth() {
        assertEquals(489.898, new Wipe(1.5, 0).criticalWidthMicrometres(20), 1e-3);
        assertEquals(346.410, new Wipe(1.5, 0).criticalWidthMicrometres(10), 1e-3);
        assertEquals(692.820, new Wipe(1.5, 0).criticalWidthMicrometres(40), 1e-3);
        assertEquals(282.843, new Wipe(0.5, 0).criticalWidthMicrometres(20), 1e-3);
    }

    @ParameterizedTest
    @CsvSource({
        "100, 0.972222",
        "200, 0.888889",
        "400, 0.555556",
        "489.897949, 0.333333",
        "1000, 0.163299",
        "3000, 0.0544331"
    })
    void flatTrenchesKeepTheirClosedShareAndTheEngineAgrees(double width, double expected) {
        Wipe wipe = new Wipe(1.5, 0);
        double pitch = width / 400;
        Grid grid = new Grid(600, 3, pitch, Rim.BOUNDED);
        float[] depth = new float[grid.area()];
        for (int i = 0; i < depth.length; i++) {
            int x = i % 600;
            depth[i] = x >= 100 && x < 500 ? 20 : 0;
        }
        float[] ink = wipe.ink(depth, grid);
        double held = 0;
        for (int x = 0; x < 600; x++) {
            held += ink[600 + x];
        }
        // The nearest land centres are one pixel farther apart than the trench is wide: 0.25 % of width.
        assertEquals(expected, held / (20 * 400), 0.004);
    }

    @ParameterizedTest
    @EnumSource(Rim.class)
    void isTheClosingByAParaboloidFoundByTryingEveryPlace(Rim rim) {
        Random random = new Random(5);
        Grid grid = new Grid(33, 29, 20, rim);
        float[] depth = new float[grid.area()];
        for (int i = 0; i < depth.length; i++) {
            depth[i] = random.nextInt(3) == 0 ? 0 : 30 * random.nextFloat();
        }
        float[] ink = new Wipe(0.8, 0).ink(depth, grid);
        double steepness = 20 * 20 / 1600.0;
        double[] apex = extreme(depth, grid, steepness);
        for (int i = 0; i < depth.length; i++) {
            double level = Double.NEGATIVE_INFINITY;
            for (int j = 0; j < depth.length; j++) {
                level = Math.max(level, apex[j] - steepness * squared(i, j, grid));
            }
            assertEquals(depth[i] - level, ink[i], 1e-4);
        }
    }

    private static double[] extreme(float[] depth, Grid grid, double steepness) {
        double[] apex = new double[depth.length];
        for (int i = 0; i < depth.length; i++) {
            apex[i] = Double.POSITIVE_INFINITY;
            for (int j = 0; j < depth.length; j++) {
                apex[i] = Math.min(apex[i], depth[j] + steepness * squared(i, j, grid));
            }
        }
        return apex;
    }

    private static double squared(int i, int j, Grid grid) {
        int dx = Math.abs(i % grid.width() - j % grid.width());
        int dy = Math.abs(i / grid.width() - j / grid.width());
        if (grid.rim() == Rim.WRAPPED) {
            dx = Math.min(dx, grid.width() - dx);
            dy = Math.min(dy, grid.height() - dy);
        }
        return (double) dx * dx + (double) dy * dy;
    }

    /** A softer pad (smaller radius) reaches deeper, so it can only leave less. */
    @Test
    void aSofterPadNeverLeavesMoreInkAnywhere() {
        Random random = new Random(9);
        Grid grid = new Grid(120, 90, 10, Rim.WRAPPED);
        for (int trial = 0; trial < 5; trial++) {
            float[] depth = new float[grid.area()];
            for (int i = 0; i < depth.length; i++) {
                depth[i] = random.nextInt(40) == 0 ? 0 : 25;
            }
            float[] before = new Wipe(0.2, 0).ink(depth, grid);
            for (double radius : new double[] {0.5, 1, 3, 10}) {
                float[] ink = new Wipe(radius, 0).ink(depth, grid);
                for (int i = 0; i < ink.length; i++) {
                    assertTrue(ink[i] >= before[i] - 1e-4 && ink[i] <= depth[i] + 1e-4);
                }
                before = ink;
            }
        }
    }

    /** Ink fills to the pad, so a second wipe of the filled surface takes nothing: closing is idempotent. */
    @Test
    void wipingTwiceTakesNoMore() {
        Random random = new Random(2);
        Grid grid = new Grid(80, 80, 10, Rim.WRAPPED);
        float[] depth = new float[grid.area()];
        for (int i = 0; i < depth.length; i++) {
            depth[i] = random.nextInt(30) == 0 ? 0 : 25;
        }
        float[] ink = new Wipe(1, 0).ink(depth, grid);
        float[] filled = new float[depth.length];
        for (int i = 0; i < depth.length; i++) {
            filled[i] = depth[i] - ink[i];
        }
        for (float more : new Wipe(1, 0).ink(filled, grid)) {
            assertEquals(0, more, 1e-3);
        }
    }
}
