package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.edge.NoiseGrain;
import org.junit.jupiter.api.Test;

class ToneAlignmentTest {
    private static final NoiseGrain GRAIN = new NoiseGrain(1440, 180, 1.8, 9);

    @Test
    void movesEveryEvenToneOntoTheResponseAndKeepsTheirOrder() {
        PlateConditions conditions = Studio.etched(10, 2);
        VirtualResponse response = VirtualResponse.of(new VirtualPlate(conditions, null, 4.5), GRAIN);
        VirtualPlate coarse = new VirtualPlate(conditions, null, 9);
        ToneAlignment alignment = ToneAlignment.of(coarse, GRAIN, response);
        double before = 2;
        double worst = 0;
        for (double coverage = 0; coverage <= response.turningPoint(); coverage += 0.04) {
            double printed = coarse.terms(coverage, GRAIN.at(coverage)).density();
            double root = alignment.root(Math.pow(10, -printed / 1.7));
            double lightness = Paper.lightness(Studio.PAPER.reflectance(root));
            // Straight lines between 33 levels.
            assertEquals(response.lightness(coverage), lightness, 0.6, "coverage " + coverage);
            worst = Math.max(worst, Math.abs(Lightnesses.ofDensity(printed) - lightness));
            assertTrue(root <= before, "coverage " + coverage);
            before = root;
        }
        assertTrue(worst > 1, "these pixels are too fine to need it: " + worst);
        assertTrue(alignment.mostLightness() >= worst - 0.6, alignment.mostLightness() + " for " + worst);
    }

    @Test
    void barePaperStaysBarePaper() {
        PlateConditions conditions = Studio.etched(40, 2);
        VirtualResponse response = VirtualResponse.of(new VirtualPlate(conditions, null, 9), GRAIN);
        ToneAlignment same = ToneAlignment.of(new VirtualPlate(conditions, null, 9), GRAIN, response);
        for (double root = 0.1; root < 0.93; root += 0.05) {
            assertEquals(root, same.root(root), 1e-9);
        }
        ToneAlignment coarser = ToneAlignment.of(new VirtualPlate(conditions, null, 18), GRAIN, response);
        assertEquals(Studio.PAPER.root(0), coarser.root(Studio.PAPER.root(0)), 1e-6);
    }

    private static final class Lightnesses {
        static double ofDensity(double density) {
            return Paper.lightness(Math.pow(10, -density));
        }
    }
}
