package greyground.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Stray light read off the plate. The scanners here scatter by an exponential of the distance, convolved cell by cell: no square and no
 * mean of the reader's.
 */
class GlareTest {
    private static final double PIXELS_PER_INCH = 160;

    /** Side of a cell of the scatter, in scan pixels: about a millimetre. */
    private static final int CELL = 6;

    /** Of a full plate that version 0.2.0 printed. */
    private static final String OLD_CODE = "GG1F037QO04ABK1JK00014VPEGEO0";

    private static final TestPlate PLATE = TestPlate.of(Recipe.of(Recipe.Kind.FULL, new Size(80, 100), 2, 1, 75, 180));

    private static final GreyPlane CLEAN = PaintedScan.of(PLATE, PaintedScan::usualTone)
            .at(PIXELS_PER_INCH)
            .margin(12)
            .noisy(0.002)
            .plane();

    /**
     * Adds {@code share} of the light about each place, by {@code exp(-r / reach)} as far as eight reaches, and takes as much away; below 0 by {@code
     * (1 + (r / reach)^2)^-1.5}, which has a longer tail.
     */
    private static GreyPlane scattered(GreyPlane scan, double share, double reachMillimetres) {
        int columns = (scan.width() + CELL - 1) / CELL;
        int rows = (scan.height() + CELL - 1) / CELL;
        double[] light = new double[columns * rows];
        short[] row = new short[scan.width()];
        for (int y = 0; y < rows * CELL; y++) {
            scan.readRow(Math.min(scan.height() - 1, y), row);
            for (int x = 0; x < columns * CELL; x++) {
                light[y / CELL * columns + x / CELL] +=
                        (row[Math.min(scan.width() - 1, x)] & 0xFFFF) / (double) (CELL * CELL);
            }
        }
        double cell = CELL * 25.4 / PIXELS_PER_INCH;
        int far = (int) Math.ceil(8 * Math.abs(reachMillimetres) / cell);
        double[][] weights = new double[far + 1][far + 1];
        for (int dy = 0; dy <= far; dy++) {
            for (int dx = 0; dx <= far; dx++) {
                double away = Math.hypot(dx, dy) * cell / Math.abs(reachMillimetres);
                weights[dy][dx] = reachMillimetres > 0 ? Math.exp(-away) : Math.pow(1 + away * away, -1.5);
            }
        }
        double[] strayed = new double[light.length];
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                double sum = 0;
                double all = 0;
                for (int dy = -far; dy <= far; dy++) {
                    for (int dx = -far; dx <= far; dx++) {
                        // The sheet goes on beyond the scan.
                        int column = Math.max(0, Math.min(columns - 1, x + dx));
                        int line = Math.max(0, Math.min(rows - 1, y + dy));
                        double weight = weights[Math.abs(dy)][Math.abs(dx)];
                        sum += weight * light[line * columns + column];
                        all += weight;
                    }
                }
                strayed[y * columns + x] = sum / all;
            }
        }
        return ArrayPlane.of(scan.width(), scan.height(), (x, y) -> {
            scan.readRow(y, row);
            return (int) Math.round((1 - share) * (row[x] & 0xFFFF) + share * strayed[y / CELL * columns + x / CELL]);
        });
    }

    private static ScanReading read(GreyPlane scan, TestPlate plate, Optional<Double> told) {
        return ChartReader.read(scan, plate, new ScanChoices(List.of(), List.of(), told, 95), Progress.NONE);
    }

    /** Of the fields that print dark, about as dark as they are drawn. */
    private static double off(ScanReading reading) {
        double worst = 0;
        for (MeasuredPatch patch : reading.patches()) {
            if (patch.coverage() >= 0.75) {
                worst = Math.max(worst, Math.abs(patch.lightness() - PaintedScan.usualTone(patch.coverage())));
            }
        }
        return worst;
    }

    @ParameterizedTest
    @CsvSource({"0.01, 1.5", "0.01, 4", "0.01, 10", "0.02, 1.5", "0.02, 4", "0.02, 10", "0.01, -3", "0.02, -3"})
    void itIsRecoveredWithinItsBandAndTakenOut(double share, double reach) {
        GreyPlane scan = scattered(CLEAN, share, reach);
        ScanReading reading = read(scan, PLATE, Optional.empty());
        Glare glare = reading.glare().orElseThrow();
        assertEquals(share, glare.share(), 1.96 * glare.error(), glare.toString());
        assertTrue(glare.isSure(), glare::toString);
        double plain = off(read(scan, PLATE, Optional.of(0.0)));
        assertTrue(off(reading) < plain / 2, off(reading) + " L* off, " + plain + " as read: " + glare);
    }

    @Test
    void whereNoneStraysNoneIsRead() {
        ScanReading reading = read(CLEAN, PLATE, Optional.empty());
        Glare glare = reading.glare().orElseThrow();
        assertEquals(0, glare.share(), 1.96 * glare.error(), glare.toString());
        assertTrue(glare.error() < 0.003, glare::toString);
        assertEquals(0, off(reading), 0.5, glare.toString());
    }

    /** A plate of before there were darks, and one whose scanner somebody knows. */
    @Test
    void withoutDarksOrWhereItIsToldAPlateIsReadAsBefore() {
        TestPlate old = TestPlate.ofCode(OLD_CODE);
        assertTrue(Glare.darks(old).isEmpty());
        GreyPlane scan = scattered(
                PaintedScan.of(old, PaintedScan::usualTone)
                        .at(PIXELS_PER_INCH)
                        .margin(12)
                        .plane(),
                0.02,
                4);
        ScanReading untold = read(scan, old, Optional.empty());
        assertTrue(untold.glare().isEmpty());
        assertEquals(read(scan, old, Optional.of(0.0)).patches(), untold.patches());
        assertTrue(read(CLEAN, PLATE, Optional.of(0.01)).glare().isEmpty());
    }

    @Test
    void tooFewReadingsSayNothing() {
        Glare.Seen one = new Glare.Seen(700, 0.05, List.of(0.1, 0.2, 0.3), 5, 5);
        assertTrue(Glare.of(List.of()).isEmpty());
        assertTrue(Glare.of(List.of(one, one, one)).isEmpty());
    }
}
