package greyground.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import greyground.quantity.Refusal;
import greyground.workshop.Developer.Soda;
import org.junit.jupiter.api.Test;

/** Figures computed in double precision from the cited formulas, apart from this program. */
class ExposureScienceTest {
    @Test
    void wedgeRunsFromFiveHundredthsToThreeAndFiveHundredths() {
        // Wedge data quoted by a flatbed-scanner densitometry note, 2008: 21 steps of 0.15, Dmax 3.05; tolerance 0.02.
        StepWedge wedge = StepWedge.nominal();
        assertEquals(3.05, wedge.density(21), 0.02);
        assertEquals(1.10, wedge.density(8), 1e-12);
        assertEquals(0.0794328, Math.pow(10, -wedge.density(8)), 1e-7);
    }

    @Test
    void oneStepIsNotQuiteTheRootOfTwo() {
        assertEquals(1.412538, StepWedge.exposureFactor(7, 8), 1e-6);
        assertEquals(0.998815, StepWedge.exposureFactor(7, 8) / StepWedge.ruleOfThumbFactor(7, 8), 1e-6);
        for (int steps = -20; steps <= 20; steps++) {
            double ratio = StepWedge.exposureFactor(0, steps) / StepWedge.ruleOfThumbFactor(0, steps);
            assertEquals(1, ratio, 0.03, "the shop's rule over " + steps + " steps");
        }
    }

    @Test
    void exposureFollowsTheStepHeld() {
        // A resist calibration note's rule: two steps double the exposure.
        assertEquals(169.706, 60 * StepWedge.ruleOfThumbFactor(5, 8), 1e-3);
        assertEquals(169.103, 60 * StepWedge.exposureFactor(5, 8), 1e-3);
        assertEquals(21.2132, 60 * StepWedge.ruleOfThumbFactor(10, 7), 1e-4);
        assertEquals(21.2888, 60 * StepWedge.exposureFactor(10, 7), 1e-4);
        assertEquals(127.279, 90 * StepWedge.ruleOfThumbFactor(6, 7), 1e-3);
    }

    @Test
    void lightFallsWithDistanceAndOffTheAxis() {
        assertEquals(153.6, 60 * Lamp.distanceFactor(500, 800), 1e-9);
        assertEquals(0.64, Lamp.offAxisLight(300, 600), 1e-9);
        assertEquals(0.19382, -Math.log10(Lamp.offAxisLight(300, 600)), 1e-5);
        assertEquals(0.885813, Lamp.offAxisLight(150, 600), 1e-6);
        assertEquals(0.0526579, -Math.log10(Lamp.offAxisLight(150, 600)), 1e-7);
    }

    @Test
    void lampFadesToFourFifths() {
        // J. Illum. Engng Inst. Japan 46(12): copying fluorescent lamps keep about 80 % at the end of 1000 h or more.
        assertEquals(4481.42, Lamp.decayHours(1000), 0.01);
        assertEquals(0.894427, Lamp.lightLeft(500, 1000), 1e-5);
        assertEquals(67.082, 60 * Lamp.ageingFactor(0, 500, 1000), 1e-3);
        assertEquals(1, Lamp.ageingFactor(700, 700, 1000), 1e-12);
    }

    @Test
    void filmBaseCostsLight() {
        assertEquals(1.318257, Lamp.baseFactor(0.12), 1e-6);
        assertEquals(79.0954, 60 * Lamp.baseFactor(0.12), 1e-4);
        assertEquals(3.0, 300 / Lamp.baseFactor(2), 1e-12);
    }

    @Test
    void resistCurveIsStraightInLogDose() {
        // Textbook contrast curve; IUPAC 2020 from the half-thickness dose.
        ResistCurve curve = new ResistCurve(10, 40);
        assertEquals(1.66096, curve.gamma(), 1e-5);
        assertEquals(0.792481, curve.retained(30), 1e-6);
        assertEquals(0.131517, curve.retained(12), 1e-6);
        assertEquals(0.5, curve.retained(20), 1e-12);
        assertEquals(0, curve.retained(5));
        assertEquals(1, curve.retained(50));
        assertEquals(curve.gamma(), ResistCurve.gammaFromHalf(10, 20), 1e-12);
        assertEquals(1.66667, ResistCurve.gammaFromWedge(4), 1e-5);
        assertThrows(Refusal.class, () -> new ResistCurve(40, 40));
    }

