package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Isotonic fit and confidence of repeated readings. */
class MeasurementTest {
    /** Pool adjacent violators (Ayer et al. 1955), first row as in published code, second by hand. */
    @Test
    void poolsAdjacentViolators() {
        assertArrayEquals(
                new double[] {1, 2.5, 2.5, 3.75, 3.75, 5},
                rising(new double[] {1, 3, 2, 4, 3.5, 5}).fitted(),
                1e-9);
        assertArrayEquals(
                new double[] {0.1, 0.272, 0.272, 0.272, 0.566667, 0.566667, 0.9},
                IsotonicFit.rising(
                                new double[] {0.1, 0.3, 0.28, 0.26, 0.6, 0.55, 0.9}, new double[] {1, 1, 1, 3, 1, 2, 1})
                        .fitted(),
                1e-6);
    }

    @Test
    void theFitIsMonotoneKeepsTheMeanAndLeavesGoodReadingsAlone() {
        Random random = new Random(1955);
        for (int trial = 0; trial < 200; trial++) {
            int n = 1 + random.nextInt(40);
            double[] readings = new double[n];
            double[] weights = new double[n];
            double sum = 0;
            for (int i = 0; i < n; i++) {
                readings[i] = i * 0.1 + random.nextGaussian() * 0.3;
                weights[i] = 1 + random.nextInt(4);
                sum += readings[i] * weights[i];
            }
            double[] fitted = IsotonicFit.rising(readings, weights).fitted();
            double fittedSum = 0;
            for (int i = 0; i < n; i++) {
                assertTrue(i == 0 || fitted[i] >= fitted[i - 1], "trial " + trial);
                fittedSum += fitted[i] * weights[i];
            }
            assertEquals(sum, fittedSum, 1e-9, "trial " + trial);
            assertArrayEquals(fitted, IsotonicFit.rising(fitted, weights).fitted(), 1e-12);
        }
    }

    @Test
    void fallingIsRisingUpsideDown() {
        double[] ones = {1, 1, 1, 1};
        assertArrayEquals(
                new double[] {5, 3.5, 3.5, 1},
                IsotonicFit.falling(new double[] {5, 3, 4, 1}, ones).fitted(),
                1e-12);
    }

    @Test
    void longPoolsAreSeen() {
        assertEquals(0, rising(new double[] {1, 2, 3}).longestPooledShare());
        assertEquals(0.5, rising(new double[] {1, 4, 3, 2, 5, 6}).longestPooledShare(), 1e-12);
        assertThrows(Refusal.class, () -> rising(new double[] {1, Double.NaN}));
        assertThrows(Refusal.class, () -> IsotonicFit.rising(new double[] {1, 2}, new double[] {1, 0}));
    }

    /** Student's t, 97.5 % points: printed tables (t for 2 degrees 4.30265); half-widths by arithmetic. */
    @Test
    void halfWidthsOfRepeatedReadings() {
        assertEquals(4.30265, Confidence.quantile(0.95, 2), 1e-5);
        assertEquals(12.7062, Confidence.quantile(0.95, 1), 1e-4);
        assertEquals(2.22814, Confidence.quantile(0.95, 10), 1e-5);
        assertEquals(1.95996, Confidence.quantile(0.95, 99_999), 1e-4);
        assertEquals(0.0496828, Confidence.halfWidth(0.02, 3), 1e-6);
        assertEquals(0.0318245, Confidence.halfWidth(0.02, 4), 1e-6);
        assertEquals(0.0209887, Confidence.halfWidth(0.02, 6), 1e-6);
        assertEquals(0.0143071, Confidence.halfWidth(0.02, 10), 1e-6);
        assertThrows(Refusal.class, () -> Confidence.halfWidth(0.02, 1));
    }

    private static IsotonicFit rising(double... readings) {
        return IsotonicFit.rising(
                readings, DoubleStream.generate(() -> 1).limit(readings.length).toArray());
    }
}
