package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Murray 1936; Yule and Nielsen 1951; n = 1.7 after Pearson 1981; figures computed from the formulas. */
class ToneValueTest {
    @Test
    void murrayDaviesReadsATint() {
        assertEquals(0.513626, ToneValue.area(0.36, 0.06, 1.60, 1), 1e-5);
        assertEquals(0.348682, ToneValue.density(0.5, 0.06, 1.6, 1), 1e-5);
    }

    @Test
    void yuleNielsenTakesTheSpreadOfLightOut() {
        assertEquals(0.381268, ToneValue.area(0.36, 0.06, 1.60, 1.7), 1e-5);
        assertEquals(0.351798, ToneValue.area(0.36, 0.06, 1.60, 2), 1e-5);
        assertEquals(0.485318, ToneValue.density(0.5, 0.06, 1.6, 1.7), 1e-5);
        assertEquals(0.525819, ToneValue.density(0.5, 0.06, 1.6, 2), 1e-5);
    }

    /** ISO 12647-1's increase: what a densitometer reads above the film's tone. */
    @Test
    void opticalGainShowsAsToneValueIncrease() {
        double read = ToneValue.area(ToneValue.density(0.5, 0.06, 1.6, 1.7), 0.06, 1.6, 1);
        assertEquals(14.2981, 100 * (read - 0.5), 1e-3);
    }

    @Test
    void densityAndAreaUndoEachOtherAndRise() {
        Random random = new Random(1951);
        for (int trial = 0; trial < 200; trial++) {
            double paper = random.nextDouble() * 0.2;
            double solid = paper + 0.5 + random.nextDouble() * 1.5;
            double n = 1 + random.nextDouble() * 1.5;
            assertEquals(paper, ToneValue.density(0, paper, solid, n), 1e-12);
            assertEquals(solid, ToneValue.density(1, paper, solid, n), 1e-9);
            double before = -1;
            for (int i = 0; i <= 20; i++) {
                double density = ToneValue.density(i / 20.0, paper, solid, n);
                assertTrue(density > before, "trial " + trial);
                assertEquals(i / 20.0, ToneValue.area(density, paper, solid, n), 1e-9, "trial " + trial);
                before = density;
            }
        }
    }
}
