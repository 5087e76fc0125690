package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.plate.edge.NoiseGrain;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InkOnPaperTest {
    private static PlateConditions inked(double strength, double saturation, double gain, double tone) {
        return new PlateConditions(
                List.of(new Exposure(2.3, Exposure.Sheet.POSITIVE, new Film(0.06, 3, 4, 3), new Light(20, 10, 1.65))),
                new Resist(30, 30, 0.0133, 1.66, 6, 6, 5),
                null,
                new Bath(35, 2),
                new Wipe(1.5, tone),
                new Ink(saturation, strength, 0.8, 8),
                new Paper(0.06, gain));
    }

    /** The pixel-by-pixel mean of the virtual plate itself is the reference. */
    @ParameterizedTest
    @CsvSource({"0.1,1.7,1.7,0", "0.3,1.9,1,0", "0.15,1.4,2.2,0.4"})
    void sortedFilmsGiveTheToneOfThePixels(double strength, double saturation, double gain, double tone) {
        PlateConditions conditions = inked(strength, saturation, gain, tone);
        VirtualPlate plate = new VirtualPlate(conditions, null, 9);
        NoiseGrain grain = new NoiseGrain(1440, 180, 1.2, 1);
        for (double coverage : new double[] {0, 0.03, 0.3, 0.7, 0.97, 1}) {
            ToneTerms terms = plate.terms(coverage, grain.at(coverage));
            InkOnPaper films = plate.inkOnPaper(grain.at(coverage));
            double[] roots = InkOnPaper.roots(films.classes(), conditions.ink(), conditions.paper(), tone * 0.8);
            assertEquals(terms.lightness(), films.lightness(roots, conditions.paper()), 0.01, "at " + coverage);
            assertEquals(terms.lightnessError(), films.lightnessError(roots, conditions.paper()), 0.01);
        }
    }

    /** Ink of no density leaves paper: L* of density 0.06 is 94.78 by CIE 15. */
    @Test
    void anInkWithoutStrengthLeavesThePaper() {
        PlateConditions conditions = inked(0.15, 1.7, 1.7, 0);
        InkOnPaper films = new VirtualPlate(conditions, null, 9).inkOnPaper(new NoiseGrain(1440, 180, 1.2, 1).at(0.5));
        double[] roots = InkOnPaper.roots(films.classes(), new Ink(0.3, 0.01, 0.8, 8), new Paper(0.06, 1), 0);
        assertEquals(94.78, Paper.lightness(Math.pow(10, -0.06)), 0.01);
        double[] bare = new double[films.classes()];
        java.util.Arrays.fill(bare, roots[0]);
        assertEquals(94.78, films.lightness(bare, new Paper(0.06, 1)), 0.01);
    }
}
