package greyground.workshop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;

class WorkshopTest {
    @Test
    void everyAssumedNumberSaysWhereItComesFrom() {
        Map<String, Figure> figures = Workshop.assumed().figures();
        assertTrue(figures.size() > 55, () -> "only " + figures.size() + " figures");
        figures.forEach((path, figure) -> {
            assertTrue(figure.isAssumed(), path);
            assertTrue(
                    figure.provenance()
                            .basis()
                            .matches(
                                    ".*(common practice|from memory|assumed|textbook|definition|guide|note|computed|[12]"
                                            + "[089][0-9][0-9]|Developing|Aquatint|Relief Forming|Japan).*"),
                    () -> path + " names no source: " + figure.provenance().basis());
        });
    }

    @Test
    void assumedTimesAreTheTradesUsualOnes() {
        // Common practice, no source: 27 min thinning within 20-30, 60 s + 90 s, 10 min hardening, 20 min bite.
        Workshop shop = Workshop.assumed();
        assertEquals(27, shop.resist().thinningMinutes().value());
        assertEquals(20, shop.resist().thinningLeastMinutes().value());
        assertEquals(30, shop.resist().thinningMostMinutes().value());
        assertEquals(60, shop.exposure().screenSeconds().value());
        assertEquals(90, shop.exposure().imageSeconds().value());
        assertEquals(10, shop.hardening().minutes().value());
        assertEquals(20, shop.bath().biteMinutes().value());
    }

    @Test
    void oneNumberCanBeMeasuredAndTheOthersStay() {
        Workshop before = Workshop.assumed();
        Figure held = Figure.measured(6, LocalDate.of(2026, 3, 4), "21-step wedge, plate 3");
        Workshop after = before.with("exposure.stepHeld", held);
        assertEquals(held, after.exposure().stepHeld());
        assertEquals("measured 2026-03-04", held.provenance().words());
        assertEquals(before, after.with("exposure.stepHeld", before.exposure().stepHeld()));
    }

    @Test
    void anUnknownNumberIsRefusedWithTheKnownOnes() {
        Figure figure = Figure.assumed(1, "common practice");
        Refusal refusal = assertThrows(Refusal.class, () -> Workshop.assumed().with("bath.strength", figure));
        assertTrue(refusal.getMessage().contains("bath.degreesBaume"), refusal.getMessage());
    }

    @Test
    void everyNumberHasItsLimitsAndNamesItselfWhenRefused() {
        Workshop shop = Workshop.assumed();
        for (String path : shop.figures().keySet()) {
            for (double wild : new double[] {-1e6, 2e6}) {
                Refusal refusal =
                        assertThrows(Refusal.class, () -> shop.with(path, Figure.assumed(wild, "from memory")), path);
                String message = refusal.getMessage();
                assertTrue(message.startsWith("workshop " + path + " is "), message);
                assertTrue(message.contains("must lie between"), message);
                assertFalse(message.contains("\n"), message);
            }
        }
    }

    @Test
    void aNumberWithoutAnyBasisIsRefused() {
        assertThrows(Refusal.class, () -> Figure.assumed(1, " "));
        assertThrows(Refusal.class, () -> Figure.measured(1, LocalDate.of(2026, 1, 1), ""));
    }

    @Test
    void aThinningWindowMustRise() {
        Workshop shop = Workshop.assumed();
        assertThrows(
                Refusal.class, () -> shop.with("resist.thinningLeastMinutes", Figure.assumed(31, "common practice")));
    }

    @Test
    void deeperOrStrongerInkPrintsDarkerButNeverPastSaturation() {
        Workshop shop = Workshop.assumed();
        double most = shop.paper().whiteDensity().value()
                + shop.ink().saturationDensity().value();
        double before = 0;
        for (double depth = 1; depth < 120; depth *= 1.5) {
            double density = shop.solidDensity(depth);
            assertTrue(density > before && density <= most, "at " + depth + " µm: " + density);
            before = density;
        }
        assertEquals(shop.paper().whiteDensity().value(), shop.solidDensity(0), 1e-12);
    }
}
