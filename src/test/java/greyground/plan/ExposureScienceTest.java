package greyground.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.plate.PlateProcess;
import greyground.workshop.Developer.Soda;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import org.junit.jupiter.api.Test;

/** Figures computed in double precision from the cited formulas, apart from this program. */
class ExposureScienceTest {
    @Test
    void wedgeRunsFromFiveHundredthsToThreeAndFiveHundredths() {
        // Wedge data quoted by a flatbed-scanner densitometry note, 2008: 21 steps of 0.15, Dmax 3.05; tolerance 0.02.
        assertEquals(3.05, StepWedge.density(21), 0.02);
        assertEquals(1.10, StepWedge.density(8), 1e-12);
        assertEquals(0.0794328, Math.pow(10, -StepWedge.density(8)), 1e-7);
    }

    @Test
    void oneStepIsNotQuiteTheRootOfTwo() {
        assertEquals(1.412538, StepWedge.exposureFactor(7, 8), 1e-6);
    }

    @Test
    void exposureFollowsTheStepHeld() {
        assertEquals(169.103, 60 * StepWedge.exposureFactor(5, 8), 1e-3);
        assertEquals(21.2888, 60 * StepWedge.exposureFactor(10, 7), 1e-4);
    }

    @Test
    void lightFallsWithDistance() {
        assertEquals(153.6, 60 * ExposureTimes.distanceFactor(500, 800), 1e-9);
    }

    @Test
    void lampFadesToFourFifths() {
        // J. Illum. Engng Inst. Japan 46(12): copying fluorescent lamps keep about 80 % at the end of 1000 h or more.
        assertEquals(4481.42, ExposureTimes.decayHours(1000), 0.01);
        assertEquals(0.894427, ExposureTimes.lightLeft(500, 1000), 1e-5);
        assertEquals(67.082, 60 * ExposureTimes.ageingFactor(0, 500, 1000), 1e-3);
        assertEquals(1, ExposureTimes.ageingFactor(700, 700, 1000), 1e-12);
    }

    @Test
    void filmBaseCostsLight() {
        assertEquals(1.318257, ExposureTimes.baseFactor(0.12), 1e-6);
        assertEquals(79.0954, 60 * ExposureTimes.baseFactor(0.12), 1e-4);
        assertEquals(3.0, 300 / ExposureTimes.baseFactor(2), 1e-12);
    }

    @Test
    void sodaIsWeighedByItsWater() {
        // A dry-film maker's guide agrees: 0.80-0.90 % anhydrous or 0.95-1.05 % monohydrate.
        assertEquals(11.70, Soda.ANHYDROUS.equivalentGrams(10, Soda.MONOHYDRATE), 0.01);
        assertEquals(27.00, Soda.ANHYDROUS.equivalentGrams(10, Soda.DECAHYDRATE), 0.01);
        for (Soda one : Soda.values()) {
            for (Soda other : Soda.values()) {
                double back = other.equivalentGrams(one.equivalentGrams(10, other), one);
                assertEquals(10, back, 1e-12);
            }
        }
    }

    @Test
    void hardWaterTakesSoda() {
        assertEquals(0.031768, Soda.ANHYDROUS.hardnessLoss(10, 300), 1e-4);
        assertEquals(0.318, Soda.ANHYDROUS.hardnessLoss(1, 300), 1e-3);
        assertEquals(1, Soda.ANHYDROUS.hardnessLoss(0.1, 900));
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

    /** Textbook contrast curve: gamma 1.66096 is 10 to 40 in dose; step 8 lies at density 1.10. */
    @Test
    void blackMustOutlastTheStepHeldAndTheContrast() {
        Workshop shop = Workshop.assumed()
                .with("exposure.targetStep", Figure.assumed(8, "for this test"))
                .with("resist.contrastGamma", Figure.assumed(1.66096, "for this test"));
        assertEquals(
                1.70206,
                FilmBlack.of(
                                shop.with("exposure.blackMarginDensity", Figure.assumed(0, "for this test")),
                                new PlateProcess.EtchedFilm())
                        .needed(),
                1e-4);
        assertEquals(
                2.00206,
                FilmBlack.of(
                                shop.with("exposure.blackMarginDensity", Figure.assumed(0.3, "for this test")),
                                new PlateProcess.EtchedFilm())
                        .needed(),
                1e-4);
    }
}
