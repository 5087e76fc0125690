package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.util.Arrays;
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
        assertSlopes(curve, 1e-6, 1.9, 1.230769, 0.888889, 0.685714, 0.5);
        assertEquals(0.220913, curve.value(0.125), 1e-5);
        assertEquals(0.535684, curve.value(0.375), 1e-5);
        assertEquals(0.735943, curve.value(0.6), 1e-5);
        assertEquals(0.945657, curve.value(0.9), 1e-5);
        MonotoneCubic steep = MonotoneCubic.fritschButland(STEEP_X, STEEP_Y);
        assertSlopes(steep, 1e-7, 0.05, 0.05, 0.0941176, 0.1777778, 0);
        assertEquals(0.0694853, steep.value(1.5), 1e-7);
        assertEquals(0.489542, steep.value(2.5), 1e-6);
    }

    @Test
    void fritschCarlsonFigures() {
        MonotoneCubic curve = MonotoneCubic.fritschCarlson(X, Y);
        assertSlopes(curve, 1e-9, 1.6, 1.3, 0.9, 0.7, 0.6);
        assertEquals(0.209375, curve.value(0.125), 1e-6);
        assertEquals(0.5375, curve.value(0.375), 1e-6);
        assertEquals(0.7360, curve.value(0.6), 1e-6);
        assertEquals(0.9424, curve.value(0.9), 1e-6);
        MonotoneCubic steep = MonotoneCubic.fritschCarlson(STEEP_X, STEEP_Y);
        assertSlopes(steep, 1e-7, 0.05, 0.0175262, 0.1489726, 0.2928561, 0.0650791);
        assertEquals(0.0585692, steep.value(1.5), 1e-7);
        assertEquals(0.482015, steep.value(2.5), 1e-6);
    }

    @Test
    void inverseFigures() {
        CurveInverse inverse = new CurveInverse(MonotoneCubic.fritschButland(X, Y), 1e-6, Double.POSITIVE_INFINITY);
        assertEquals(0.143265, inverse.place(0.25).orElseThrow(), 1e-6);
        assertEquals(0.339209, inverse.place(0.5).orElseThrow(), 1e-6);
        assertEquals(0.617157, inverse.place(0.75).orElseThrow(), 1e-6);
    }

    private static void assertSlopes(MonotoneCubic curve, double tolerance, double... slopes) {
        for (int i = 0; i < slopes.length; i++) {
            assertEquals(slopes[i], curve.pointSlope(i), tolerance, "slope " + i);
        }
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
    void theInverseUndoesStrictCurvesOfBothDirections() {
        Random random = new Random(1984);
        for (int trial = 0; trial < 100; trial++) {
            double[] x = new double[9];
            double[] y = new double[9];
            int direction = trial % 2 == 0 ? 1 : -1;
            for (int i = 1; i < 9; i++) {
                x[i] = x[i - 1] + 0.1 + random.nextDouble();
                y[i] = y[i - 1] + direction * (0.1 + random.nextDouble());
            }
            for (BiFunction<double[], double[], MonotoneCubic> kind : KINDS) {
                MonotoneCubic curve = kind.apply(x, y);
                CurveInverse inverse = new CurveInverse(curve, 0, Double.POSITIVE_INFINITY);
                for (int i = 0; i <= 50; i++) {
                    double place = Math.min(x[8], x[8] * i / 50);
                    double value = Math.max(inverse.least(), Math.min(inverse.most(), curve.value(place)));
                    assertEquals(value, curve.value(inverse.place(value).orElseThrow()), 1e-12);
                }
            }
        }
    }

    @Test
    void unattainableValuesAreMarkedAndCounted() {
        double[] x = {0, 1, 2, 3, 4};
        double[] y = {0, 0.1, 0.1, 0.8, 0.9};
        for (BiFunction<double[], double[], MonotoneCubic> kind : KINDS) {
            CurveInverse inverse = new CurveInverse(kind.apply(x, y), 1e-3, 0.5);
            assertTrue(inverse.place(-0.01).isEmpty(), "below");
            assertTrue(inverse.place(0.91).isEmpty(), "above");
            assertTrue(inverse.place(0.1).isEmpty(), "flat");
            assertTrue(inverse.place(0.4).isEmpty(), "jump");
            assertEquals(List.of(new CurveInverse.Gap(0.1, 0.8)), inverse.gaps());
            assertTrue(inverse.place(0.05).isPresent());
            assertTrue(inverse.place(0.85).isPresent());
            assertEquals(4, inverse.unattainable(-0.01, 0.05, 0.1, 0.4, 0.85, 0.91));
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
        assertThrows(
                Refusal.class,
                () -> new CurveInverse(
                        MonotoneCubic.fritschCarlson(new double[] {0, 1, 2}, new double[] {0, 1, 0.5}), 0, 9));
    }

    /** The slope is the derivative: compared with a central difference. */
    @Test
    void slopesAreDerivatives() {
        MonotoneCubic curve = MonotoneCubic.fritschCarlson(X, Y);
        for (double place : new double[] {0.1, 0.3, 0.62, 0.9}) {
            double difference = (curve.value(place + 1e-6) - curve.value(place - 1e-6)) / 2e-6;
            assertEquals(difference, curve.slope(place), 1e-6);
        }
        assertEquals(5, Arrays.stream(X).filter(x -> curve.slope(x) > 0).count());
    }
}
