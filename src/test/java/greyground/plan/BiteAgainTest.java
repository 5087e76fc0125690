package greyground.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BiteAgainTest {
    private static final PlanRequest REQUEST = BenchOrderTest.request(new PlateProcess.EtchedFilm());

    private static Workshop bath(double celsius, double copper) {
        return Workshop.assumed()
                .with("bath.temperatureCelsius", Figure.assumed(celsius, "invented"))
                .with("bath.copperGramsPerLitre", Figure.assumed(copper, "invented"));
    }

    /** Biting the minutes that are left reaches the wanted depth, by the rate that the proof found. */
    @Test
    void proofAndBiteAgainCloses() {
        SplittableRandom chance = new SplittableRandom(20261125);
        for (int round = 0; round < 300; round++) {
            Workshop then = bath(chance.nextDouble(10, 30), chance.nextDouble(0, 40));
            Workshop now = bath(chance.nextDouble(10, 30), chance.nextDouble(0, 50));
            double depth = chance.nextDouble(2, 25);
            double wanted = chance.nextDouble(5, 50);
            BiteAgain again = BiteAgain.of(then, now, REQUEST, chance.nextDouble(2, 40), depth, wanted);
            assertEquals(
                    Math.max(depth, wanted),
                    depth + again.bath().depthAfter(again.minutesMore()),
                    1e-9,
                    again.toString());
            assertEquals(wanted <= depth, again.minutesMore() == 0);
        }
    }

    /** A bath that bites as predicted needs the rest of the whole bite's time, whenever it is broken off to proof. */
    @Test
    void aBathAsPredictedNeedsTheRestOfTheWholeTime() {
        Workshop then = bath(18, 12);
        Bite whole = Bite.of(then, REQUEST);
        for (double minutes = 1; minutes < 15; minutes += 2) {
            double depth = whole.depthAfter(minutes);
            Workshop now = bath(18, Bite.of(then, REQUEST).copperAfter(depth));
            BiteAgain again = BiteAgain.of(then, now, REQUEST, minutes, depth, 40);
            assertEquals(1, again.rateOverPlan(), 1e-12);
            assertEquals(whole.minutesTo(40), minutes + again.minutesMore(), 1e-9);
        }
    }

    @Test
    void moreCopperAndColderBathsNeedMoreMinutes() {
        double before = 0;
        for (double copper = 0; copper < 90; copper += 10) {
            double more = BiteAgain.of(bath(20, 0), bath(20, copper), REQUEST, 10, 15, 30)
                    .minutesMore();
            assertTrue(more > before, copper + " g/L");
            before = more;
        }
        before = Double.POSITIVE_INFINITY;
        for (double celsius = 10; celsius <= 35; celsius += 5) {
            double more = BiteAgain.of(bath(20, 0), bath(celsius, 0), REQUEST, 10, 15, 30)
                    .minutesMore();
            assertTrue(more < before, celsius + " C");
            before = more;
        }
        // Half the copper that stops a bath halves its rate: 30 um/30 min becomes 15, but for what the plate adds.
        double fresh =
                BiteAgain.of(bath(20, 0), bath(20, 0), REQUEST, 10, 15, 16).minutesMore();
        double half =
                BiteAgain.of(bath(20, 0), bath(20, 50), REQUEST, 10, 15, 16).minutesMore();
        assertEquals(2, half / fresh, 0.01);
    }

    /** Without copper, rate is depth over time: 15 um in 10 min leave 15 um for 10 min more. */
    @Test
    void withoutSlowingItIsTheRuleOfThree() {
        Workshop wide = Workshop.assumed().with("bath.litres", Figure.assumed(1000, "invented: a bath so large"));
        BiteAgain again = BiteAgain.of(wide, wide, REQUEST, 10, 15, 30);
        assertEquals(10, again.minutesMore(), 0.01);
    }

    /** Tollenaar and Ernst's form, Dinf 1.7, m 0.15: 9.64613 um of ink for D 1.3 over paper (computed apart). */
    @Test
    void aProofsDensityTellsTheDepth() {
        assertEquals(9.64613 / 0.8, BitePlan.depthFor(Workshop.assumed(), 1.36), 1e-4);
        assertThrows(Refusal.class, () -> BitePlan.depthFor(Workshop.assumed(), 3));
    }

    @Test
    void whatCannotBeIsRefused() {
        Workshop shop = Workshop.assumed();
        assertThrows(Refusal.class, () -> BiteAgain.of(shop, shop, REQUEST, 0, 15, 30));
        assertThrows(Refusal.class, () -> BiteAgain.of(shop, shop, REQUEST, 10, 0, 30));
        assertThrows(Refusal.class, () -> BiteAgain.of(shop, shop, REQUEST, 10, 15, 400));
        assertThrows(Refusal.class, () -> BiteAgain.of(shop, bath(20, 150), REQUEST, 10, 15, 30));
    }
}
