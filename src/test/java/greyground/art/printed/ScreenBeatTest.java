package greyground.art.printed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** By hand: the difference of two waves as vectors, in periods a millimetre, turned over. */
class ScreenBeatTest {
    @Test
    void rulingsThatDifferBandByTheirDifference() {
        assertEquals(1 / (5.4 - 5.0), ScreenBeat.millimetres(54, 45, 50, 45), 1e-9);
        // Enlarged 1.1 times the print's 54 lines/cm become 49.09, and 0.0909 periods/mm are left.
        assertEquals(11, ScreenBeat.millimetres(54 / 1.1, 45, 50, 45), 1e-9);
    }

    @Test
    void anglesThatDifferBandByTheChordBetweenThem() {
        assertEquals(1 / (2 * 6 * Math.sin(Math.toRadians(1.5))), ScreenBeat.millimetres(60, 45, 60, 48), 1e-9);
        // A quarter turn of a square screen is the screen itself.
        assertEquals(ScreenBeat.millimetres(60, 45, 60, 48), ScreenBeat.millimetres(60, 135, 60, 48), 1e-9);
    }

    @Test
    void thirtyDegreesApartShowNoBandsToSpeakOf() {
        assertTrue(ScreenBeat.millimetres(60, 15, 50, 45) < 1);
        assertTrue(Double.isInfinite(ScreenBeat.millimetres(50, 30, 50, 30)));
    }
}
