package greyground.desk.clock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class CountdownTest {
    private long nanos;

    private void pass(double seconds) {
        nanos += (long) (seconds * 1e9);
    }

    @Test
    void aCountdownStopsAndGoesOnAndTellsHowFarPast() {
        Countdown countdown = new Countdown(125, () -> nanos);
        assertEquals("2:05", countdown.words());
        pass(10);
        assertEquals("2:05", countdown.words(), "it stands until it is started");
        countdown.start();
        pass(0.4);
        assertEquals("2:05", countdown.words(), "a second counts until it is gone");
        pass(4.6);
        assertEquals("2:00", countdown.words());
        countdown.stop();
        pass(100);
        assertEquals("2:00", countdown.words());
        assertTrue(countdown.hasBegun() && !countdown.isRunning());
        countdown.start();
        pass(120);
        assertTrue(countdown.isOver());
        assertEquals("0:00", countdown.words());
        pass(7);
        assertEquals("+0:07", countdown.words());
        countdown.reset();
        assertEquals("2:05", countdown.words());
        assertFalse(countdown.hasBegun());
    }

    @Test
    void hoursAreToldAsHours() {
        assertEquals("1:30:00", new Countdown(5400, () -> nanos).words());
    }
}
