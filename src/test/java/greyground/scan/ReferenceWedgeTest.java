package greyground.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ReferenceWedgeTest {
    private static List<double[]> readings(double... signalsAndDensities) {
        List<double[]> readings = new ArrayList<>();
        for (int i = 0; i < signalsAndDensities.length; i += 2) {
            readings.add(new double[] {signalsAndDensities[i], signalsAndDensities[i + 1]});
        }
        return readings;
    }

    /** A true scanner sends back 10^-D: then the wedge's curve is the law itself, between its patches and past them. */
    @Test
    void aTrueScannersWedgeIsTheLawOfDensity() {
        List<double[]> readings = new ArrayList<>();
        for (double density = 0.05; density < 2; density += 0.15) {
            readings.add(new double[] {0.9 * Math.pow(10, -density), density});
        }
        ReferenceWedge wedge = ReferenceWedge.of(readings);
        for (double density : new double[] {0.01, 0.05, 0.4, 1.234, 1.9, 2.3}) {
            assertEquals(density, wedge.density(0.9 * Math.pow(10, -density)), 1e-9);
        }
        assertTrue(wedge.holds(0.9 * Math.pow(10, -1)));
        assertFalse(wedge.holds(0.9 * Math.pow(10, -2.2)));
        assertFalse(wedge.holds(0.95));
    }

    /**
     * A scanner with 1 % of stray light before white never reads past density 2 (row 83: true 2.0 is read as 1.70115); its wedge,
     * scanned with it, gives the true density back.
     */
    @Test
    void aWedgeUndoesWhatTheScannerDoesToIt() {
        List<double[]> readings = new ArrayList<>();
        for (double density = 0.1; density < 2.2; density += 0.1) {
            readings.add(new double[] {0.99 * Math.pow(10, -density) + 0.01, density});
        }
        ReferenceWedge wedge = ReferenceWedge.of(readings);
        assertEquals(2.0, wedge.density(Math.pow(10, -1.70115)), 0.002);
        assertEquals(1.55, wedge.density(0.99 * Math.pow(10, -1.55) + 0.01), 0.002);
    }

    @Test
    void tooFewOrMuddledPatchesAreRefused() {
        Refusal few = assertThrows(Refusal.class, () -> ReferenceWedge.of(readings(0.9, 0.05, 0.5, 0.3, 0.2, 0.7)));
        assertTrue(few.getMessage().contains("4"), few.getMessage());
        Refusal muddled = assertThrows(
                Refusal.class, () -> ReferenceWedge.of(readings(0.2, 0.05, 0.5, 0.3, 0.6, 0.7, 0.9, 1.1, 0.01, 1.5)));
        assertTrue(muddled.getMessage().contains("does not get darker"), muddled.getMessage());
        assertThrows(Refusal.class, () -> ReferenceWedge.of(readings(0.9, 0.05, 0.8, 0.1, 0.7, 0.15, 0.6, 0.2)));
        assertThrows(Refusal.class, () -> ReferenceWedge.of(readings(0.9, 0.05, 0.8, 0.1, 0.7, 0.5, 0, 0.9)));
    }

    /** A scan bent by a gamma, with a wedge bent alike on it: the tones that were painted come back. */
    @Test
    void aWedgeOnTheScanMakesABentScannerTrue() {
        TestPlate plate = TestPlate.of(Recipe.of(Recipe.Kind.STRIP, new Size(100, 30), 1, 2, 75, 180));
        GreyPlane scan = PaintedScan.of(plate, PaintedScan::usualTone)
                .margin(20)
                .noisy(0)
                .plane();
        double[] densities = {0.06, 0.2, 0.4, 0.6, 0.8, 1.0, 1.2, 1.4, 1.6, 1.8};
        List<ScanChoices.Reference> references = new ArrayList<>();
        for (int i = 0; i < densities.length; i++) {
            references.add(new ScanChoices.Reference(100 + 100 * i, 50, 40, densities[i]));
        }
        short[] row = new short[scan.width()];
        short[] bent = new short[scan.width() * scan.height()];
        for (int y = 0; y < scan.height(); y++) {
            scan.readRow(y, row);
            for (int x = 0; x < scan.width(); x++) {
                double light = (row[x] & 0xFFFF) / 65_535.0;
                for (int i = 0; i < densities.length; i++) {
                    if (y > 25 && y < 75 && Math.abs(x - 100 - 100 * i) < 25) {
                        light = PaintedScan.SCANNED_WHITE * Math.pow(10, -densities[i]);
                    }
                }
                bent[y * scan.width() + x] = (short) Math.round(65_535 * Math.pow(light, 1.2));
            }
        }
        ScanReading reading = ChartReader.read(
                new ArrayPlane(scan.width(), scan.height(), bent),
                plate,
                new ScanChoices(List.of(), references, Optional.of(0.0), 90),
                Progress.NONE);
        for (MeasuredPatch patch : reading.patches()) {
            double expected = PaintedScan.usualTone(patch.coverage());
            boolean within = Lightness.toDensity(expected) > 0.06 && Lightness.toDensity(expected) < 1.8;
            assertEquals(expected, patch.lightness(), within ? 0.5 : 2.5);
        }
    }

    @Test
    void aPatchPastTheScansEdgeIsRefused() {
        TestPlate plate = TestPlate.of(Recipe.of(Recipe.Kind.STRIP, new Size(100, 30), 1, 2, 75, 180));
        GreyPlane scan = PaintedScan.of(plate, PaintedScan::usualTone).plane();
        List<ScanChoices.Reference> outside = List.of(new ScanChoices.Reference(5, 5, 40, 0.1));
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> ChartReader.read(
                        scan, plate, new ScanChoices(List.of(), outside, Optional.of(0.0), 95), Progress.NONE));
        assertTrue(refusal.getMessage().contains("middle and side"), refusal.getMessage());
    }
}
