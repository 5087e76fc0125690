package greyground.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BiteLogTest {
    private static final PlanRequest REQUEST = BenchOrderTest.request(new PlateProcess.EtchedFilm());
    private static final Workshop SHOP = Workshop.assumed();

    /** An invented plate: darkest at 50 um, its lands going from 30 um on. */
    private static final BiteLog.Predicted PLATE = new BiteLog.Predicted() {
        @Override
        public BittenTones tones(double depth) {
            return new BittenTones(95, 94, 15 + Math.abs(depth - 50), depth < 30 ? 0.95 : 0.95 - 0.005 * (depth - 30));
        }

        @Override
        public double lightness(double depth, double coverage) {
            return 95 - depth * coverage;
        }

        @Override
        public double deepestMicrometres() {
            return 130;
        }
    };

    private static BiteLog.State state(double minutes, double depth, double error) {
        return new BiteLog.State(minutes, depth, error, 10, 0.7);
    }

    private static Workshop bath(double copper) {
        return SHOP.with("bath.copperGramsPerLitre", Figure.assumed(copper, "invented"));
    }

    private static BiteLog log(BiteLog.State... states) {
        double depth = states[states.length - 1].depthMicrometres();
        return BiteLog.of(bath(5), bath(Bite.of(bath(5), REQUEST).copperAfter(depth)), REQUEST, List.of(states), PLATE);
    }

    /** A bath that bites at one share of the predicted rate throughout: biting on must arrive where one bite of the whole time would. */
    @Test
    void aSteadyBathGoesOnAsItWent() {
        SplittableRandom chance = new SplittableRandom(20261125);
        for (int round = 0; round < 100; round++) {
            double share = chance.nextDouble(0.6, 1.5);
            Bite predicted = Bite.of(bath(5), REQUEST);
            Bite real = new Bite(
                    predicted.freshRate() * share,
                    predicted.copperAtStart(),
                    predicted.copperLimit(),
                    predicted.copperPerMicrometre(),
                    predicted.etchFactor());
            BiteLog log = log(
                    state(3, real.depthAfter(3), 0.2),
                    state(6, real.depthAfter(6), 0.2),
                    state(9, real.depthAfter(9), 0.2));
            for (BiteLog.Row row : log.rows()) {
                // Copper slows both alike but for the share's own small part in it.
                assertEquals(
                        real.depthAfter(9 + row.moreMinutes()), row.depthMicrometres(), 0.02 * row.depthMicrometres());
            }
            assertTrue(
                    log.pace().contains("keeps its rate") || log.pace().contains("as the copper in it explains"),
                    log.pace());
        }
    }

    @Test
    void ratesLieBetweenStatesAndAddUp() {
        BiteLog log = log(state(8, 13, 0.3), state(14, 20, 0.4));
        assertEquals(13.0 / 8, log.stretches().get(0).rate(), 1e-12);
        assertEquals(7.0 / 6, log.stretches().get(1).rate(), 1e-12);
        assertEquals(0.5 / 6, log.stretches().get(1).standardError(), 1e-12);
        double whole = 0;
        for (BiteLog.Stretch stretch : log.stretches()) {
            whole += stretch.predicted() * (stretch.to() - stretch.from());
        }
        assertEquals(Bite.of(bath(5), REQUEST).depthAfter(14), whole, 1e-9);
    }

    @Test
    void aBathThatSlowsMoreThanItsCopperIsTold() {
        assertTrue(log(state(8, 15, 0.3), state(16, 20, 0.3)).pace().startsWith("the bath slows by more"));
        assertTrue(log(state(8, 10, 0.3), state(16, 28, 0.3)).pace().startsWith("the bath quickens"));
        assertTrue(log(state(8, 15, 5), state(16, 22, 5)).pace().startsWith("the bath keeps its rate"));
        double usual = Bite.of(bath(5), REQUEST).depthAfter(8);
        assertTrue(log(state(8, usual, 0.3)).pace().startsWith("the bath bites as the workshop's numbers say"));
        assertTrue(log(state(8, usual / 2, 0.3)).pace().contains("at 50 % of the rate"));
    }

    /** The plate is darkest at 50 um: rows end with the first that prints no darker. */
    @Test
    void rowsEndWhereThePrintGetsNoDarker() {
        BiteLog log = log(state(8, 14, 0.3));
        List<BiteLog.Row> rows = log.rows();
        assertEquals(0, rows.get(0).moreMinutes());
        List<Double> minutes = new ArrayList<>();
        rows.forEach(row -> minutes.add(row.moreMinutes()));
        assertEquals(List.of(0.0, 2.0, 4.0, 8.0, 16.0), minutes.subList(0, 5));
        assertTrue(log.endsNoDarker());
        for (int i = 1; i < rows.size() - 1; i++) {
            assertTrue(rows.get(i).tones().darkest() < rows.get(i - 1).tones().darkest());
        }
        assertTrue(rows.get(rows.size() - 1).depthMicrometres() > 50);
        for (int i = 1; i < rows.size(); i++) {
            assertTrue(rows.get(i).standardError() > rows.get(i - 1).standardError());
        }
        BiteLog done = log(state(30, 60, 0.3));
        assertEquals(2, done.rows().size());
    }

    @Test
    void theStepWarnsOfOpenBiteAndCarriesTheCautionsOfTheBath() {
        BiteLog log = log(state(8, 14, 0.3), state(14, 22, 0.3));
        ExposurePlan.Step step = BiteLogOrder.step(bath(8), REQUEST, log, OptionalDouble.of(0.9));
        assertTrue(step.warnings().get(0).contains("lose their lands and bite open; this film uses up to 90 %"));
        assertFalse(step.cautions().isEmpty());
        ExposurePlan.Step gentle = BiteLogOrder.step(bath(8), REQUEST, log, OptionalDouble.of(0.5));
        assertEquals(List.of(), gentle.warnings());
        BiteLog poor = BiteLog.of(bath(5), bath(6), REQUEST, List.of(new BiteLog.State(8, 14, 1, 10, 6)), PLATE);
        assertTrue(BiteLogOrder.step(bath(6), REQUEST, poor, OptionalDouble.empty())
                .warnings()
                .get(0)
                .contains("the depth is unsure"));
    }

    @Test
    void logsOutOfOrderAreRefused() {
        assertThrows(Refusal.class, () -> log(state(8, 13, 0.3), state(8, 20, 0.4)));
        assertThrows(Refusal.class, () -> BiteLog.of(bath(5), bath(5), REQUEST, List.of(), PLATE));
        assertThrows(Refusal.class, () -> state(0, 13, 0.3));
    }
}
