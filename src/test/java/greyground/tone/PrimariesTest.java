package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Adapted luminance against published matrices. */
class PrimariesTest {
    /** ICC Technical Note 02-2003, whose D65 has four figures. */
    @Test
    void bradfordTakesDaylightToTheProfileWhite() {
        Adaptation.White daylight = new Adaptation.White(0.9504, 1, 1.0889);
        double[][] expected = {
            {1.04790738, 0.02293338, -0.05020163},
            {0.02960596, 0.99045604, -0.01707553},
            {-0.00924679, 0.01506268, 0.75179123}
        };
        double[][] back = {
            {0.95549343, -0.02308619, 0.06327970},
            {-0.02834848, 1.00997224, 0.02104663},
            {0.01232025, -0.02051948, 1.33051314}
        };
        double[][] matrix = Adaptation.matrix(daylight, Adaptation.D50);
        double[][] inverse = Adaptation.matrix(Adaptation.D50, daylight);
        for (int row = 0; row < 3; row++) {
            assertArrayEquals(expected[row], matrix[row], 1e-7);
            assertArrayEquals(back[row], inverse[row], 1e-7);
        }
        double[] adapted = Adaptation.times(matrix, new double[] {0.313515, 0.260385, 0.076485});
        assertArrayEquals(new double[] {0.330667, 0.265876, 0.0585239}, adapted, 1e-6);
        assertEquals(1, Adaptation.times(matrix, daylight.xyz())[1], 1e-6);
    }

    /**
     * W3C CSS Color Module Level 4, 18 (sample code): the matrix from linear sRGB to XYZ in exact fractions, then the middle row
     * of D65 to D50. Its D50 is (0.3457, 0.3585), in the fourth figure another than the connection space's: hence 5e-5.
     */
    @Test
    void standardRgbHasThePublishedLuminancesUnderD50() {
        double[][] xyz = {
            {506_752 / 1_228_815.0, 87_881 / 245_763.0, 12_673 / 70_218.0},
            {87_098 / 409_605.0, 175_762 / 245_763.0, 12_673 / 175_545.0},
            {7918 / 409_605.0, 87_881 / 737_289.0, 1_001_167 / 1_053_270.0}
        };
        double[] middle = {0.02962780877005599, 0.9904344267538799, -0.017073799063418826};
        double[] found = Primaries.SRGB.luminances();
        for (int light = 0; light < 3; light++) {
            double expected = middle[0] * xyz[0][light] + middle[1] * xyz[1][light] + middle[2] * xyz[2][light];
            assertEquals(expected, found[light], 5e-5);
        }
    }

    /** Lindbloom, RGB/XYZ Matrices, Bradford-adapted to D50 (0.96422, 1, 0.82521): the middle rows, white as listed there. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "sRGB, 0.64, 0.33, 0.30, 0.60, 0.15, 0.06, 0.3127, 0.3290, 0.2225045, 0.7168786, 0.0606169",
        "opRGB (IEC 61966-2-5), 0.64, 0.33, 0.21, 0.71, 0.15, 0.06, 0.3127, 0.3290, 0.3111242, 0.6256560, 0.0632197",
        "ROMM RGB (ISO 22028-2), 0.7347, 0.2653, 0.1596, 0.8404, 0.0366, 0.0001, 0.3457, 0.3585, 0.2880402, 0.7118741, 0.0000857",
    })
    void otherCodingsHaveTheirs(
            String name,
            double rx,
            double ry,
            double gx,
            double gy,
            double bx,
            double by,
            double wx,
            double wy,
            double red,
            double green,
            double blue) {
        double[] found = new Primaries(rx, ry, gx, gy, bx, by, wx, wy).luminances();
        assertArrayEquals(new double[] {red, green, blue}, found, 1e-4);
    }

    @Test
    void luminancesOfAnyLightsMakeOneWhite() {
        Random random = new Random(5);
        for (int i = 0; i < 200; i++) {
            Primaries lights = new Primaries(
                    0.55 + 0.15 * random.nextDouble(),
                    0.30,
                    0.2,
                    0.6 + 0.2 * random.nextDouble(),
                    0.15,
                    0.1 * random.nextDouble(),
                    0.3 + 0.06 * random.nextDouble(),
                    0.3 + 0.06 * random.nextDouble());
            assertEquals(1, DoubleStream.of(lights.luminances()).sum(), 1e-15);
        }
    }

    @Test
    void lightsThatMakeNoWhiteAreRefused() {
        double[][] bad = {
            {0.64, 0.33, 0.64, 0.33, 0.15, 0.06, 0.3127, 0.329},
            {0.1, 0.1, 0.2, 0.2, 0.3, 0.3, 0.3127, 0.329},
            {0.64, 0.33, 0.3, 0.6, 0.15, 0.06, 0.3127, 0},
            {0.64, 0.33, 0.3, 0.6, 0.15, 0.06, 0.7, 0.4},
            {Double.NaN, 0.33, 0.3, 0.6, 0.15, 0.06, 0.3127, 0.329},
        };
        for (double[] b : bad) {
            assertThrows(
                    IllegalArgumentException.class,
                    () -> new Primaries(b[0], b[1], b[2], b[3], b[4], b[5], b[6], b[7]));
        }
    }
}
