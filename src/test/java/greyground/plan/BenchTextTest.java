package greyground.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plan.ExposurePlan.Step;
import greyground.plate.Exposure;
import greyground.plate.Light;
import greyground.plate.LightSplit;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.plate.split.DoubleExposure;
import greyground.plate.split.ExposureSplit;
import greyground.plate.split.ExposureTrade;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Answers for the bench: their words, and the arithmetic from doses to seconds. */
class BenchTextTest {
    private static final Workshop SHOP = Workshop.assumed();
    private static final PlateProcess.Photogravure GRAVURE = PlateProcess.Photogravure.unsaid();
    private static final PlateConditions CONDITIONS =
            BenchConditions.ofDepth(SHOP, GRAVURE, SHOP.usualDepthMicrometres(), true);

    private static ExposureSplit split(double screenDose, double imageDose) {
        return new ExposureSplit(
                screenDose, imageDose, 0.4, 30, 94.8, 94.6, 18, 4.2, 0.12, 1.9, Double.POSITIVE_INFINITY, 7);
    }

    private static String text(Step... steps) {
        ExposurePlan whole = BenchOrder.plan(SHOP, BenchOrderTest.request(GRAVURE));
        return PlanText.of("BITE PLAN", BiteOrder.plan(whole.steps().get(0), List.of(steps)));
    }

    private static void checkPage(String text, String... words) {
        text.lines().forEach(line -> assertTrue(line.length() <= 80, "80 columns: " + line));
        for (String word : words) {
            assertTrue(text.contains(word), word + " in " + text);
        }
        assertTrue(text.contains("safety data sheet"), "the lead line defers");
    }

    @Test
    void theBiteReadsAtTheBath() {
        BitePlan plan = BitePlan.toDepth(
                SHOP,
                BenchOrderTest.request(GRAVURE),
                120,
                depth -> new BittenTones(94.8, 94.8, depth > 130 ? 30 : 20, 0.91));
        checkPage(
                text(BiteOrder.bite(
                        SHOP,
                        BenchOrderTest.request(GRAVURE),
                        plan,
                        new BiteOrder.Wish("a darkest tone of L* 20", true))),
                "BITE PLAN",
                "a darkest tone of L* 20",
                "paler",
                "10.0 L* paler",
                "Ferric chloride is acidic",
                "goggles");
    }

    @Test
    void theSecondBiteReadsAtTheBath() {
        BiteAgain slow = BiteAgain.of(SHOP, SHOP, BenchOrderTest.request(GRAVURE), 30, 10, 30);
        BiteOrder.Wish wish = new BiteOrder.Wish("a depth of 30 µm", false);
        checkPage(
                text(BiteOrder.again(
                        SHOP,
                        SHOP,
                        BenchOrderTest.request(GRAVURE),
                        slow,
                        new BiteOrder.Proof("a solid of density 1.1", false),
                        wish)),
                "Bite again",
                "depth so far",
                "20 °C, 0.0 g/L",
                "times as fast as the workshop's numbers say",
                "Ferric chloride is acidic");
        BiteAgain done = BiteAgain.of(SHOP, SHOP, BenchOrderTest.request(GRAVURE), 20, 40, 30);
        checkPage(
                text(BiteOrder.again(
                        SHOP,
                        SHOP,
                        BenchOrderTest.request(GRAVURE),
                        done,
                        new BiteOrder.Proof("a depth of 40 µm", true),
                        wish)),
                "not at all",
                "nothing more to do");
    }

    @Test
    void theTradeReadsAtTheLamp() {
        ExposureTrade trade = new ExposureTrade(List.of(split(3, 0.9), split(1.8, 1.05)), split(1.8, 1.05));
        SplitTimes times = SplitTimes.of(SHOP, CONDITIONS, trade.advised());
        Workshop pale = SHOP.with("filmPrinter.blackUvDensity", Figure.assumed(1.95, "invented"));
        checkPage(
                text(ExposureOrder.advice(pale, trade, times, split(3.57, 5.35))),
                "*  1.80",
                "  3.57",
                ExposureTrade.RULE.substring(0, 20),
                "bands between the films",
                "!! The film's black, density 1.95",
                "Never look at or reach under a lit lamp");
    }

