package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import greyground.quantity.Ruling;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Plane geometry: figures computed from the exact formulas, then laws that every pattern must keep. */
class DotGrowthTest {
    private static final double PITCH = new Ruling(60).pitchMicrometres();
    private static final RoundDots ROUND = new RoundDots(PITCH);

    @Test
    void roundDotsGrowByTenMicrometres() {
        assertEquals(66.4904, Discs.radius(0.5, PITCH), 1e-4);
        assertEquals(0.661707, ROUND.grown(0.5, 10), 1e-5);
        assertEquals(0.367657, ROUND.grown(0.25, 10), 1e-5);
        assertEquals(0.178570, ROUND.grown(0.10, 10), 1e-5);
        assertEquals(0.0781495, ROUND.grown(0.03, 10), 1e-6);
        assertEquals(0.578026, ROUND.grown(0.5, 5), 1e-5);
        assertEquals(0.427629, ROUND.grown(0.5, -5), 1e-5);
        assertEquals(0.782079, new RoundDots(100).grown(0.5, 10), 1e-5);
    }

    @Test
    void otherShapesGrowByTenMicrometres() {
        assertEquals(0.684106, new SquareDots(PITCH, false).grown(0.5, 10), 1e-5);
        assertEquals(0.681015, new SquareDots(PITCH, true).grown(0.5, 10), 1e-5);
        assertEquals(0.655306, new DiagonalSquares(PITCH).grown(0.5, 10), 1e-5);
        assertEquals(0.620000, new Lines(PITCH).grown(0.5, 10), 1e-9);
    }

    @Test
    void strewnPixelsGrowByFiveMicrometres() {
        assertEquals(0.1960, new RandomPixels(25).grownApart(0.1, 5), 1e-6);
        assertEquals(0.186579, new RandomPixels(25).grown(0.1, 5), 1e-5);
        assertEquals(0.1440, new RandomPixels(50).grownApart(0.1, 5), 1e-6);
        assertEquals(0.140770, new RandomPixels(50).grown(0.1, 5), 1e-5);
        assertEquals(0.742972, new RandomPixels(25).grown(0.5, 5), 1e-5);
    }

    @Test
    void theFilmToneForAPrintedHalf() {
        assertEquals(0.360912, ROUND.filmCoverage(0.5, 10).orElseThrow(), 1e-5);
        // A dot of no size prints as a disc of 10 um: 0.0113097, and nothing lighter but paper.
        assertEquals(0.0113097, ROUND.grown(1e-16, 10), 1e-7);
        assertTrue(ROUND.filmCoverage(0.011, 10).isEmpty());
        assertTrue(ROUND.filmCoverage(0.0114, 10).isPresent());
    }

    @Test
    void theSmallestToneOfAFilmPrinter() {
        assertEquals(0.0452389, DotGrowth.coverageOfDot(40, PITCH), 1e-6);
        assertEquals(0.954761, 1 - DotGrowth.coverageOfDot(40, PITCH), 1e-6);
        assertEquals(0.0706858, DotGrowth.coverageOfDot(50, PITCH), 1e-6);
    }

    /** For a small shift the gain is edge length times shift: round 2 pi r / p^2, lines 2 / p, lone pixels 4 g / S. */
    @Test
    void smallGrowthFollowsEdgeLength() {
        double radius = PITCH * Math.sqrt(0.5 / Math.PI);
        assertEquals(2 * Math.PI * radius / (PITCH * PITCH), edgeLength(ROUND, 0.5), 1e-6);
        assertEquals(15.04, 100 * 10 * edgeLength(ROUND, 0.5), 5e-3);
        assertEquals(2 / PITCH, edgeLength(new Lines(PITCH), 0.5), 1e-9);
        assertEquals(4 * Math.sqrt(0.3) / PITCH, edgeLength(new SquareDots(PITCH, false), 0.3), 1e-6);
        assertEquals(4 * Math.sqrt(0.3) / PITCH, edgeLength(new SquareDots(PITCH, true), 0.3), 1e-4);
        assertEquals(4 * Math.sqrt(0.3) / PITCH, edgeLength(new DiagonalSquares(PITCH), 0.3), 1e-6);
        assertEquals(4 * 1e-4 / 25, edgeLength(new RandomPixels(25), 1e-4), 1e-8);
        // Grain of 180 um at 2 %: least dots of 40 um, 4 a / d of edge.
        assertEquals(4 * 0.02 / 40, edgeLength(new WholeDots(180, 40, 40), 0.02), 1e-6);
    }

    private static double edgeLength(DotGrowth growth, double coverage) {
        return (growth.grown(coverage, 1e-4) - growth.grown(coverage, -1e-4)) / 2e-4;
    }

