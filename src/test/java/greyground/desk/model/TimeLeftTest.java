package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class TimeLeftTest {
    private long nanos;

    private void pass(double seconds) {
        nanos += (long) (seconds * 1e9);
    }

    @Test
    void timeLeftIsGuessedFromTimeSpent() {
        TimeLeft left = new TimeLeft(() -> nanos);
        assertEquals("", left.words(0.5), "no guess from no time");
        pass(10);
        assertEquals("about 30 s left", left.words(0.25));
        assertEquals("", left.words(0.01));
        pass(90);
        assertEquals("about 5 min left", left.words(0.25));
        assertEquals("", left.words(1));
    }
}
