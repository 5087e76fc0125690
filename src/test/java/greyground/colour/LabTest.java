package greyground.colour;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** CIELAB and CIEDE2000. Rows of colours were computed in double precision apart from the program unless a source stands there. */
class LabTest {
    /** Sharma, Wu and Dalal 2005, Color Res. Appl. 30, 21-30, table 1: two colours and their difference, printed to four digits. */
    private static final double[][] PUBLISHED = {
        {50, 2.6772, -79.7751, 50, 0, -82.7485, 2.0425},
        {50, 3.1571, -77.2803, 50, 0, -82.7485, 2.8615},
        {50, 2.8361, -74.0200, 50, 0, -82.7485, 3.4412},
        {50, -1.3802, -84.2814, 50, 0, -82.7485, 1.0000},
        {50, -1.1848, -84.8006, 50, 0, -82.7485, 1.0000},
        {50, -0.9009, -85.5211, 50, 0, -82.7485, 1.0000},
        {50, 0, 0, 50, -1, 2, 2.3669},
        {50, -1, 2, 50, 0, 0, 2.3669},
        {50, 2.49, -0.001, 50, -2.49, 0.0009, 7.1792},
        {50, 2.49, -0.001, 50, -2.49, 0.0010, 7.1792},
        {50, 2.49, -0.001, 50, -2.49, 0.0011, 7.2195},
        {50, 2.49, -0.001, 50, -2.49, 0.0012, 7.2195},
        {50, -0.001, 2.49, 50, 0.0009, -2.49, 4.8045},
        {50, -0.001, 2.49, 50, 0.0010, -2.49, 4.8045},
        {50, -0.001, 2.49, 50, 0.0011, -2.49, 4.7461},
        {50, 2.5, 0, 50, 0, -2.5, 4.3065},
        {50, 2.5, 0, 73, 25, -18, 27.1492},
        {50, 2.5, 0, 61, -5, 29, 22.8977},
        {50, 2.5, 0, 56, -27, -3, 31.9030},
        {50, 2.5, 0, 58, 24, 15, 19.4535},
        {50, 2.5, 0, 50, 3.1736, 0.5854, 1.0000},
        {50, 2.5, 0, 50, 3.2972, 0, 1.0000},
        {50, 2.5, 0, 50, 1.8634, 0.5757, 1.0000},
        {50, 2.5, 0, 50, 3.2592, 0.3350, 1.0000},
        {60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644},
        {63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630},
        {61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731},
        {35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645},
        {22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373},
        {36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146},
        {90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441},
        {90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381},
        {6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377},
        {2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082}
    };

    @Test
    void differencesAreThosePublishedAndTheSameBothWays() {
        for (double[] row : PUBLISHED) {
            Lab one = new Lab(row[0], row[1], row[2]);
            Lab other = new Lab(row[3], row[4], row[5]);
            assertEquals(row[6], one.difference(other), 5.1e-5);
            assertEquals(one.difference(other), other.difference(one), 1e-12);
        }
    }

    @Test
    void coloursOfAScreen() {
        assertLab(58.5921, 28.4558, 45.8084, Lab.of(Xyz.ofCode(0xC8783C)));
        assertLab(54.2896, 80.8144, 69.8897, Lab.of(Xyz.ofCode(0xFF0000)));
        assertLab(29.5659, 68.2862, -112.0329, Lab.of(Xyz.ofCode(0x0000FF)));
        assertLab(25.7632, 6.3528, -38.3704, Lab.of(Xyz.ofCode(0x1E3C78)));
        assertLab(100, 0, 0, Lab.of(Xyz.ofCode(0xFFFFFF)));
        Lab brown = Lab.of(Xyz.ofCode(0xC8783C));
        assertEquals(53.9272, brown.chroma(), 0.01);
        assertEquals(58.1518, brown.hueDegrees(), 0.01);
        assertArrayEquals(
                new double[] {.330645, .265891, .058530}, Xyz.ofCode(0xC8783C).values(), 1e-5);
    }

    @Test
    void backToLight() {
        assertArrayEquals(
                new double[] {.3526951, .2812333, .1411513},
                new Lab(60, 30, 20).xyz().values(),
                1e-7);
        assertArrayEquals(
                new double[] {.0058324, .0055353, .0061550},
                new Lab(5, 2, -3).xyz().values(),
                1e-7);
        assertArrayEquals(
                new double[] {.581337, .198399, .159405},
                new Lab(60, 30, 20).xyz().light(),
                1e-5);
        assertArrayEquals(
                new double[] {-.208433, .280062, .491369},
                new Lab(50, -60, -40).xyz().light(),
                1e-5);
        assertEquals(0xC97B6F, new Lab(60, 30, 20).code());
    }

    /** Every code that a screen is told comes back; a colour that no screen shows keeps lightness and hue. */
    @Test
    void codes() {
        for (int code = 0; code < 0x1000000; code += 0x010307) {
            assertEquals(code, Lab.of(Xyz.ofCode(code)).code(), Integer.toHexString(code));
        }
        Lab wanted = new Lab(50, -60, -40);
        Lab shown = Lab.of(Xyz.ofCode(wanted.code()));
        assertEquals(50, shown.lightness(), 0.3);
        assertEquals(wanted.hueDegrees(), shown.hueDegrees(), 1);
    }

    private static void assertLab(double lightness, double a, double b, Lab lab) {
        assertEquals(lightness, lab.lightness(), 0.01);
        assertEquals(a, lab.a(), 0.01);
        assertEquals(b, lab.b(), 0.01);
    }
}
