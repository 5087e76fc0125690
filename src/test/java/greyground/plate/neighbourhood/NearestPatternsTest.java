package greyground.plate.neighbourhood;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Of known patterns, the one most like another. */
class NearestPatternsTest {
    private static final Neighbourhood DISC = new Neighbourhood(16);

    /** The first bit is the topmost pixel, four from the middle; below it lies the left end of the row three above, sqrt(13) or less away. */
    private static final long TOP = 1L << DISC.bits() - 1;

    private static final long NEARER = 1L << DISC.bits() - 3;

    @Test
    void fartherPixelsMatterLess() {
        assertTrue(DISC.apart(0, TOP) < DISC.apart(0, NEARER), DISC.apart(0, TOP) + ", " + DISC.apart(0, NEARER));
        assertEquals(0, DISC.innerOf(TOP | NEARER));
        NearestPatterns known = new NearestPatterns(DISC, new long[] {NEARER, TOP}, new int[] {7, 8});
        assertEquals(8, known.to(0));
        assertEquals(7, known.to(NEARER));
    }

    @Test
    void theMiddleMustBeTheSame() {
        long middle = 1L << DISC.bits() / 2;
        NearestPatterns known = new NearestPatterns(DISC, new long[] {TOP, TOP | NEARER}, new int[] {1, 2});
        assertEquals(-1, known.to(middle));
        assertEquals(-1, new NearestPatterns(DISC, new long[0], new int[0]).to(middle));
    }

    @Test
    void turnsAreAsFarApart() {
        long one = 0x0123_4567_89ABL;
        long other = one ^ TOP ^ NEARER;
        for (int turn = 0; turn < Neighbourhood.SYMMETRIES; turn++) {
            assertEquals(DISC.apart(one, other), DISC.apart(DISC.turned(one, turn), DISC.turned(other, turn)));
        }
    }
}
