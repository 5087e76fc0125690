package greyground.grain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class GrainQualityTest {
    private static final int SIDE = 64;

    /** White noise has unit power at every frequency by definition; one tenth black, ten seeds. */
    @Test
    void whiteNoiseIsFlat() {
        double sum = 0;
        for (int seed = 0; seed < 10; seed++) {
            GrainQuality.Spectrum spectrum = GrainQuality.spectrum(chance(0.1, seed), SIDE, 31, 5);
            sum += spectrum.lowBand(0.5 * Math.sqrt(0.1) * SIDE) / 10;
        }
        assertEquals(0.98, sum, 0.05);
    }

    /** Ulichney 1993: the initial pattern of void and cluster, a blue noise, is quiet below half its principal frequency. */
    @Test
    void voidAndClusterIsQuiet() {
        for (int seed = 0; seed < 3; seed++) {
            boolean[] bits = chance(0.1, seed);
            evenOut(bits);
            double low = GrainQuality.spectrum(bits, SIDE, 31, 5).lowBand(0.5 * Math.sqrt(0.1) * SIDE);
            assertTrue(low < 0.10, "low-band mean " + low);
        }
    }

    @Test
    void spectrumOfStripesIsOneLine() {
        boolean[] bits = new boolean[SIDE * SIDE];
        for (int i = 0; i < bits.length; i++) {
            bits[i] = i % 8 < 4;
        }
        GrainQuality.Spectrum spectrum = GrainQuality.spectrum(bits, SIDE, 12, 1);
        // Fourier sum of four ones in a period of eight: magnitude 1 / (2 sin(pi / 8)) / 4 of the mean; two lines share
        // it.
        double harmonic = 1 / (4 * Math.sin(Math.PI / 8));
        double power = harmonic * harmonic / 4 * SIDE * SIDE / 0.25;
        double bins = 0;
        for (int u = -12; u <= 12; u++) {
            for (int v = -12; v <= 12; v++) {
                bins += Math.rint(Math.hypot(u, v)) == 8 ? 1 : 0;
            }
        }
        assertEquals(2 * power / bins, spectrum.mean()[8], 1e-6 * power);
        assertEquals(0, spectrum.lowBand(8), 1e-9);
    }

    @Test
    void openingAgreesWithItsDefinition() {
        Random random = new Random(3);
        int across = 40;
        boolean[] set = new boolean[across * 30];
        for (int i = 0; i < set.length; i++) {
            set[i] = random.nextInt(25) > 0;
        }
        for (double radius : new double[] {1, 1.5, 2, 4.535}) {
            boolean[] expected = new boolean[set.length];
            for (int i = 0; i < set.length; i++) {
                boolean whole = true;
                for (int j = 0; j < set.length; j++) {
                    double d = Math.hypot(i % across - j % across, i / across - j / across);
                    whole &= set[j] || d > radius;
                }
                expected[i] = whole;
            }
            assertArrayEquals(expected, GrainQuality.eroded(set, across, radius), "radius " + radius);
        }
    }

    @Test
    void survivalKeepsBroadAndDropsNarrow() {
        boolean[] bars = new boolean[SIDE * SIDE];
        for (int i = 0; i < bars.length; i++) {
            bars[i] = i % 16 < 6 || i % 16 == 10;
        }
        assertEquals(6.0 / 7, GrainQuality.survival(bars, SIDE, 3, 4, 48), 1e-9);
    }

    @Test
    void clustersAreCountedAcrossTheSeam() {
        boolean[] bits = new boolean[SIDE * SIDE];
        bits[0] = true;
        bits[SIDE - 1] = true;
        bits[(SIDE - 1) * SIDE] = true;
        bits[20 * SIDE + 20] = true;
        assertArrayEquals(new int[] {3, 1}, GrainQuality.clusters(bits, SIDE));
    }

    private static boolean[] chance(double share, int seed) {
        Random random = new Random(seed);
        boolean[] bits = new boolean[SIDE * SIDE];
        for (int i = 0; i < bits.length; i++) {
            bits[i] = random.nextDouble() < share;
        }
        return bits;
    }

    /** Moves the tightest cluster's centre to the largest void until it would move back. */
    private static void evenOut(boolean[] bits) {
        double[] crowd = new double[bits.length];
        for (int i = 0; i < bits.length; i++) {
            if (bits[i]) {
                add(crowd, i, 1);
            }
        }
        for (int move = 0; move < 5000; move++) {
            int tightest = -1;
            for (int i = 0; i < bits.length; i++) {
                tightest = bits[i] && (tightest < 0 || crowd[i] > crowd[tightest]) ? i : tightest;
            }
            bits[tightest] = false;
            add(crowd, tightest, -1);
            int emptiest = -1;
            for (int i = 0; i < bits.length; i++) {
                emptiest = !bits[i] && (emptiest < 0 || crowd[i] < crowd[emptiest]) ? i : emptiest;
            }
            bits[emptiest] = true;
            add(crowd, emptiest, 1);
            if (emptiest == tightest) {
                return;
            }
        }
    }

    private static void add(double[] crowd, int at, int sign) {
        for (int dy = -9; dy <= 9; dy++) {
            for (int dx = -9; dx <= 9; dx++) {
                int i = Math.floorMod(at / SIDE + dy, SIDE) * SIDE + Math.floorMod(at % SIDE + dx, SIDE);
                crowd[i] += sign * Math.exp(-(dx * dx + dy * dy) / (2 * 1.5 * 1.5));
            }
        }
    }
}