    /** Rasters of squares and discs, counted: an independent look at caps, overlaps and rounded corners. */
    @Test
    void countedPixelsAgreeWithTheFormulas() {
        double pitch = 100;
        for (double coverage : new double[] {0.08, 0.3, 0.45}) {
            for (double shift : new double[] {-6, 4, 15, 28}) {
                double radius = Math.sqrt(coverage / Math.PI) * pitch + shift;
                double half = Math.sqrt(coverage) * pitch / 2;
                int discs = 0;
                int squares = 0;
                int rounded = 0;
                int diagonal = 0;
                int steps = 1000;
                for (int row = 0; row < steps; row++) {
                    for (int column = 0; column < steps; column++) {
                        double x = (column + 0.5) / steps * pitch;
                        double y = (row + 0.5) / steps * pitch;
                        // Distance to the nearest dot centre; all four corners of the cell are centres.
                        double dx = Math.min(x, pitch - x);
                        double dy = Math.min(y, pitch - y);
                        discs += Math.hypot(dx, dy) < radius ? 1 : 0;
                        squares += Math.max(dx, dy) < half + shift ? 1 : 0;
                        double outside = Math.hypot(Math.max(0, dx - half), Math.max(0, dy - half));
                        rounded += (shift > 0 ? outside < shift : Math.max(dx, dy) < half + shift) ? 1 : 0;
                        diagonal += dx + dy < Math.sqrt(2) * (half + shift) ? 1 : 0;
                    }
                }
                double all = (double) steps * steps;
                String at = coverage + " by " + shift;
                assertEquals(discs / all, new RoundDots(pitch).grown(coverage, shift), 2e-3, at);
                assertEquals(squares / all, new SquareDots(pitch, false).grown(coverage, shift), 2e-3, at);
                assertEquals(rounded / all, new SquareDots(pitch, true).grown(coverage, shift), 2e-3, at);
                assertEquals(diagonal / all, new DiagonalSquares(pitch).grown(coverage, shift), 2e-3, at);
            }
        }
    }

    static Stream<DotGrowth> everyPattern() {
        Random random = new Random(3);
        return Stream.generate(() -> 60 + random.nextDouble() * 240)
                .limit(8)
                .flatMap(pitch -> Stream.of(
                        new RoundDots(pitch),
                        new SquareDots(pitch, false),
                        new SquareDots(pitch, true),
                        new DiagonalSquares(pitch),
                        new Lines(pitch),
                        new RandomPixels(pitch / 5),
                        new WholeDots(pitch, pitch * 0.25, pitch * 0.3),
                        new ContinuousTone()));
    }

    @ParameterizedTest
    @MethodSource("everyPattern")
    void bareStaysBareAndSolidStaysSolid(DotGrowth growth) {
        for (double shift : new double[] {-30, -3, 0, 5, 40}) {
            assertEquals(0, growth.grown(0, shift));
            assertEquals(1, growth.grown(1, shift));
        }
    }

    @ParameterizedTest
    @MethodSource("everyPattern")
    void moreBlackOnFilmNeverPrintsLess(DotGrowth growth) {
        for (double shift : new double[] {-30, -8, -1, 0, 2, 5, 10, 20, 45}) {
            double before = 0;
            for (int i = 0; i <= 4000; i++) {
                double grown = growth.grown(i / 4000.0, shift);
                assertTrue(grown >= before - 1e-12, growth.name() + " at " + i / 4000.0 + " by " + shift);
                assertTrue(grown >= 0 && grown <= 1, growth.name());
                before = grown;
            }
        }
    }

    @ParameterizedTest
    @MethodSource("everyPattern")
    void aWiderShiftNeverPrintsLess(DotGrowth growth) {
        for (int i = 1; i < 50; i++) {
            double before = 0;
            for (double shift = -40; shift <= 40; shift += 0.5) {
                double grown = growth.grown(i / 50.0, shift);
                assertTrue(grown >= before - 1e-12, growth.name() + " at " + i / 50.0 + " by " + shift);
                before = grown;
            }
        }
    }

    @ParameterizedTest
    @MethodSource("everyPattern")
    void noShiftChangesNothing(DotGrowth growth) {
        for (int i = 0; i <= 100; i++) {
            assertEquals(i / 100.0, growth.grown(i / 100.0, 0), 1e-12, growth.name());
        }
    }

    @ParameterizedTest
    @MethodSource("everyPattern")
    void filmCoverageUndoesGrowth(DotGrowth growth) {
        for (int i = 2; i < 40; i++) {
            double film = i / 50.0;
            double printed = growth.grown(film, 4);
            double back = growth.filmCoverage(printed, 4).orElseThrow();
            assertEquals(printed, growth.grown(back, 4), 1e-9, growth.name());
            assertTrue(back <= film + 1e-9, growth.name());
        }
    }

    @Test
    void theTwoPolaritiesOfDiagonalSquaresAgree() {
        DiagonalSquares growth = new DiagonalSquares(150);
        for (int i = 1; i < 100; i++) {
            assertEquals(growth.grown(i / 100.0, 7), 1 - growth.grown(1 - i / 100.0, -7), 1e-12);
        }
    }

    @Test
    void holesAboveThreeQuartersShrinkAsDotsDo() {
        // The dots of 10 % shrunk by 10 um, seen as holes of 90 % grown by 10 um.
        assertEquals(1 - ROUND.grown(0.1, -10), ROUND.grown(0.9, 10), 1e-12);
        WholeDots grain = new WholeDots(180, 40, 40);
        assertEquals(1 - grain.grown(0.04, -10), grain.grown(0.96, 10), 1e-12);
    }

    @Test
    void refusesADotAsWideAsItsSpacing() {
        assertThrows(Refusal.class, () -> new WholeDots(100, 90, 40));
        assertThrows(Refusal.class, () -> new RoundDots(0));
    }
}
