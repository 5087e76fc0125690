package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import greyground.quantity.Refusal;
import org.junit.jupiter.api.Test;

class StraightLinesTest {
    private static final StraightLines LINES = new StraightLines(new double[] {0, 1, 3}, new double[] {10, 20, 0});

    /** By hand. */
    @Test
    void meetsItsPointsAndRunsStraightBetween() {
        assertEquals(10, LINES.value(0));
        assertEquals(20, LINES.value(1));
        assertEquals(0, LINES.value(3));
        assertEquals(12.5, LINES.value(0.25), 1e-12);
        assertEquals(15, LINES.value(1.5), 1e-12);
    }

    @Test
    void staysAsItIsPastItsEnds() {
        assertEquals(10, LINES.value(-5));
        assertEquals(0, LINES.value(7));
    }

    @Test
    void refusesPlacesThatDoNotRise() {
        assertThrows(Refusal.class, () -> new StraightLines(new double[] {0, 0}, new double[] {1, 2}));
        assertThrows(Refusal.class, () -> new StraightLines(new double[] {}, new double[] {}));
        assertThrows(Refusal.class, () -> new StraightLines(new double[] {0, 1}, new double[] {1}));
    }
}
