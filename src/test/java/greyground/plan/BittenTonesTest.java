package greyground.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class BittenTonesTest {
    private static final PlanRequest REQUEST = BenchOrderTest.request(new PlateProcess.EtchedFilm());

    /** An invented plate: its darkest tone falls towards {@code least} with depth, and rises again past {@code best}. */
    private static BittenTones.OfDepth plate(double least, double reach, double best, AtomicInteger asked) {
        return depth -> {
            asked.incrementAndGet();
            double darkest = least + (95 - least) * Math.exp(-depth / reach) + Math.max(0, depth - best);
            return new BittenTones(95, 94, darkest, 0.9);
        };
    }

    @Test
    void theDepthFoundPrintsAsDarkAsWantedAndHardlyDarker() {
        SplittableRandom chance = new SplittableRandom(11);
        for (int round = 0; round < 300; round++) {
            double least = chance.nextDouble(8, 20);
            AtomicInteger asked = new AtomicInteger();
            BittenTones.OfDepth plate = plate(least, chance.nextDouble(4, 25), 200, asked);
            double wanted = chance.nextDouble(least + 2, 60);
            double depth = BittenTones.depthFor(wanted, plate);
            double reached = plate.at(depth).darkest();
            assertTrue(reached <= wanted, wanted + " wanted, " + reached + " at " + depth);
            // A straight line between two depths is never far from the curve: half a unit and a little, in few
            // questions.
            assertTrue(reached > wanted - 1.5, wanted + " wanted, " + reached + " at " + depth);
            assertTrue(asked.get() <= 14, asked + " depths asked");
        }
    }

    @Test
    void darkerNeverNeedsAShallowerBite() {
        BittenTones.OfDepth plate = plate(14, 12, 200, new AtomicInteger());
        double before = 0;
        for (double wanted = 70; wanted > 16; wanted -= 3) {
            double depth = BittenTones.depthFor(wanted, plate);
            assertTrue(depth > before, "L* " + wanted + " at " + depth);
            before = depth;
        }
    }

    @Test
    void aBlackThatNoDepthGivesIsRefusedWithTheBestThereIs() {
        BittenTones.OfDepth plate = plate(18, 10, 30, new AtomicInteger());
        Refusal refusal = assertThrows(Refusal.class, () -> BittenTones.depthFor(15, plate));
        assertTrue(refusal.getMessage().contains("L* 15"), refusal.getMessage());
        assertTrue(refusal.getMessage().contains("or paler"), refusal.getMessage());
        // Density 1.76, paper included, is L* 14.0 (CIE 15:2004, computed apart): no depth of this ink prints darker.
        Refusal ink =
                assertThrows(Refusal.class, () -> BitePlan.toDarkest(Workshop.assumed(), REQUEST, 13.9, depth -> null));
        assertTrue(ink.getMessage().contains("darkest solid"), ink.getMessage());
        assertThrows(Refusal.class, () -> BittenTones.depthFor(0, plate));
        assertThrows(Refusal.class, () -> BittenTones.depthFor(40, depth -> null));
    }

    @Test
    void everyRowOfThePlanTellsWhatItsOwnDepthPrints() {
        BittenTones.OfDepth plate = plate(14, 12, 200, new AtomicInteger());
        BitePlan plan = BitePlan.toDarkest(Workshop.assumed(), REQUEST, 25, plate);
        for (BitePlan.Row row : plan.rows()) {
            BittenTones predicted = plate.at(row.depthMicrometres());
            assertNotNull(predicted);
            assertEquals(predicted, row.tones());
        }
        assertTrue(plan.planned().tones().darkest() <= 25);
        assertEquals(100, plan.planned().timePercent());
    }

    /** More time is never shallower, and more copper in the bath never quicker, whatever the plate and the bath. */
    @Test
    void moreTimeIsNeverShallowerAndMoreCopperNeverQuicker() {
        SplittableRandom chance = new SplittableRandom(4);
        for (int round = 0; round < 100; round++) {
            Workshop shop = Workshop.assumed()
                    .with(
                            "bath.temperatureCelsius",
                            greyground.workshop.Figure.assumed(chance.nextDouble(8, 40), "invented"));
            double depth = chance.nextDouble(2, 60);
            double before = 0;
            for (double copper = 0; copper < 80; copper += 20) {
                BitePlan plan = BitePlan.toDepth(
                        shop.with("bath.copperGramsPerLitre", greyground.workshop.Figure.assumed(copper, "invented")),
                        REQUEST,
                        depth,
                        predicted -> null);
                assertTrue(plan.minutes() > before);
                before = plan.minutes();
                for (int i = 1; i < plan.rows().size(); i++) {
                    assertTrue(plan.rows().get(i).depthMicrometres()
                            > plan.rows().get(i - 1).depthMicrometres());
                }
            }
        }
    }
}
