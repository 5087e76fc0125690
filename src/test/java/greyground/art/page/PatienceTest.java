package greyground.art.page;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** A decoder that is kept from the processor is waited for longer than one that works without end. */
class PatienceTest {
    private static final long SECOND = 1_000_000_000L;

    private long clock = 17 * SECOND;
    private long processor = 5 * SECOND;
    private final Patience patience = new Patience(30, () -> clock, () -> processor);

    private void pass(double clockSeconds, double processorSeconds) {
        clock += Math.round(clockSeconds * SECOND);
        processor += Math.round(processorSeconds * SECOND);
    }

    @Test
    void whoeverOnlyWaitsIsWaitedForFourTimesAsLong() {
        pass(31, 1);
        assertFalse(patience.over());
        pass(88, 1);
        assertFalse(patience.over());
        pass(2, 0);
        assertTrue(patience.over());
    }

    @Test
    void whoeverWorksIsSlowOnceTheTimeIsUp() {
        pass(29, 29);
        assertFalse(patience.over());
        pass(2, 2);
        assertTrue(patience.over());
    }

    @Test
    void severalProcessorsDoNotMakeTheTimeShorter() {
        pass(20, 40);
        assertFalse(patience.over());
    }

    @Test
    void theSystemsOwnClocksRun() {
        Patience none = new Patience(0);
        while (!none.over()) {
            Thread.onSpinWait();
        }
        assertTrue(none.over());
    }
}
