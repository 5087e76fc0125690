package greyground.art.touch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EvenPaperTest {
    private static final int SIDE = 300;
    private static final double WIDTH = 15.0 / SIDE;

    /** Strokes five pixels wide, thirty-five apart. */
    private static boolean ink(int x, int y) {
        return y % 40 < 5 && x > 20 && x < SIDE - 20;
    }

    private static GreyPlane page(DoubleBinaryOperator light) {
        return ArrayPlane.of(SIDE, SIDE, (x, y) ->
                (int) Math.round(65_535 * light.applyAsDouble(x, y) * (ink(x, y) ? 0.06 : 1)));
    }

    private static int[] even(GreyPlane page, double width) throws Exception {
        EvenPaper paper = EvenPaper.of(page, width, 2, Progress.NONE).orElseThrow();
        return CrispnessTest.touched(paper, page, 64, 2);
    }

    private static double[] paperOf(int[] codes) {
        return IntStream.range(0, codes.length)
                .filter(i -> !ink(i % SIDE, i / SIDE))
                .mapToDouble(i -> CrispnessTest.lightness(codes[i]))
                .toArray();
    }

    private static double spread(double[] values) {
        double mean = Arrays.stream(values).average().orElseThrow();
        return Math.sqrt(Arrays.stream(values)
                .map(value -> (value - mean) * (value - mean))
                .average()
                .orElseThrow());
    }

    private static int[] codes(GreyPlane page) {
        short[] row = new short[SIDE];
        int[] all = new int[SIDE * SIDE];
        for (int y = 0; y < SIDE; y++) {
            page.readRow(y, row);
            for (int x = 0; x < SIDE; x++) {
                all[y * SIDE + x] = row[x] & 0xFFFF;
            }
        }
        return all;
    }

    @Test
    void noWidthIsNoTouch() throws Exception {
        assertTrue(EvenPaper.of(page((x, y) -> 0.7), 0, 2, Progress.NONE).isEmpty());
    }

    @Test
    void aPageInEvenLightStaysBitForBit() throws Exception {
        GreyPlane page = page((x, y) -> 0.73);
        assertArrayEquals(codes(page), even(page, WIDTH));
        EvenPaper.Found found =
                EvenPaper.of(page, WIDTH, 2, Progress.NONE).orElseThrow().found();
        assertEquals(1, found.lightRatio(), 1e-9);
        assertEquals(0, found.stainedShare());
    }

    /**
     * What light does to a page it does by a factor, and so it goes: paper and ink are those of the lightest place. At the rim a closing is too light by
     * what falls off over half a square, 8 (1.2 + 0.8) / 300 of the light at this page's corner or L* 1.7.
     */
    @Test
    void lightIsTakenOutOfPaperAndInkAlike() throws Exception {
        int[] found = even(page((x, y) -> 0.85 * Math.exp(-1.2 * x / SIDE - 0.4 * y * y / SIDE / SIDE)), WIDTH);
        for (int i = 0; i < found.length; i++) {
            int x = i % SIDE;
            int y = i / SIDE;
            boolean rim = Math.min(Math.min(x, y), SIDE - 1 - Math.max(x, y)) < 15;
            double expected = 100 * Math.cbrt(0.85 * (ink(x, y) ? 0.06 : 1));
            assertEquals(expected, 100 * Math.cbrt(found[i] / 65_535.0), rim ? 1.7 : 1, x + "," + y);
        }
    }

    /** Shade from .68 to .85 over paper with fibres, as a sheet lies under a lamp. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void onlyThePapersFibresStay(long seed) throws Exception {
        double[] fibres =
                new Random(seed).doubles((long) SIDE * SIDE, -0.012, 0.012).toArray();
        DoubleBinaryOperator light = (x, y) -> 0.68 + 0.17 * x / SIDE + fibres[(int) y * SIDE + (int) x];
        GreyPlane page = page(light);
        double fibresAlone = spread(paperOf(codes(page((x, y) -> 0.765 + fibres[(int) y * SIDE + (int) x]))));
        assertTrue(spread(paperOf(codes(page))) > 2);
        assertEquals(fibresAlone, spread(paperOf(even(page, WIDTH))), 0.1);
    }

    /**
     * Print on the back shows through by 1 - t (1 - R), 3.796213 L* below white for t = 0.1 and R = 0.05 (after Sharma 2001): what of it is wider
     * than the square goes and is told, what is narrower is drawing.
     */
    @ParameterizedTest
    @CsvSource({"40, true", "8, false"})
    void showThroughGoesWhereItIsWiderThanTheSquare(int bar, boolean goes) throws Exception {
        double shown = 1 - 0.1 * (1 - 0.05);
        double depth = 100 - Lightness.ofLuminance(shown);
        assertEquals(3.796213, depth, 1e-5);
        GreyPlane page =
                ArrayPlane.of(SIDE, SIDE, (x, y) -> (int) Math.round(65_535 * (x >= 140 && x < 140 + bar ? shown : 1)));
        EvenPaper paper = EvenPaper.of(page, WIDTH, 2, Progress.NONE).orElseThrow();
        int there = CrispnessTest.touched(paper, page, 64, 2)[150 * SIDE + 140 + bar / 2];
        assertEquals(goes ? 100 : 100 - depth, CrispnessTest.lightness(there), 0.05);
        assertEquals(goes ? depth : 0, paper.found().deepestStain(), 0.4);
        assertEquals(goes ? (double) bar / SIDE : 0, paper.found().stainedShare(), 0.01);
    }

    /** A wide black is drawing, and takes no more of the light than its paper does. */
    @Test
    void wideBlacksStay() throws Exception {
        GreyPlane page = ArrayPlane.of(SIDE, SIDE, (x, y) ->
                (int) Math.round(65_535 * (0.8 - 0.4 * x / SIDE) * (Math.hypot(x - 150, y - 150) < 120 ? 0.05 : 1)));
        int[] found = even(page, WIDTH);
        assertEquals(Lightness.ofLuminance(0.8 * 0.05), CrispnessTest.lightness(found[150 * SIDE + 150]), 1);
        assertEquals(Lightness.ofLuminance(0.8), CrispnessTest.lightness(found[10 * SIDE + 290]), 1);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 7, 300})
    void neitherBandsNorThreadsAreSeen(int rows) throws Exception {
        Random random = new Random(9);
        GreyPlane page = ArrayPlane.of(SIDE, SIDE, (x, y) -> random.nextInt(65_536));
        EvenPaper one = EvenPaper.of(page, 0.2, 1, Progress.NONE).orElseThrow();
        EvenPaper other = EvenPaper.of(page, 0.2, 3, Progress.NONE).orElseThrow();
        assertArrayEquals(CrispnessTest.touched(one, page, 64, 1), CrispnessTest.touched(other, page, rows, 3));
    }

    /** The smallest art there is, strips, and black paper. */
    @ParameterizedTest
    @CsvSource({"1, 1, 30000", "1, 900, 20000", "900, 1, 65535", "40, 30, 0"})
    void anyArtIsTaken(int width, int height, int code) throws Exception {
        GreyPlane page = ArrayPlane.of(width, height, (x, y) -> code);
        EvenPaper paper = EvenPaper.of(page, 0.03, 2, Progress.NONE).orElseThrow();
        for (int found : CrispnessTest.touched(paper, page, 64, 2)) {
            assertEquals(code, found);
        }
    }
}
