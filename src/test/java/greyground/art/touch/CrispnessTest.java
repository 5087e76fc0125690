package greyground.art.touch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.Lightness;
import greyground.tone.ToneCurve;
import greyground.tone.UsableCoverage;
import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CrispnessTest {
    /** So wide apart that no slope is too steep. */
    private static final double ANY_SLOPE = 1e-6;

    private static final ToneCurve STRAIGHT = straight();

    private static ToneCurve straight() {
        char[] table = new char[ToneCurve.CODES];
        for (int grey = 0; grey < table.length; grey++) {
            double share = Lightness.ofLuminance((double) grey / ToneCurve.SOLID) / 100;
            table[grey] = (char) Math.round((1 - Math.min(1, share)) * ToneCurve.SOLID);
        }
        return new ToneCurve("straight in L*", table);
    }

    private static Crispness of(double amount, double radius, double pixel, double spacing) {
        return new Crispness(amount, radius, pixel, pixel, ArtRange.WHOLE, STRAIGHT, spacing, new UsableCoverage(0, 1));
    }

    /** A plane of rows that a test makes by lightness. */
    static GreyPlane plane(int width, int height, DoubleBinaryOperator lightness) {
        return ArrayPlane.of(width, height, (x, y) ->
                (int) Math.round(65_535 * Lightness.toLuminance(lightness.applyAsDouble(x, y))));
    }

    static int[] touched(Touch touch, GreyPlane plane, int bandRows, int threads) throws Exception {
        int[] all = new int[plane.width() * plane.height()];
        touch.rows(
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

    static double lightness(int code) {
        return Lightness.ofLuminance(code / 65_535.0);
    }

    private static final DoubleBinaryOperator NOISE = noise();

    private static DoubleBinaryOperator noise() {
        double[] values = new Random(2).doubles(97 * 83, 5, 99).toArray();
        return (x, y) -> values[(int) y * 97 + (int) x];
    }

    /** Worked from the equation by numpy. */
    @ParameterizedTest
    @CsvSource({
        "180, 20, 45, 2, 0.23669",
        "120, 15, 30, 4, 0.26228",
        "180, 15, 45, 2, 0.13136",
        "260, 15, 65, 4, 0.05545"
    })
    void givesBackWhatThePlateTakes(double spacing, double blur, double radius, double spacings, double expected) {
        assertEquals(expected, Crispness.amountFor(spacing, blur, radius, spacings), 1e-5);
    }

    /** A step from 40 to 60 blurred by a Gaussian of 45 µm: 60 + A (20 (1 - Phi(x / 45))), worked from tables of the normal distribution. */
    @ParameterizedTest
    @CsvSource({"22.5, 1.461", "45, 0.751"})
    void aStepOvershootsAsTheMaskSays(double micrometres, double over) throws Exception {
        GreyPlane step = plane(400, 3, (x, y) -> x < 200 ? 40 : 60);
        int[] found = touched(of(0.23669, 45, 1.5, ANY_SLOPE), step, 3, 1);
        int right = 200 + (int) (micrometres / 1.5);
        double between = (lightness(found[400 + right - 1]) + lightness(found[400 + right])) / 2;
        assertEquals(60 + over, between, 0.01);
        int left = 199 - (int) (micrometres / 1.5);
        assertEquals(40 - over, (lightness(found[400 + left]) + lightness(found[400 + left + 1])) / 2, 0.01);
    }

    @Test
    void neitherBandsNorThreadsCanBeSeen() throws Exception {
        GreyPlane art = plane(97, 83, NOISE);
        Crispness crispness = of(0.8, 60, 20, 180);
        int[] whole = touched(crispness, art, 83, 1);
        for (int rows : new int[] {1, 7, 40, 128}) {
            assertArrayEquals(whole, touched(crispness, art, rows, 1 + rows % 3), rows + " rows");
        }
    }

    @Test
    void withNoAmountNothingChanges() throws Exception {
        GreyPlane art = plane(97, 83, NOISE);
        int[] before = new int[97 * 83];
        for (int y = 0; y < 83; y++) {
            short[] row = new short[97];
            art.readRow(y, row);
            for (int x = 0; x < 97; x++) {
                before[y * 97 + x] = row[x] & 0xFFFF;
            }
        }
        assertArrayEquals(before, touched(of(0, 60, 20, 180), art, 40, 2));
        assertNotEquals(Arrays.hashCode(before), Arrays.hashCode(touched(of(1, 60, 20, ANY_SLOPE), art, 40, 2)));
    }

    @Test
    void noiseStaysAndTheRangeIsNotLeft() throws Exception {
        Random random = new Random(6);
        double[] grain = random.doubles(64 * 64, 49.8, 50.2).toArray();
        GreyPlane even = plane(64, 64, (x, y) -> grain[(int) y * 64 + (int) x]);
        int[] found = touched(of(2, 60, 20, ANY_SLOPE), even, 64, 1);
        for (int i = 0; i < found.length; i++) {
            assertEquals(Math.round(65_535 * Lightness.toLuminance(grain[i])), found[i]);
        }
        ArtRange range = new ArtRange(0.8, 0.01);
        double dark = Lightness.ofLuminance(0.01);
        double light = Lightness.ofLuminance(0.8);
        GreyPlane art = plane(97, 83, (x, y) -> Math.max(dark, Math.min(light, NOISE.applyAsDouble(x, y))));
        int[] held =
                touched(new Crispness(2, 60, 20, 20, range, STRAIGHT, ANY_SLOPE, new UsableCoverage(0, 1)), art, 83, 1);
        for (int code : held) {
            assertTrue(lightness(code) >= dark - 0.01 && lightness(code) <= light + 0.01, "L* " + lightness(code));
        }
    }

    /** Where dots or lands would become too narrow for the plate, detail gives way; what was beyond already stays. */
    @Test
    void noToneLeavesWhatThePlateHolds() throws Exception {
        UsableCoverage held = new UsableCoverage(0.1, 0.7);
        GreyPlane art = plane(97, 83, NOISE);
        int[] before = touched(of(0, 60, 20, ANY_SLOPE), art, 83, 1);
        int[] after = touched(new Crispness(2, 60, 20, 20, ArtRange.WHOLE, STRAIGHT, ANY_SLOPE, held), art, 83, 1);
        int changed = 0;
        for (int i = 0; i < after.length; i++) {
            // Coverage is 1 - L* / 100 on this curve.
            double was = lightness(before[i]);
            assertTrue(lightness(after[i]) <= Math.max(was, 90) + 0.01, was + " became " + lightness(after[i]));
            assertTrue(lightness(after[i]) >= Math.min(was, 30) - 0.01, was + " became " + lightness(after[i]));
            changed += before[i] == after[i] ? 0 : 1;
        }
        assertTrue(changed > after.length / 2, changed + " changed");
    }

    /** Edges steeper than the grain can follow stay as drawn, soft ones gain; where the grain is fine both gain. */
    @Test
    void whatTheGrainCanNotFollowStays() throws Exception {
        GreyPlane hard = plane(200, 9, (x, y) -> x < 100 ? 30 : 70);
        int[] before = touched(of(0, 45, 20, 180), hard, 9, 1);
        int[] coarse = touched(of(1, 45, 20, 180), hard, 9, 1);
        int[] fine = touched(of(1, 45, 20, 20), hard, 9, 1);
        int at = 4 * 200 + 100;
        assertEquals(before[at], coarse[at], "at the edge itself");
        assertTrue(lightness(fine[at]) > lightness(before[at]) + 3);
        GreyPlane soft = plane(200, 9, (x, y) -> 50 + 8 * Math.sin(x * 20 * 2 * Math.PI / 360));
        int[] gained = touched(of(1, 45, 20, 180), soft, 9, 1);
        int crest = 4 * 200 + 4;
        assertTrue(lightness(gained[crest]) > 58.3, "L* " + lightness(gained[crest]));
    }
}
