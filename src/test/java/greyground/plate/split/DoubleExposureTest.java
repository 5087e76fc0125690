package greyground.plate.split;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.Film;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Figures computed in double precision from E = Es Ts + Ei Ti, apart from this program. */
class DoubleExposureTest {
    @Test
    void twoExposuresAddUp() {
        DoubleExposure both = new DoubleExposure(1.5, 1.3);
        double[][] critical = {{0.2, 0.119837}, {0.35, 0.279541}, {0.5, 0.392603}, {1, 0.58}, {2, 0.658}};
        for (double[] row : critical) {
            assertEquals(row[1], both.criticalScreenTransmission(row[0]), 1e-5, "image density " + row[0]);
        }
        assertEquals(0.921409, -Math.log10(both.criticalScreenTransmission(0.2)), 1e-5);
        assertEquals(0.114595, both.imageDensityFor(Film.transmission(3)), 1e-6);
    }

    @Test
    void denserImageNeverHardensMore() {
        DoubleExposure both = new DoubleExposure(1.3, 1.15);
        double before = Double.NEGATIVE_INFINITY;
        for (double density = 0; density < 4; density += 0.05) {
            double light = both.criticalScreenTransmission(density);
            assertTrue(light > before, "at " + density);
            before = light;
        }
    }

    @Test
    void criticalTransmissionAndImageDensityAreEachOthersInverse() {
        SplittableRandom chance = new SplittableRandom(20261125);
        for (int round = 0; round < 500; round++) {
            DoubleExposure both = new DoubleExposure(chance.nextDouble(0.3, 4), chance.nextDouble(0.3, 4));
            double density = chance.nextDouble(0, 3);
            double critical = both.criticalScreenTransmission(density);
            assertEquals(density, both.imageDensityFor(critical), 1e-9, both + " at " + density);
        }
        assertEquals(Double.POSITIVE_INFINITY, new DoubleExposure(1.5, 1.3).imageDensityFor(0.7));
    }
}
