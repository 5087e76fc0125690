package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.edge.NoiseGrain;
import greyground.tone.Lightness;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The whole chain for round dots 60 to the centimetre, worked by arithmetic from the closed forms of each step. */
class FullChainTest {
    private static final double PITCH = 166.6667;
    private static final double CREEP = 4.75;
    private static final Bath BATH = new Bath(15, 2);
    private static final int SIDE = 160;

    private static FilmPatch dot(double coverage) {
        double radius = SIDE * Math.sqrt(coverage / Math.PI);
        double middle = (SIDE - 1) / 2.0;
        return NoiseGrain.patch(SIDE, PITCH / SIDE, i -> Math.hypot(i % SIDE - middle, i / SIDE - middle) <= radius);
    }

    /** The creep is laid into the film as shrinking spots, so that all else is as in the closed forms. */
    private static VirtualPlate plate(Bath bath, Ink ink, Paper paper) {
        Film film = new Film(0, 6, -CREEP, 0);
        Exposure exposure = new Exposure(2, Exposure.Sheet.POSITIVE, film, new Light(10, 5, 1));
        Resist resist = new Resist(30, 30, 0, 1.66, 20, 0, 0);
        return new VirtualPlate(new PlateConditions(List.of(exposure), resist, null, bath, Studio.WIPE, ink, paper));
    }

    /**
     * The closed form fills a dot like a trench of its diameter, though a round edge holds the pad up all round, so the
     * engine may hold up to 3 % more ink. It also levels that ink over the whole printed dot, where the engine's lies
     * thicker in the middle; since density rises ever slower with film, uneven ink prints lighter, never darker.
     */
    @ParameterizedTest
    @CsvSource({ // coverage; radius open and of the well in um; share, ink film in um and density of the print; its
        // mean density
        "0.03, 11.53675, 19.03675, 0.08267, 5.00472, 0.95755, 0.10424",
        "0.10, 24.98540, 32.48540, 0.18537, 6.89056, 1.15526, 0.17421",
        "0.20, 37.30221, 44.80221, 0.31532, 7.80259, 1.23258, 0.27329",
        "0.30, 46.75323, 54.25323, 0.43830, 8.21535, 1.26425, 0.38092",
        "0.50, 61.74038, 69.24038, 0.67475, 8.55169, 1.28864, 0.64460"
    })
    void theEngineAgreesForDotsThatStandApart(
            double coverage, double open, double well, double share, double ink, double solid, double density) {
        ToneTerms terms = plate(BATH, Studio.INK, Studio.PAPER).terms(coverage, dot(coverage));
        double cell = PITCH * PITCH;
        assertEquals(Math.PI * open * open / cell, terms.openShare(), 0.006);
        assertEquals(1 - Math.PI * well * well / cell, terms.landLeft(), 0.01);
        assertEquals(share, terms.printedShare(), 0.015 + 0.02 * share);
        double volume = ink * share / 0.8;
        assertEquals(volume, terms.inkVolumeMicrometres(), 0.03 * volume + 0.01);
        // Edge pixels count as printed whole, which thins the mean film of the smallest dot by 4 %.
        assertEquals(solid, terms.solidDensity(), 0.04);
        assertTrue(terms.density() < density + 0.005, terms.density() + " is darker than " + density);
        assertTrue(terms.density() > density - 0.045, terms.density() + " against " + density);
    }

    /**
     * Copper that goes under the edges, by the volumes of quarter ellipses that stand apart (Pappus): of a round opening r, undercut u
     * and depth h it is pi r2 h + 2 pi (r pi h u / 4 + h u2 / 3).
     */
    @ParameterizedTest
    @CsvSource({"0.03, 15", "0.1, 15", "0.3, 15", "0.1, 40", "0.3, 40"})
    void theCopperOfARoundDotIsTheClosedForms(double coverage, double depth) {
        ToneTerms terms = plate(new Bath(depth, 2), Studio.INK, Studio.PAPER).terms(coverage, dot(coverage));
        double open = PITCH * Math.sqrt(coverage / Math.PI) - CREEP;
        double under = depth / 2;
        assertTrue(open + under < PITCH / 2);
        double volume = Math.PI * open * open * depth
                + 2 * Math.PI * (open * Math.PI * depth * under / 4 + depth * under * under / 3);
        assertEquals(volume / (PITCH * PITCH), terms.meanDepthMicrometres(), 0.02 * volume / (PITCH * PITCH) + 0.1);
    }

    /** A line of width w loses w h + pi h u / 2 of its section. */
    @ParameterizedTest
    @CsvSource({"30, 15", "60, 15", "60, 40"})
    void theCopperOfALineIsTheClosedForms(double width, double depth) {
        double middle = (SIDE - 1) / 2.0;
        double drawn = (width + 2 * CREEP) / PITCH * SIDE;
        FilmPatch line = NoiseGrain.patch(SIDE, PITCH / SIDE, i -> Math.abs(i % SIDE - middle) <= drawn / 2);
        ToneTerms terms = plate(new Bath(depth, 2), Studio.INK, Studio.PAPER).terms(0.5, line);
        double mean = (width * depth + Math.PI * depth * depth / 4) / PITCH;
        assertEquals(mean, terms.meanDepthMicrometres(), 0.02 * mean + 0.1);
    }

    @Test
    void theEngineLosesTheSameSmallestDot() {
        ToneTerms lost = plate(BATH, Studio.INK, Studio.PAPER).terms(0.01, dot(0.01));
        assertEquals(0, lost.openShare());
        assertEquals(0.06, lost.density(), 1e-6);
    }

    /**
     * With a thick dense ink, no light spread and a pad too stiff to dip, only edge growth is left: a round dot's radius
     * grows by undercut and spread less creep, and prints as Murray-Davies tells.
     */
    @ParameterizedTest
    @CsvSource({"0.05, 4", "0.1, 4", "0.3, 4", "0.3, 8", "0.5, 8"})
    void smallGrowthOfSeparateDotsIsTheEdgeGrowthLaw(double coverage, double depth) {
        Ink dense = new Ink(1.7, 2, 1, 4);
        Bath bath = new Bath(depth, 2);
        ToneTerms terms = plate(bath, dense, new Paper(0.06, 1)).terms(coverage, dot(coverage));
        double shift = depth / 2 + 4 - CREEP;
        double grown = PITCH * Math.sqrt(coverage / Math.PI) + shift;
        double share = Math.PI * grown * grown / (PITCH * PITCH);
        double expected = 1 - share * (1 - Math.pow(10, -1.7));
        double reached = Math.pow(10, -(terms.density() - 0.06));
        assertTrue(grown < PITCH / 2);
        assertEquals(expected, reached, 0.02, "at " + coverage);
        assertEquals(Lightness.ofLuminance(Math.pow(10, -0.06) * expected), terms.lightness(), 1, "at " + coverage);
    }
}