    /** What the shop exposes today comes back as the seconds it exposes today, holding the step it holds. */
    @Test
    void todaysDosesAreTodaysSeconds() {
        DoubleExposure today = SplitTimes.present(CONDITIONS);
        SplitTimes times = SplitTimes.of(SHOP, CONDITIONS, split(today.screenDose(), today.imageDose()));
        ExposureTimes planned = ExposureTimes.of(SHOP);
        assertEquals(planned.screenSeconds(), times.screenSeconds(), 1e-9);
        assertEquals(planned.imageSeconds(), times.imageSeconds(), 1e-9);
        assertEquals(SHOP.exposure().targetStep().value(), times.stepHeld(), 1e-9);
        assertEquals(9.5, StepWedge.step(StepWedge.density(9.5)), 1e-12);
    }

    /** The words of the advice say how to plan by it; doing so gives the plate that was advised. */
    @Test
    void theAdviceTakenIntoTheWorkshopGivesTheAdvisedDoses() {
        ExposureSplit split = split(1.8, 1.05);
        SplitTimes times = SplitTimes.of(SHOP, CONDITIONS, split);
        Workshop taken = SHOP.with("exposure.screenSeconds", Figure.assumed(times.screenSeconds(), "advised"))
                .with("exposure.imageSeconds", Figure.assumed(times.imageSeconds(), "advised"))
                .with("exposure.stepHeld", Figure.assumed(times.stepHeld(), "advised"))
                .with("exposure.targetStep", Figure.assumed(times.stepHeld(), "advised"));
        DoubleExposure doses =
                SplitTimes.present(BenchConditions.ofDepth(taken, GRAVURE, taken.usualDepthMicrometres(), true));
        assertEquals(1.8, doses.screenDose(), 1e-9);
        assertEquals(1.05, doses.imageDose(), 1e-9);
    }

    /**
     * By hand: 60 and 90 s together hold step 7, which is 10^0.95 = 8.9125 hardening doses, so one takes 16.830 s; 2.85 of them hold step
     * 1 + (log10 2.85 - 0.05) / 0.15 = 3.7.
     */
    @Test
    void theSplitThatAJobStatesIsExposedSo() {
        PlateProcess.Photogravure stated =
                new PlateProcess.Photogravure(0.4, 150, Optional.of(new LightSplit(1.8, 1.05, 35)));
        PlateConditions conditions = BenchConditions.ofDepth(SHOP, stated, 40, true);
        DoubleExposure doses = SplitTimes.present(conditions);
        assertEquals(1.8, doses.screenDose(), 1e-9);
        assertEquals(1.05, doses.imageDose(), 1e-9);
        assertEquals(35, SplitTimes.presentBlurMicrometres(conditions), 1e-9);
        ExposureTimes times = ExposureTimes.of(SHOP, stated);
        assertEquals(30.2945, times.screenSeconds(), 1e-3);
        assertEquals(17.6718, times.imageSeconds(), 1e-3);
        String plan = PlanText.of(BenchOrder.plan(SHOP, BenchOrderTest.request(stated)));
        for (String said :
                List.of("30 s", "18 s", "1.80 hardening doses", "step 3.7", "clear sheet under the screen")) {
            assertTrue(plan.contains(said), said + " in\n" + plan);
        }
    }

    /** The spacer's half-shadow and the film's own softness add as variances to the softness that is asked. */
    @Test
    void theSpacerGivesTheSoftness() {
        SplitTimes times = SplitTimes.of(SHOP, CONDITIONS, split(1.8, 1.05));
        Light contact = CONDITIONS.exposures().get(0).light();
        Light apart = new Light(times.spacerMicrometres(), contact.halfAngleDegrees(), contact.refractiveIndex());
        double film = SHOP.filmPrinter().edgeSoftnessMicrometres().value();
        assertEquals(30, Math.hypot(film, apart.blurMicrometres()), 1e-9);
        // B = 2 g tan(asin(sin 10 / 1.65)); B is 21.1658 um at 100 um (computed apart), and its deviation B / sqrt 12.
        double perMicrometre = 21.1658 / 100 / Math.sqrt(12);
        assertEquals(Math.sqrt(900 - film * film) / perMicrometre, times.spacerMicrometres(), 0.1);
        assertEquals(Exposure.Sheet.SCREEN, CONDITIONS.exposures().get(0).sheet());
    }
}
