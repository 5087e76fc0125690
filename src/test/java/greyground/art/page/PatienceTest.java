package greyground.art.page;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** A decoder that is kept from the processor is waited for longer than one that works without end. */
class PatienceTest {
    @Test
    void whoeverOnlyWaitsIsNotCalledSlowAtOnce() throws InterruptedException {
        Patience patience = new Patience(1);
        Thread.sleep(1_200);
        assertFalse(patience.over());
        Thread.sleep(3_000);
        assertTrue(patience.over());
    }

    @Test
    void whoeverWorksIsSlowOnceTheTimeIsUp() {
        Patience patience = new Patience(1);
        long least = System.nanoTime() + 1_000_000_000L;
        double sum = 0;
        while (!patience.over()) {
            sum += Math.sin(sum + 1);
        }
        assertTrue(System.nanoTime() >= least && sum != 0);
    }
}
