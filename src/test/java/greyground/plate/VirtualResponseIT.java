package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.plate.edge.NoiseGrain;
import greyground.quantity.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class VirtualResponseIT {
    /** Pieces of grain on which every law of grain must hold. */
    static List<Long> seeds() {
        return Sweep.of(List.of(1L, 2L, 3L));
    }

    /** Small patches and wide pixels: laws need no fine lightness. */
    private static VirtualResponse quick(PlateConditions conditions, FilmPatches patches) {
        return VirtualResponse.of(new VirtualPlate(conditions, null, 9), patches);
    }

    private static void checkContract(VirtualResponse response) {
        double least = response.usable().least();
        double most = response.usable().most();
        double before = 101;
        for (int i = 0; i <= 500; i++) {
            double lightness = response.lightness(least + (most - least) * i / 500);
            assertTrue(lightness < before, "lightness falls strictly on the usable interval");
            before = lightness;
        }
        assertTrue(response.levels().size() >= VirtualResponse.FEWEST_LEVELS);
        PrintableRange range = response.printableRange();
        assertTrue(range.bare() >= range.lightest() && range.lightest() > range.darkest());
        for (ToneTerms terms : response.levels()) {
            assertTrue(terms.lightness() >= 0 && terms.lightness() <= 100);
            assertTrue(terms.inkHeldShare() >= 0 && terms.inkHeldShare() <= 1 + 1e-6);
            assertTrue(terms.lightness() >= range.darkest() - response.smoothedBy() - 1e-9);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void printDarknessTurnsBackBeforeSolidBlack(long seed) {
        VirtualResponse response = quick(Studio.etched(40, 2), new NoiseGrain(1440, 180, 2.6, seed));
        checkContract(response);
        assertTrue(response.turningPoint() > 0.6 && response.turningPoint() < 0.98);
        assertTrue(response.lightness(1) > response.printableRange().darkest() + 30, "a wide bare area is wiped pale");
    }

    /**
     * Lands must outlast the undercut, h / F a side. Once that is what ends the tone scale, a deeper bite ends it at a lower
     * coverage. (A shallow bite may end it sooner too, for another reason: the pad reaches a shallow floor across a
     * narrower gap, sqrt(8 r h).)
     */
    @ParameterizedTest
    @MethodSource("seeds")
    void deepBitesTurnSoonerTheDeeperTheyAre(long seed) {
        NoiseGrain grain = new NoiseGrain(1440, 180, 2.6, seed);
        double before = 1;
        for (double depth : new double[] {30, 60, 90}) {
            double turning = quick(Studio.etched(depth, 2), grain).turningPoint();
            assertTrue(turning < before, depth + " um turns at " + turning + ", a shallower bite at " + before);
            before = turning;
        }
    }

    /** For one depth, more undercut takes lands at a lower coverage. */
    @ParameterizedTest
    @MethodSource("seeds")
    void moreUndercutTurnsSooner(long seed) {
        NoiseGrain grain = new NoiseGrain(1440, 180, 2.6, seed);
        double narrow = quick(Studio.etched(40, 3), grain).turningPoint();
        double wide = quick(Studio.etched(40, 1), grain).turningPoint();
        assertTrue(wide < narrow, wide + ", " + narrow);
    }

    /** At one undercut, lands of a coarser grain are wider in proportion and last to a higher coverage. */
    @Test
    void coarserGrainTurnsLaterWhileThePadStillBridgesIt() {
        double fine = 0;
        double coarse = 0;
        for (long seed : seeds()) {
            fine += quick(Studio.etched(40, 2), new NoiseGrain(1440, 100, 2.6, seed))
                    .turningPoint();
            coarse += quick(Studio.etched(40, 2), new NoiseGrain(1440, 180, 2.6, seed))
                    .turningPoint();
        }
        assertTrue(coarse > fine, "coarse " + coarse + ", fine " + fine + " in all");
    }

    /** A stiffer pad (larger radius) dips less, so wide bare areas hold ink to a higher coverage and no tone prints paler. */
    @ParameterizedTest
    @MethodSource("seeds")
    void aStifferPadTurnsLaterAndNeverPrintsPaler(long seed) {
        NoiseGrain grain = new NoiseGrain(1440, 180, 2.6, seed);
        PlateConditions soft = Studio.etched(40, 2).withWipe(new Wipe(0.6, 0));
        PlateConditions stiff = Studio.etched(40, 2).withWipe(new Wipe(6, 0));
        assertTrue(quick(stiff, grain).turningPoint() >= quick(soft, grain).turningPoint());
        for (double coverage = 0; coverage <= 1; coverage += 0.125) {
            double dark = new VirtualPlate(stiff, null, 9)
                    .terms(coverage, grain.at(coverage))
                    .lightness();
            double pale = new VirtualPlate(soft, null, 9)
                    .terms(coverage, grain.at(coverage))
                    .lightness();
            assertTrue(dark <= pale + 0.05, "at " + coverage);
        }
    }

    /** Less undercut for the same depth keeps lands: a higher etch factor leaves more land at every tone. */
    @Test
    void aHigherEtchFactorLeavesMoreLand() {
        NoiseGrain grain = new NoiseGrain(1440, 180, 2.6, 4);
        for (double coverage = 0.1; coverage < 1; coverage += 0.2) {
            double before = -1;
            for (double factor : new double[] {1, 1.5, 2, 3}) {
                VirtualPlate plate = new VirtualPlate(Studio.etched(30, factor), null, 9);
                double land = plate.terms(coverage, grain.at(coverage)).landLeft();
                assertTrue(land >= before);
                before = land;
            }
        }
    }

    /** Light closes openings: more exposure prints every tone lighter, or leaves it. */
    @Test
    void moreExposureNeverOpensMore() {
        NoiseGrain grain = new NoiseGrain(1440, 180, 2.6, 4);
        for (double coverage = 0.1; coverage < 1; coverage += 0.2) {
            double before = 2;
            for (double dose : new double[] {1.3, 2, 4, 8}) {
                PlateConditions conditions =
                        Studio.etched(30, 2).withExposures(List.of(Studio.image(dose, new Light(100, 20, 1.65))));
                double open = new VirtualPlate(conditions)
                        .terms(coverage, grain.at(coverage))
                        .openShare();
                assertTrue(open <= before);
                before = open;
            }
        }
    }

    /**
     * Least widths are left out here: where a film pixel is about as wide as the least opening, whether it opens hangs on a
     * fraction of a micrometre, and lightness with it by another unit.
     */
    @ParameterizedTest
    @ValueSource(doubles = {15, 40})
    void halvingThePixelMovesLightnessByLessThanAUnit(double depth) {
        NoiseGrain grain = new NoiseGrain(1440, 180, 1.5, 7);
        PlateConditions base = Studio.etched(depth, 2);
        Resist sharp = new Resist(30, 30, 0.0133, 1.66, 0, 0, 0);
        PlateConditions conditions =
                new PlateConditions(base.exposures(), sharp, null, base.wells(), base.wipe(), base.ink(), base.paper());
        for (double coverage : new double[] {0.1, 0.3, 0.6, 0.85}) {
            FilmPatch patch = grain.at(coverage);
            double usual = new VirtualPlate(conditions).terms(coverage, patch).lightness();
            double fine = new VirtualPlate(conditions, null, 2.25)
                    .terms(coverage, patch)
                    .lightness();
            assertEquals(fine, usual, 0.8, "at " + coverage + ", " + depth + " um");
        }
    }

    @Test
    void theLightEndOfALargeLeastOpeningIsAGap() {
        Resist coarse = new Resist(30, 30, 0.0133, 1.66, 70, 20, 5);
        PlateConditions base = Studio.etched(30, 2);
        PlateConditions conditions = new PlateConditions(
                base.exposures(), coarse, null, base.wells(), base.wipe(), base.ink(), base.paper());
        VirtualResponse response = quick(conditions, new NoiseGrain(1440, 180, 2.6, 1));
        checkContract(response);
        assertTrue(response.usable().least() > 0.02, "dots narrower than 70 um never open");
        assertEquals(response.printableRange().bare(), response.lightness(0), 1e-9);
    }

    @Test
    void sprayedGroundKeepsSolidBlackFromOpenBite() {
        SprayedGround ground = new SprayedGround(0.5, 50, 1);
        VirtualResponse response = quick(Studio.sprayed(20, ground), new NoiseGrain(1440, 300, 2.6, 1));
        checkContract(response);
        double bare = new VirtualPlate(Studio.etched(20, 2), null, 9)
                .terms(1, new NoiseGrain(1440, 300, 2.6, 1).at(1))
                .lightness();
        assertTrue(response.lightness(1) < bare - 30);
    }

    @Test
    void photogravureTakesItsToneFromTheSumOfTwoExposures() {
        FilmPatch screen = new NoiseGrain(1440, 150, 2.2, 5).at(0.6);
        VirtualPlate plate = new VirtualPlate(Studio.photogravure(25), screen);
        VirtualResponse response = VirtualResponse.of(plate, FilmPatches.continuous(new Film(0.06, 2, 0, 0)));
        checkContract(response);
        // The image alone hardens behind black where 1.15 Ti + 1.3 10^-3 >= 1: at D 0.06, 1.0016.
        assertEquals(0, response.explain(0).openShare());
        // Wherever the image is clear enough nothing opens; a dense image opens what the screen's spots alone leave
        // soft.
        assertTrue(response.explain(1).openShare() > 0.5);
        assertTrue(response.printableRange().darkest() < 30);
    }

    @Test
    void unetchedFilmHoldsInkInItsOwnThickness() {
        VirtualResponse response = quick(Studio.unetched(3), new NoiseGrain(1440, 180, 2.6, 1));
        checkContract(response);
        ToneTerms half = response.explain(0.5);
        assertEquals(half.openedByLight() * 30, half.meanDepthMicrometres(), 3);
    }

    @Test
    void unetchedContinuousFilmIsAsDeepAsItsContrastSays() {
        PlateConditions conditions = Studio.unetched(3);
        VirtualPlate plate = new VirtualPlate(conditions);
        for (double density : new double[] {0.2, 0.6, 0.8, 1.5}) {
            double kept = conditions.resist().retained(3 * Film.transmission(density));
            PlateStates states = plate.states(FilmPatch.uniform(density));
            assertEquals(30 * (1 - kept), states.depthMicrometres()[0], 1e-4);
        }
    }

    @Test
    void aPlateThatNeverOpensIsRefused() {
        PlateConditions blind = Studio.etched(20, 2)
                .withExposures(
                        List.of(new Exposure(1000, Exposure.Sheet.POSITIVE, new Film(0, 1, 0, 0), Studio.LIGHT)));
        Refusal refusal = assertThrows(Refusal.class, () -> quick(blind, new NoiseGrain(1440, 180, 1, 1)));
        assertTrue(refusal.getMessage().contains("check exposure"));
    }

    @Test
    void equalConditionsGiveEqualNumbersAndDigests() {
        NoiseGrain grain = new NoiseGrain(1440, 180, 1.5, 1);
        VirtualResponse one = quick(Studio.etched(30, 2), grain);
        VirtualResponse two = quick(Studio.etched(30, 2), new NoiseGrain(1440, 180, 1.5, 1));
        assertEquals(one.levels(), two.levels());
        assertEquals(one.digest(), two.digest());
        assertNotEquals(one.digest(), quick(Studio.etched(31, 2), grain).digest());
        assertNotEquals(
                one.digest(),
                quick(Studio.etched(30, 2), new NoiseGrain(1440, 180, 1.5, 2)).digest());
    }
}
