package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.util.List;
import java.util.Random;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;

/**
 * Figures: Fritsch and Butland 1984 as computed by SciPy's PchipInterpolator; Fritsch and Carlson 1980 computed from the
 * method's text by an independent script.
 */
class MonotoneCubicTest {
    private static final double[] X = {0, 0.25, 0.5, 0.75, 1};
    private static final double[] Y = {0, 0.4, 0.65, 0.85, 1};
    private static final double[] STEEP_X = {0, 1, 2, 3, 4};
    private static final double[] STEEP_Y = {0, 0.05, 0.1, 0.9, 1};
    private static final List<BiFunction<double[], double[], MonotoneCubic>> KINDS =
            List.of(MonotoneCubic::fritschCarlson, MonotoneCubic::fritschButland);

    @Test
    void fritschButlandFigures() {
        MonotoneCubic curve = MonotoneCubic.fritschButland(X, Y);
        assertEquals(0.220913, curve.value(0.125), 1e-5);
        assertEquals(0.535684, curve.value(0.375), 1e-5);
        assertEquals(0.735943, curve.value(0.6), 1e-5);
        assertEquals(0.945657, curve.value(0.9), 1e-5);
        MonotoneCubic steep = MonotoneCubic.fritschButland(STEEP_X, STEEP_Y);
        assertEquals(0.0694853, steep.value(1.5), 1e-7);
        assertEquals(0.489542, steep.value(2.5), 1e-6);
    }

    /** Uneven pieces, ends that turn, and ends that would be too steep: a quarter into the first and the last piece, by SciPy 1.10.1. */
    @Test
    void endsAreScipys() {
        assertEnds(new double[] {0, 1, 4, 6}, new double[] {0, 1, 10, 11}, 0.16165865384615385, 10.920454545454543);
        assertEnds(new double[] {0, 2, 3, 7}, new double[] {5, 6, 9, 2}, 5.06896551724138, 6.046875);
        assertEnds(new double[] {0, 1, 3, 4}, new double[] {0, 1, -9, -8.5}, 0.578125, -8.7890625);
        assertEnds(new double[] {0, 3, 4, 9}, new double[] {4, 1, 2, 0}, 2.4765625, 1.15625);
        assertEnds(new double[] {0, 4, 5, 7}, new double[] {0, 1, 9, 3}, 0.04430970149253732, 6.46875);
    }

    private static void assertEnds(double[] x, double[] y, double first, double last) {
        MonotoneCubic curve = MonotoneCubic.fritschButland(x, y);
        int end = x.length - 1;
        assertEquals(first, curve.value(x[0] + 0.25 * (x[1] - x[0])), 1e-12);
        assertEquals(last, curve.value(x[end] - 0.25 * (x[end] - x[end - 1])), 1e-12);
    }

    @Test
    void fritschCarlsonFigures() {
        MonotoneCubic curve = MonotoneCubic.fritschCarlson(X, Y);
        assertEquals(0.209375, curve.value(0.125), 1e-6);
        assertEquals(0.5375, curve.value(0.375), 1e-6);
        assertEquals(0.7360, curve.value(0.6), 1e-6);
        assertEquals(0.9424, curve.value(0.9), 1e-6);
        MonotoneCubic steep = MonotoneCubic.fritschCarlson(STEEP_X, STEEP_Y);
        assertEquals(0.0585692, steep.value(1.5), 1e-7);
        assertEquals(0.482015, steep.value(2.5), 1e-6);
    }

    @Test
    void bothKindsKeepTheirPointsAndNeverTurn() {
        Random random = new Random(1980);
        for (int trial = 0; trial < 300; trial++) {
            int n = 2 + random.nextInt(20);
            double[] x = new double[n];
            double[] y = new double[n];
            for (int i = 1; i < n; i++) {
                x[i] = x[i - 1] + 0.01 + random.nextDouble();
                y[i] = y[i - 1] + (random.nextInt(4) == 0 ? 0 : Math.pow(random.nextDouble(), 6));
            }
            for (BiFunction<double[], double[], MonotoneCubic> kind : KINDS) {
                MonotoneCubic curve = kind.apply(x, y);
                double before = Double.NEGATIVE_INFINITY;
                for (int i = 0; i < n; i++) {
                    assertEquals(y[i], curve.value(x[i]), 1e-12, "trial " + trial);
                }
                for (int i = 0; i <= 500; i++) {
                    double value = curve.value(Math.min(x[n - 1], x[n - 1] * i / 500));
                    assertTrue(value >= before - 1e-12, "trial " + trial);
                    before = value;
                }
            }
        }
    }

    @Test
    void nothingIsExtrapolated() {
        MonotoneCubic curve = MonotoneCubic.fritschButland(X, Y);
        assertThrows(Refusal.class, () -> curve.value(1.0001));
        assertThrows(Refusal.class, () -> curve.value(-0.0001));
        assertThrows(Refusal.class, () -> curve.value(Double.NaN));
    }

    @Test
    void refusesPointsOutOfOrder() {
        assertThrows(Refusal.class, () -> MonotoneCubic.fritschButland(new double[] {0, 0}, new double[] {0, 1}));
        assertThrows(Refusal.class, () -> MonotoneCubic.fritschCarlson(new double[] {0}, new double[] {0}));
    }
}
