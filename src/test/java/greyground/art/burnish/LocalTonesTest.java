package greyground.art.burnish;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.art.burnish.LocalTouch.Ellipse;
import greyground.art.burnish.LocalTouch.Gradient;
import greyground.art.burnish.LocalTouch.Stroke;
import greyground.quantity.Offset;
import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.Lightness;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LocalTonesTest {
    private static final LocalTones.Lie HALF_MILLIMETRES = new LocalTones.Lie(0, 0, 0.5, 0.5);

    private static final List<LocalTouch> THREE = List.of(
            new Stroke(9.3, 12, 5, List.of(new Offset(5, 5), new Offset(40, 22.5), new Offset(12, 31))),
            new Ellipse(-17.1, new Offset(28, 20), 14, 6, 33, 7),
            new Gradient(4.7, new Offset(0, 40), new Offset(10, 4)));

    private static GreyPlane noise(int width, int height) {
        int[] codes = new Random(9).ints((long) width * height, 0, 65_536).toArray();
        return ArrayPlane.of(width, height, (x, y) -> codes[y * width + x]);
    }

    private static GreyPlane even(int width, int height, double lightness) {
        int code = (int) Math.round(65_535 * Lightness.toLuminance(lightness));
        return ArrayPlane.of(width, height, (x, y) -> code);
    }

    private static int[] touched(List<LocalTouch> touches, GreyPlane plane, int bandRows, int threads)
            throws Exception {
        return touched(new LocalTones(touches, HALF_MILLIMETRES, ArtRange.WHOLE), plane, bandRows, threads);
    }

    private static int[] touched(LocalTones tones, GreyPlane plane, int bandRows, int threads) throws Exception {
        int[] all = new int[plane.width() * plane.height()];
        tones.rows(
                plane,
                bandRows,
                threads,
                (first, count, rows) -> {
                    for (int i = 0; i < count * plane.width(); i++) {
                        all[first * plane.width() + i] = rows[i] & 0xFFFF;
                    }
                },
                Progress.NONE);
        return all;
    }

    private static int[] codes(GreyPlane plane) {
        int[] codes = new int[plane.width() * plane.height()];
        short[] row = new short[plane.width()];
        for (int y = 0; y < plane.height(); y++) {
            plane.readRow(y, row);
            for (int x = 0; x < row.length; x++) {
                codes[y * row.length + x] = row[x] & 0xFFFF;
            }
        }
        return codes;
    }

    private static double lightness(int code) {
        return Lightness.ofLuminance(code / 65_535.0);
    }

    /** Worked by hand and by numpy: t² (3 - 2 t). */
    @ParameterizedTest
    @CsvSource({"-3, 0", "0, 0", "0.25, 0.15625", "0.5, 0.5", "0.75, 0.84375", "1, 1", "7, 1"})
    void theStepIsSmooth(double t, double expected) {
        assertEquals(expected, LocalTouch.smooth(t), 1e-12);
    }

    /** A range of L* 15 to 94, a knee of 3; worked by numpy from the equation. */
    @ParameterizedTest
    @CsvSource({
        "50, -12, 38",
        "20, -10, 15.208450",
        "90, 8, 93.709084",
        "93, 8, 93.892978",
        "18, -10, 15.107022",
        "94, 0, 94"
    })
    void theLimitIsSoft(double before, double change, double expected) {
        assertEquals(expected, LocalTones.limited(before, change, 15, 94), 1e-6);
    }

    /** Worked by numpy, and by brute force over the edge to 1e-8. */
    @ParameterizedTest
    @CsvSource({"10, 4, 2, 3.187940", "10, 10, 1, 1.924501", "-6, 4, 1, 2.484520", "10, 5, 0, 10", "10, 5, 9, 0"})
    void tonesAcrossAnEdgeMayChangePlaces(double strength, double feather, double slope, double expected) {
        assertEquals(expected, LocalTouch.reversal(strength, feather, slope), 1e-6);
        double worst = 0;
        double highest = Double.NEGATIVE_INFINITY;
        for (double x = -feather; x <= feather; x += feather / 20_000) {
            // The art rises to the right, what is added falls.
            double tone = slope * x - Math.abs(strength) * LocalTouch.smooth(x / feather + 0.5);
            highest = Math.max(highest, tone);
            worst = Math.max(worst, highest - tone);
        }
        assertEquals(worst, LocalTouch.reversal(strength, feather, slope), 1e-5);
    }

    @Test
    void tonesKeepTheirOrderAndTheirRange() {
        for (double change = -40; change <= 40; change += 0.7) {
            double last = -1;
            for (double tone = 0; tone <= 100; tone += 0.01) {
                double now = LocalTones.limited(tone, change, 15, 94);
                assertTrue(now > last, "L* " + tone + " changed by " + change);
                assertTrue(change <= 0 || now <= Math.max(tone, 94), "L* " + tone + " changed by " + change);
                assertTrue(change >= 0 || now >= Math.min(tone, 15), "L* " + tone + " changed by " + change);
                last = now;
            }
        }
    }

    @Test
    void orderBandsAndThreadsCanNotBeSeen() throws Exception {
        GreyPlane art = noise(101, 83);
        int[] whole = touched(THREE, art, 83, 1);
        for (int rows : new int[] {1, 7, 40, 128}) {
            assertArrayEquals(whole, touched(THREE, art, rows, 1 + rows % 3), rows + " rows");
        }
        List<LocalTouch> many = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            many.add(new Ellipse(0.1 + i / 7.0, new Offset(i, 41 - i), 3 + i / 3.0, 5, 9.1 * i, 2 + i / 10.0));
            many.add(new Stroke(-i / 3.0, 2, 1 + i / 11.0, List.of(new Offset(3, i), new Offset(47, 40 - i))));
        }
        int[] told = touched(many, art, 20, 2);
        for (int seed = 0; seed < 5; seed++) {
            Collections.shuffle(many, new Random(seed));
            assertArrayEquals(told, touched(many, art, 20, 2), "shuffled");
        }
        assertFalse(Arrays.equals(codes(art), told));
    }

    @Test
    void atNothingAndOutsideItsReachEveryBitStays() throws Exception {
        GreyPlane art = noise(101, 83);
        assertArrayEquals(codes(art), touched(List.of(), art, 40, 1));
        List<LocalTouch> nothing = List.of(
                new Stroke(0, 12, 5, List.of(new Offset(5, 5))),
                new Ellipse(0, new Offset(28, 20), 14, 6, 33, 7),
                new Gradient(0, new Offset(0, 40), new Offset(10, 4)));
        assertArrayEquals(codes(art), touched(nothing, art, 40, 1));
        int[] found = touched(List.of(new Ellipse(20, new Offset(25, 20), 5, 5, 0, 4)), art, 40, 1);
        int[] before = codes(art);
        for (int y = 0; y < 83; y++) {
            for (int x = 0; x < 101; x++) {
                double far = Math.hypot((x + 0.5) / 2 - 25, (y + 0.5) / 2 - 20);
                assertTrue(far <= 7 || found[y * 101 + x] == before[y * 101 + x], far + " mm away");
            }
        }
    }

    @Test
    void twoOfFiveAreOneOfTenAndPlusUndoesMinus() throws Exception {
        GreyPlane art = noise(101, 83);
        LocalTouch five = new Ellipse(5, new Offset(28, 20), 14, 6, 33, 7);
        LocalTouch ten = new Ellipse(10, new Offset(28, 20), 14, 6, 33, 7);
        LocalTouch less = new Ellipse(-10, new Offset(28, 20), 14, 6, 33, 7);
        assertArrayEquals(touched(List.of(ten), art, 40, 1), touched(List.of(five, five), art, 40, 1));
        assertArrayEquals(codes(art), touched(List.of(ten, less), art, 40, 1));
    }

    /** A stroke of 10 mm with a feather of 4 mm on L* 50: 10 in its middle, 8.4375 a millimetre inside its edge, 1.5625 as far outside. */
    @Test
    void aStrokeIsAsWideAndSoftAsItSays() throws Exception {
        LocalTones tones = new LocalTones(
                List.of(new Stroke(10, 10, 4, List.of(new Offset(0, 20), new Offset(200, 20), new Offset(0, 20)))),
                new LocalTones.Lie(-0.05, -0.05, 0.1, 0.1),
                ArtRange.WHOLE);
        int[] found = touched(tones, even(120, 300, 50), 50, 2);
        double[][] expected = {{200, 60}, {240, 58.4375}, {250, 55}, {260, 51.5625}, {271, 50}, {140, 51.5625}};
        for (double[] each : expected) {
            assertEquals(each[1], lightness(found[(int) each[0] * 120 + 60]), 0.002, each[0] / 10 + " mm down");
        }
    }

    /** Against the nearest of a million points on the ellipse. */
    @ParameterizedTest
    @CsvSource({"14, 6", "6, 14", "5, 5", "50, 1", "0.1, 3000"})
    void theEllipsesDistanceIsTrue(double a, double b) {
        Random random = new Random(4);
        for (int i = 0; i < 40; i++) {
            double x = (random.nextDouble() * 3 - 1.5) * (i % 9 == 0 ? 0 : a);
            double y = (random.nextDouble() * 3 - 1.5) * (i % 7 == 0 ? 0 : b);
            double nearest = Double.POSITIVE_INFINITY;
            int points = 1_000_000;
            for (int k = 0; k < points; k++) {
                double angle = Math.PI / 2 * k / (points - 1);
                nearest = Math.min(
                        nearest, Math.hypot(a * Math.cos(angle) - Math.abs(x), b * Math.sin(angle) - Math.abs(y)));
            }
            double sign = Math.hypot(x / a, y / b) <= 1 ? 1 : -1;
            double most = Math.max(a, b) * 4;
            assertEquals(sign * nearest, new EllipseDistance(a, b).inside(x, y, most), 1e-5 * Math.max(a, b));
            double held = Math.max(-0.3, Math.min(0.3, sign * nearest));
            assertEquals(held, new EllipseDistance(a, b).inside(x, y, 0.3), 1e-5 * Math.max(a, b));
        }
    }

    /** Of twenty points each, over art of a megapixel. */
    @Test
    void tenThousandStrokesComeOutAlikeInBandsOfAnyHeight() throws Exception {
        Random random = new Random(1);
        List<LocalTouch> many = new ArrayList<>();
        for (int i = 0; i < 10_000; i++) {
            double x = random.nextDouble() * 200;
            double y = random.nextDouble() * 200;
            List<Offset> points = new ArrayList<>();
            for (int k = 0; k < 20; k++) {
                points.add(new Offset(x + k * random.nextDouble(), y + k * random.nextDouble()));
            }
            many.add(new Stroke(random.nextDouble() * 6 - 3, 2, 1, points));
        }
        LocalTones tones = new LocalTones(many, new LocalTones.Lie(0, 0, 0.2, 0.2), ArtRange.WHOLE);
        GreyPlane art = even(1000, 1000, 50);
        int[] told = touched(tones, art, 128, 2);
        assertArrayEquals(told, touched(tones, art, 300, 1));
        assertTrue(Arrays.stream(told).distinct().count() > 1000);
    }
}
