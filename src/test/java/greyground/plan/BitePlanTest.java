package greyground.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BitePlanTest {
    private static final PlanRequest REQUEST = BenchOrderTest.request(new PlateProcess.EtchedFilm());

    @Test
    void minutesAndDepthAreEachOthersInverse() {
        SplittableRandom chance = new SplittableRandom(20261125);
        for (int round = 0; round < 500; round++) {
            double limit = chance.nextDouble(60, 150);
            double perMicrometre = round % 5 == 0 ? 0 : chance.nextDouble(0, 0.3);
            Bite bite = new Bite(chance.nextDouble(0.3, 30), chance.nextDouble(0, 50), limit, perMicrometre, 2);
            double depth = chance.nextDouble(1, 30);
            assertEquals(depth, bite.depthAfter(bite.minutesTo(depth)), 1e-9 * depth, bite + " to " + depth);
        }
    }

    @Test
    void depthSolvesTheSlowingBath() {
        // Against the same law stepped in small times (midpoint rule), an independent way to the same depth.
        Bite bite = new Bite(2, 30, 100, 0.4, 2);
        double depth = 0;
        double step = 0.001;
        for (int i = 0; i < 20_000; i++) {
            double half = depth + step / 2 * 2 * (100 - bite.copperAfter(depth)) / 100;
            depth += step * 2 * (100 - bite.copperAfter(half)) / 100;
        }
        assertEquals(depth, bite.depthAfter(20), 1e-6);
    }

    @Test
    void longerIsDeeperButNeverPastTheCopperThatStopsIt() {
        Bite bite = new Bite(5, 60, 100, 0.8, 2);
        double before = 0;
        for (double minutes = 0.5; minutes < 500; minutes *= 1.3) {
            double depth = bite.depthAfter(minutes);
            assertTrue(depth > before && depth < 50, minutes + " min: " + depth);
            before = depth;
        }
        assertThrows(Refusal.class, () -> bite.minutesTo(50));
    }

    @Test
    void aFifthMoreTimeIsDeeperDarkerAndHarderOnLands() {
        BitePlan plan = BitePlan.toDepth(Workshop.assumed(), REQUEST, 30, depth -> null);
        assertEquals(5, plan.rows().size());
        assertEquals(30, plan.rows().get(2).depthMicrometres(), 1e-9);
        assertEquals(plan.minutes() * 1.2, plan.rows().get(4).minutes(), 1e-9);
        for (int i = 1; i < 5; i++) {
            BitePlan.Row less = plan.rows().get(i - 1);
            BitePlan.Row more = plan.rows().get(i);
            assertTrue(more.depthMicrometres() > less.depthMicrometres());
            assertTrue(more.solidDensity() > less.solidDensity());
            assertTrue(more.leastLandMicrometres() > less.leastLandMicrometres());
            assertTrue(more.copperGramsPerLitre() > less.copperGramsPerLitre());
        }
        // Etch factor 2 (Allen, Horne and Stevens 1982): undercut is half the depth; 5 um hold on (from memory).
        assertEquals(15, plan.rows().get(2).undercutMicrometres(), 1e-9);
        assertEquals(35, plan.rows().get(2).leastLandMicrometres(), 1e-9);
    }

    @Test
    void copperOfTheTableIsTheCopperOfThePlate() {
        // 500 cm2, 40 % open, 30 um, 8.96 g/cm3, 2 L: 5.376 g, 2.688 g/L.
        BitePlan plan = BitePlan.toDepth(Workshop.assumed(), REQUEST, 30, depth -> null);
        assertEquals(2.688, plan.rows().get(2).copperGramsPerLitre(), 1e-9);
    }

    /** Tollenaar and Ernst's form with Dinf 1.7, m 0.15: D 1.3 over paper needs 9.64613 um of ink (computed apart); transfer 0.8. */
    @Test
    void aWantedBlackGivesItsDepth() {
        Workshop shop = Workshop.assumed();
        double depth = BitePlan.depthFor(shop, 1.36);
        assertEquals(9.64613 / 0.8, depth, 1e-4);
        assertEquals(1.36, shop.solidDensity(depth), 1e-9);
        // Doubling the ink film is doubling the depth: D(2y) from D(y) by 1 - (1 - D/Dinf)^2.
        double twice = 0.06 + 1.7 * (1 - Math.pow(1 - 1.3 / 1.7, 2));
        assertEquals(2 * depth, BitePlan.depthFor(shop, twice), 1e-9);
        assertThrows(Refusal.class, () -> BitePlan.depthFor(shop, 1.76));
        assertThrows(Refusal.class, () -> BitePlan.depthFor(shop, 0.05));
    }
}
