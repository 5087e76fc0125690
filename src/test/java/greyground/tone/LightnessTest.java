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

    /** ASTM D1535-08, equation 2. */
    @Test
    void munsellGreysHaveTheirLuminance() {
        assertEquals(0.192718, Munsell.luminance(5), 1e-6);
        assertEquals(0.0304812, Munsell.luminance(2), 1e-7);
        assertEquals(0.766956, Munsell.luminance(9), 1e-6);
        assertEquals(1, Munsell.luminance(10), 1e-5);
        assertEquals(51.0037, Lightness.ofLuminance(Munsell.luminance(5)), 1e-4);
        assertEquals(20.2356, Lightness.ofLuminance(Munsell.luminance(2)), 1e-4);
        assertEquals(90.1813, Lightness.ofLuminance(Munsell.luminance(9)), 1e-4);
        // Newhall, Nickerson and Judd 1943: relative to magnesium oxide, 1.0257 times as much.
        assertEquals(19.77, 100 * 1.0257 * Munsell.luminance(5), 5e-3);
    }

    /** R' = (1 - f) R + f Rbar, arithmetic. */
    @Test
    void flareHidesDeepBlacks() {
        Flare onePerCent = new Flare(0.01, 1);
        assertEquals(1.70115, onePerCent.readDensity(2.0), 1e-5);
        assertEquals(0.962574, onePerCent.readDensity(1.0), 1e-6);
        assertEquals(1.52298, new Flare(0.005, 1).readDensity(1.6), 1e-5);
        assertEquals(1.35050, new Flare(0.02, 1).readDensity(1.6), 1e-5);
        assertEquals(2.0, onePerCent.readDensity(12), 1e-6);
        assertEquals(1.6, onePerCent.trueDensity(onePerCent.readDensity(1.6)), 1e-12);
        assertTrue(Double.isNaN(onePerCent.trueDensity(2.1)));
    }
}