    @Test
    void blackMustOutlastTheStepHeldAndTheContrast() {
        double gamma = new ResistCurve(10, 40).gamma();
        double held = StepWedge.nominal().density(8);
        assertEquals(1.70206, ResistCurve.requiredBlackDensity(held, gamma, 0), 1e-4);
        assertEquals(2.00206, ResistCurve.requiredBlackDensity(held, gamma, 0.3), 1e-4);
    }

    @Test
    void hardenedDepthFollowsTheWorkingCurve() {
        // Jacobs's working curve, as given by Gibson, Rosen and Stucker.
        WorkingCurve whole = WorkingCurve.ofFilm(30, 0.4, 8);
        assertEquals(32.5721, whole.penetrationMicrometres(), 1e-4);
        assertEquals(29.8455, whole.hardenedMicrometres(20), 1e-4);
        assertEquals(20.0951, whole.doseToCopper(30), 1e-4);
        assertEquals(0, whole.hardenedMicrometres(7));
        double thinned = WorkingCurve.ofFilm(15, 0.2, 8).doseToCopper(15);
        assertEquals(12.6791, thinned, 1e-4);
        assertEquals(0.630957, thinned / whole.doseToCopper(30), 1e-6);
    }

    @Test
    void sodaIsWeighedByItsWater() {
        // A dry-film maker's guide agrees: 0.80-0.90 % anhydrous or 0.95-1.05 % monohydrate.
        assertEquals(11.70, SodaBath.equivalentGrams(10, Soda.ANHYDROUS, Soda.MONOHYDRATE), 0.01);
        assertEquals(27.00, SodaBath.equivalentGrams(10, Soda.ANHYDROUS, Soda.DECAHYDRATE), 0.01);
        for (Soda one : Soda.values()) {
            for (Soda other : Soda.values()) {
                double back = SodaBath.equivalentGrams(SodaBath.equivalentGrams(10, one, other), other, one);
                assertEquals(10, back, 1e-12);
            }
        }
    }

    @Test
    void hardWaterTakesSoda() {
        assertEquals(0.031768, SodaBath.hardnessLoss(10, Soda.ANHYDROUS, 300), 1e-4);
        assertEquals(0.318, SodaBath.hardnessLoss(1, Soda.ANHYDROUS, 300), 1e-3);
        assertEquals(1, SodaBath.hardnessLoss(0.1, Soda.ANHYDROUS, 900));
    }

    @Test
    void copperShowsAtThreeFifthsOfDeveloping() {
        // A dry-film maker's guide: breakpoint at 60 % of the whole time.
        assertEquals(75, SodaBath.wholeTime(45, 0.6), 1e-12);
    }

    @Test
    void aTestStripHoldsItsMiddleAndAddsUp() {
        TestStrip strip = TestStrip.around(90, 5, 0.15);
        assertEquals(90, strip.totals().get(2), 1e-9);
        assertEquals(90 * StepWedge.exposureFactor(0, 2), strip.totals().get(4), 1e-9);
        double sum = 0;
        for (int part = 0; part < 5; part++) {
            sum += strip.additions().get(part);
            assertEquals(strip.totals().get(part), sum, 1e-9);
        }
    }

    @Test
    void paperFilmAndRulerKeepTheirMeasure() {
        // Quarter of an inch over five sheets of 8.5 in: copperplatepress.com, Dimensional Stability, 2009.
        assertEquals(0.588235, TrueSize.expansionPercent(0.25, 42.5), 1e-4);
        assertEquals(0.523599, TrueSize.rotationError(0.1, 300), 1e-5);
        assertEquals(297.900, TrueSize.dryPrint(300, 0.7), 1e-9);
        assertEquals(302.115, TrueSize.plateForPrint(300, 0.7), 1e-3);
        assertEquals(0.97, TrueSize.rulerScale(97, 100), 1e-12);
        assertEquals(61.8557, 60 / TrueSize.rulerScale(97, 100), 1e-4);
        assertEquals(0.09, TrueSize.filmGrowth(500, 10, 0), 1e-12);
        assertEquals(0.10, TrueSize.filmGrowth(500, 0, 20), 1e-12);
        assertEquals(0.469042, TrueSize.together(0.3, 0.3, 0.2), 1e-6);
        assertEquals(1.002, TrueSize.checkRuler(100.2, 100), 1e-12);
        assertThrows(Refusal.class, () -> TrueSize.checkRuler(97, 100));
    }
}
