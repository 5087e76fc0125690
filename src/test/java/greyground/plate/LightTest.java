package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.edge.Grid;
import greyground.plate.edge.NoiseGrain;
import greyground.plate.edge.Rim;
import greyground.quantity.Refusal;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LightTest {
    /** Snell's law and plane geometry; the index of polyester, 1.65, is from memory. */
    @ParameterizedTest
    @CsvSource({
        "20, 10, 1.65, 4.23316",
        "20, 30, 1.65, 12.7193",
        "20, 45, 1.65, 18.9725",
        "100, 10, 1.65, 21.1658",
        "100, 45, 1.65, 94.8624",
        "180, 10, 1.65, 38.0984",
        "50, 10, 1, 17.6327"
    })
    void halfShadowFollowsGapAndAngle(double gap, double angle, double index, double width) {
        assertEquals(width, new Light(gap, angle, index).penumbraMicrometres(), 1e-3);
    }

    /** A Gaussian's edge stands at the dose q at sigma times the normal quantile of q; 0.674490 is that of a quarter. */
    @Test
    void blurredStraightEdgeHardensWhereTheNormalCurveSays() {
        Light light = new Light(19, Math.toDegrees(Math.atan(0.5)), 1);
        Grid grid = new Grid(400, 1, 0.5, Rim.BOUNDED);
        byte[] bits = new byte[50];
        Arrays.fill(bits, 25, 50, (byte) 0xFF);
        FilmPatch edge = FilmPatch.cutting(400, 1, 0.5, 0, 0, bits);
        Exposure exposure = new Exposure(4, Exposure.Sheet.POSITIVE, new Film(0, 6, 0, 0), light);
        float[] dose = ExposureSum.dose(List.of(exposure), edge, null, grid);
        int hard = 0;
        for (float value : dose) {
            hard += value >= 1 ? 1 : 0;
        }
        assertEquals(100 + 0.674490 * 19 / Math.sqrt(12), hard * 0.5, 0.3);
    }

    /** Arithmetic of E = Es Ts + Ei Ti with Es 1.5, Ei 1.3, clear film D 0.06 and screen black D 3. */
    @Test
    void twoExposuresAdd() {
        Film film = new Film(0.06, 3, 0, 0);
        Light flat = new Light(0, 0, 1);
        List<Exposure> both = List.of(
                new Exposure(1.5, Exposure.Sheet.SCREEN, film, flat),
                new Exposure(1.3, Exposure.Sheet.POSITIVE, film, flat));
        FilmPatch screen = FilmPatch.tile(2, 1, 4, new byte[] {0x40});
        Grid grid = new Grid(2, 1, 4, Rim.WRAPPED);
        float[] white = ExposureSum.dose(both, FilmPatch.uniform(0.06), screen, grid);
        assertEquals(2.4387, white[0], 1e-4);
        assertEquals(1.13375, white[1], 1e-4);
        float[] grey = ExposureSum.dose(both, FilmPatch.uniform(0.5), screen, grid);
        assertEquals(1.71754, grey[0], 1e-4);
        assertEquals(0.412596, grey[1], 1e-4);
    }

    @Test
    void aPrintedSpotGrowsByItsGrowthAllRound() {
        Grid grid = new Grid(160, 160, 0.25, Rim.WRAPPED);
        FilmPatch dot = NoiseGrain.patch(160, 0.25, i -> Math.hypot(i % 160 - 79.5, i / 160 - 79.5) <= 40);
        for (double growth : new double[] {-4, 0, 4}) {
            Film grown = new Film(0, 6, growth, 0);
            double black = 0;
            for (float through : ExposureSum.transmission(dot, grown, grid)) {
                black += 1 - through;
            }
            double radius = 10 + growth;
            assertEquals(Math.PI * radius * radius, black / 16, Math.PI * radius * radius * 0.025);
        }
    }

    @Test
    void aScreenExposureWithoutAScreenIsRefused() {
        Exposure exposure = new Exposure(1, Exposure.Sheet.SCREEN, new Film(0, 3, 0, 0), new Light(0, 0, 1));
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> ExposureSum.dose(List.of(exposure), FilmPatch.uniform(1), null, new Grid(1, 1, 1, Rim.WRAPPED)));
        assertTrue(refusal.getMessage().contains("give the screen film"));
    }

    /** Surroundings that are computed once for all their places give what each place's own blur does, to the last bit. */
    @ParameterizedTest
    @CsvSource({"0.4, 3, 4", "0, 3, 4", "-1.5, 2, 3", "4, 4, 4", "2, 1.1, 1"})
    void surroundingsShadeAsPlacesDo(double growth, double blur, int split) {
        Random random = new Random(5);
        for (Rim rim : Rim.values()) {
            byte[] bits = new byte[3 * 17];
            random.nextBytes(bits);
            FilmPatch film = rim == Rim.WRAPPED
                    ? FilmPatch.tile(21, 17, 4.4 * split, bits)
                    : FilmPatch.cutting(21, 17, 4.4 * split, 0, 0, bits);
            Grid grid = new Grid(21 * split, 17 * split, 4.4, rim);
            float[] whole = PrintedShade.movedAfterBlur(ExposureSum.black(film, grid), blur, growth, grid);
            assertArrayEquals(whole, PrintedShade.covered(film, blur, growth, grid), 0);
        }
    }
}
