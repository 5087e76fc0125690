package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.live.LiveBite;
import greyground.app.live.ToneAt;
import greyground.app.sight.LivePicture;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ComparisonTest {
    private static final LivePicture PICTURE = new LivePicture(1, 1, new int[1]);

    private final Comparison comparison = new Comparison();

    private static Comparison.Seen seen(Station station, double x, double y) {
        return new Comparison.Seen(station, x, y, PICTURE, new ToneAt(62, 0.34, 5, 58), OptionalDouble.of(20), 40);
    }

    private static LiveBite bite(double minutes) {
        return new LiveBite(minutes, 2 * minutes, 0.34, 40, PICTURE);
    }

    @Test
    void nothingIsComparedUntilItIsAskedFor() {
        assertFalse(comparison.freeze(), "there is nothing to hold fast");
        assertTrue(comparison.left(false).isEmpty() && comparison.right(false).isEmpty());
    }

    @Test
    void eachSideSaysItsPlaceItsToneAndItsDepth() {
        comparison.see(seen(Station.COPPER, 30.04, 20));
        assertTrue(comparison.freeze());
        comparison.see(seen(Station.COPPER, 25.4, 50.8));
        assertEquals(
                List.of(
                        "Copper at 30.0, 20.0 mm",
                        "art L* 62 \u2192 film 34 % \u2192 print L* 58",
                        "bite 20 min, 40 \u00b5m deep"),
                comparison.left(false).orElseThrow().lines());
        // 25.4 mm are an inch.
        assertEquals(
                "Copper at 1.000, 2.000 in",
                comparison.right(true).orElseThrow().lines().get(0));
    }

    @Test
    void whatIsHeldOutlivesStationAndPlateButNotTheArtsOwnScale() {
        comparison.see(seen(Station.COPPER, 30, 20));
        comparison.freeze();
        comparison.choose(Station.PRINT);
        comparison.plateChanged();
        assertEquals("Frozen", comparison.left(false).orElseThrow().title());
        assertEquals(
                List.of("being computed"), comparison.right(false).orElseThrow().lines());
        comparison.choose(Station.ART);
        assertEquals(Optional.empty(), comparison.left(false));
    }

    @Test
    void bitesBelongToOnePlaceAndOnePlate() {
        comparison.see(seen(Station.PRINT, 30, 20));
        comparison.compareBites(30);
        comparison.bitten(List.of(bite(20), bite(30)));
        assertEquals(
                "bite 30 min, 60 \u00b5m deep",
                comparison.right(false).orElseThrow().lines().get(0));
        comparison.see(seen(Station.PRINT, 30, 20));
        assertSame(PICTURE, comparison.right(false).orElseThrow().picture().orElseThrow());
        comparison.see(seen(Station.PRINT, 31, 20));
        assertTrue(comparison.right(false).orElseThrow().picture().isEmpty(), "another place");
        comparison.bitten(List.of(bite(20), bite(30)));
        comparison.plateChanged();
        assertTrue(comparison.right(false).orElseThrow().picture().isEmpty(), "another plate");
    }

    @Test
    void anotherBiteIsHalfAsLongAgainUntilItIsTypedAndKeepsToItsRange() {
        assertEquals(OptionalDouble.empty(), comparison.otherMinutes(OptionalDouble.empty()));
        assertEquals(30, comparison.otherMinutes(OptionalDouble.of(20)).orElseThrow());
        comparison.compareBites(12);
        assertEquals(12, comparison.otherMinutes(OptionalDouble.of(20)).orElseThrow());
        assertThrows(Refusal.class, () -> comparison.compareBites(0));
        assertThrows(Refusal.class, () -> comparison.compareBites(1001));
        assertEquals(12, comparison.otherMinutes(OptionalDouble.of(20)).orElseThrow());
    }
}
