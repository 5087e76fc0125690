package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Light, lightness and density against figures computed from the published formulas named at each test. */
class LightnessTest {
    /** CIE 15:2004, 8.2.1.1. */
    @Test
    void cieLightnessOfKnownLuminances() {
        assertEquals(49.4961, Lightness.ofLuminance(0.18), 1e-4);
        assertEquals(0.184187, Lightness.toLuminance(50), 1e-6);
        assertEquals(100, Lightness.ofLuminance(1), 1e-12);
        assertEquals(0, Lightness.ofLuminance(0));
        assertEquals(53.585, Lightness.ofLuminance(Srgb.decode(128 / 255.0)), 1e-3);
        assertEquals(49.637, Lightness.ofLuminance(Srgb.decode(118 / 255.0)), 1e-3);
    }

    /** CIE 15:2004 with D = -log10 Y. */
    @Test
    void cieLightnessOfKnownDensities() {
        assertEquals(17.9723, Lightness.ofDensity(1.6), 1e-4);
        assertEquals(26.7686, Lightness.ofDensity(1.3), 1e-4);
        assertEquals(10.9851, Lightness.ofDensity(1.9), 1e-4);
        assertEquals(94.7791, Lightness.ofDensity(0.06), 1e-4);
        assertEquals(0.117456, Lightness.toDensity(90), 1e-6);
        assertEquals(0.734742, Lightness.toDensity(50), 1e-6);
        assertEquals(0.744727, -Math.log10(0.18), 1e-6);
    }

    /** The derivative of CIE 15:2004, 8.2.1.1, on both sides of the seam, against quotients of differences. */
    @Test
    void theSlopeIsThatOfLightness() {
        for (double luminance : new double[] {0.001, 0.02, 0.18, 0.9}) {
            double step = 1e-6 * luminance;
            double quotient =
                    (Lightness.ofLuminance(luminance + step) - Lightness.ofLuminance(luminance - step)) / (2 * step);
            assertEquals(1, Lightness.slope(luminance) / quotient, 1e-7);
        }
    }

    /** Lindbloom 2003: with the exact fractions the two branches meet at L* = 8, Y = 216/24389. */
    @Test
    void theBranchesMeetWithoutASeam() {
        double seam = 216.0 / 24389;
        assertEquals(8, Lightness.ofLuminance(seam), 1e-13);
        assertEquals(Lightness.ofLuminance(seam), Lightness.ofLuminance(Math.nextUp(seam)), 1e-12);
        assertEquals(seam, Lightness.toLuminance(8), 1e-16);
    }

    @Test
    void lightnessAndLuminanceUndoEachOther() {
        double before = -1;
        for (int i = 0; i <= 65_535; i += 13) {
            double luminance = i / 65_535.0;
            double lightness = Lightness.ofLuminance(luminance);
            assertTrue(lightness > before);
            assertEquals(luminance, Lightness.toLuminance(lightness), 1e-14);
            before = lightness;
        }
    }

    /** IEC 61966-2-1:1999, both branches. */
    @Test
    void srgbDecodesKnownCodes() {
        assertEquals(0.215861, Srgb.decode(128 / 255.0), 1e-6);
        assertEquals(0.181164, Srgb.decode(118 / 255.0), 1e-6);
        assertEquals(0.00303527, Srgb.decode(10 / 255.0), 1e-7);
        assertEquals(0.00334654, Srgb.decode(11 / 255.0), 1e-7);
        assertEquals(0.665827, -Math.log10(Srgb.decode(128 / 255.0)), 1e-6);
        for (int code = 0; code <= 255; code++) {
            assertEquals(code / 255.0, Srgb.encode(Srgb.decode(code / 255.0)), 1e-7);
        }
    }
}
