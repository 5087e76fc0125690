package greyground.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.Bath;
import greyground.plate.Exposure;
import greyground.plate.Film;
import greyground.plate.FilmPatch;
import greyground.plate.Ink;
import greyground.plate.Light;
import greyground.plate.Paper;
import greyground.plate.PlateConditions;
import greyground.plate.Resist;
import greyground.plate.VirtualPlate;
import greyground.plate.Wipe;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FitReadingTest {
    private static final double PITCH = 5;
    private static final int LAND = 200;
    private static final int ROWS = 8;

    /**
     * r = w^2 / 8h: bars of 0.38 and 0.605 mm, bitten 20 um deep with an etch factor of 2, are 0.4 and 0.625 mm wide; a critical width
     * of 0.5 mm gives 1.5625 mm. Its error: sqrt(1 / 12) of the bracket's logarithm, twice; 20 / 400 and 20 / 625 of the factor's 25 %,
     * and the rest of 1 from the depth's 5 % (arithmetic).
     */
    @Test
    void aBarGaugeGivesTheRadiusOfItsBittenBars() {
        FitReading gauge = FitReading.barGauge(0.38, 0.605, new MeasuredDepth(20, 1), 2);
        assertEquals(1.5625, gauge.value(), 1e-12);
        double bracket = 2 * Math.log(0.625 / 0.4) / Math.sqrt(12);
        double byFactor = 20.0 / 400 + 20.0 / 625;
        double share = Math.sqrt(bracket * bracket + Math.pow(byFactor * 0.25, 2) + Math.pow((1 - byFactor) * 0.05, 2));
        assertEquals(1.5625 * share, gauge.standardError(), 1e-12);
    }

    /**
     * The virtual plate's own bars: of all widths 5 um apart, the last whose middle keeps ink and the first whose middle the pad
     * wipes out give the pad back within 3 %. As drawn they would give 7 to 22 % less.
     */
    @ParameterizedTest
    @CsvSource({"1.5,35,2", "1.5,40,1.4", "0.8,45,3", "3,30,2"})
    void theVirtualPlatesOwnBarsGiveItsPadBack(double radius, double depth, double factor) {
        VirtualPlate plate = new VirtualPlate(conditions(radius, depth, factor), null, PITCH);
        int solid = 20;
        int pale = 300;
        while (pale - solid > 1) {
            int width = (solid + pale) / 2;
            if (inkInTheMiddle(plate, width) > 0) {
                solid = width;
            } else {
                pale = width;
            }
        }
        MeasuredDepth bite = new MeasuredDepth(depth, 1);
        FitReading gauge = FitReading.barGauge(solid * PITCH / 1000, pale * PITCH / 1000, bite, factor);
        assertEquals(radius, gauge.value(), 0.03 * radius);
    }

    private static float inkInTheMiddle(VirtualPlate plate, int pixels) {
        int width = pixels + LAND;
        byte[] packed = new byte[(width + 7) / 8 * ROWS];
        for (int y = 0; y < ROWS; y++) {
            for (int x = 0; x < pixels; x++) {
                packed[y * ((width + 7) / 8) + (x >> 3)] |= (byte) (0x80 >> (x & 7));
            }
        }
        return plate.states(FilmPatch.tile(width, ROWS, PITCH, packed)).inkMicrometres()[pixels / 2];
    }

    /** A film and a light that keep the bar as it is drawn, and a clean wipe. */
    private static PlateConditions conditions(double radius, double depth, double factor) {
        return new PlateConditions(
                List.of(new Exposure(2, Exposure.Sheet.POSITIVE, new Film(0, 6, 0, 0), new Light(0, 0, 1.65))),
                new Resist(30, 30, 0.0133, 1.66, 6, 6, 5),
                null,
                new Bath(depth, factor),
                new Wipe(radius, 0),
                new Ink(1.7, 0.15, 0.8, 8),
                new Paper(0.06, 1.7));
    }

    @Test
    void repeatedDepthsAverage() {}

    /** Only what the plate determined changes the workshop. */
    @Test
    void changesNamePathsValuesAndProvenance() {
        PlateLesson lesson = new PlateLesson(
                List.of(
                        new FittedFigure.Undetermined(FitParameter.PAD_RADIUS, 1.5, "no bar gauge"),
                        new FittedFigure.Determined(FitParameter.INK_SATURATION, 1.7, 1.8, 0.05, 1.7, 1.9),
                        new FittedFigure.AsSeen(FitParameter.ETCH_FACTOR, 2, 1.3, 1.2, 1.4)),
                1,
                Optional.empty());
        List<FigureChange> changes = lesson.changes(path -> "measured 2026-01-01");
        assertEquals(
                List.of(new FigureChange("ink.saturationDensity", 1.7, "measured 2026-01-01", 1.8, 0.05)), changes);
        assertTrue(changes.get(0).words().startsWith("ink.saturationDensity: 1.7 (measured 2026-01-01) becomes"));
    }

    @Test
    void nonsenseIsRefused() {
        MeasuredDepth depth = new MeasuredDepth(20, 1);
        assertThrows(Refusal.class, () -> FitReading.barGauge(0.5, 0.4, depth, 2));
        assertThrows(Refusal.class, () -> FitReading.barGauge(0.4, 0.5, depth, 0));
        assertThrows(Refusal.class, () -> FitReading.target(FitParameter.SMALLEST_LAND, 0, 10));
    }
}
