package greyground.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.raster.ArrayPlane;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class FieldMeterTest {
    /** A densitometer averages light, not lightness: half black, half white of Y 1 is L* 76.07 (CIE 15:2004), not 50. */
    @Test
    void theMeanIsOfLight() {
        double[] cells = {0, 1, 0, 1, 0, 1, 0, 1};
        FieldMeter.Reading reading = FieldMeter.reading(cells, 0, false, true);
        assertEquals(Lightness.ofLuminance(0.5), reading.lightness(), 1e-9);
        assertEquals(0, reading.leftOut());
    }

    @Test
    void dustIsLeftOutOfAnEvenField() {
        double[] cells = new double[25];
        Arrays.fill(cells, 0.3);
        cells[7] = 0.02;
        cells[8] = 0.9;
        FieldMeter.Reading reading = FieldMeter.reading(cells, 0, false, false);
        assertEquals(Lightness.ofLuminance(0.3), reading.lightness(), 1e-9);
        assertEquals(2 / 25.0, reading.leftOut(), 1e-12);
    }

    /** Sparse dots print in a few cells only: all of them count, since the field's mean is what is asked. */
    @Test
    void sparseGrainIsNotDust() {
        double[] cells = new double[25];
        Arrays.fill(cells, 0.85);
        for (int i = 0; i < 25; i += 4) {
            cells[i] = 0.75;
        }
        double mean = Arrays.stream(cells).average().orElseThrow();
        FieldMeter.Reading reading = FieldMeter.reading(cells, 0, false, true);
        assertEquals(Lightness.ofLuminance(mean), reading.lightness(), 1e-9);
    }

    /** Row 83 of the check values, on a scan: f 0.01 before white, density 2 is read as 1.70115 and given back as 2. */
    @Test
    void strayLightIsTakenOut() {
        double read = 0.99 * Math.pow(10, -2) + 0.01;
        assertEquals(1.70115, -Math.log10(read), 1e-5);
        ArrayPlane white = ArrayPlane.of(400, 400, (x, y) -> 65_535);
        LightMap map = LightMap.of(white, 1, Progress.NONE);
        StrayLight light = StrayLight.of(map, 0.01, StrayLight.Surroundings.square(map, 10, 10));
        assertEquals(0.01, light.cleared(read, 200, 200), 1e-9);
        assertEquals(read, StrayLight.none(map).cleared(read, 200, 200));
    }

    /** Whatever the threads, the same means; and a map made smaller keeps the scan's mean light. */
    @Test
    void aMapIsTheSameForAnyNumberOfThreads() {
        ArrayPlane scan = ArrayPlane.of(5000, 4200, (x, y) -> (x * 7919 + y * 104_729) % 65_536);
        LightMap one = LightMap.of(scan, 1, Progress.NONE);
        LightMap three = LightMap.of(scan, 3, Progress.NONE);
        assertTrue(one.width() < 5000, "a scan of 21 million pixels is made smaller");
        double sum = 0;
        for (int y = 0; y < one.height(); y++) {
            for (int x = 0; x < one.width(); x++) {
                assertEquals(one.value(x, y), three.value(x, y));
                sum += one.value(x, y);
            }
        }
        double whole = 0;
        for (short code : scan.codes()) {
            whole += (code & 0xFFFF) / 65_535.0;
        }
        assertEquals(whole / scan.codes().length, sum / one.width() / one.height(), 1e-5);
    }
}
