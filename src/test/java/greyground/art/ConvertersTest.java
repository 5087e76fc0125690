package greyground.art;

import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class ConvertersTest {
    private static final Duration LONGEST = Duration.ofSeconds(10);

    @Test
    void whatFailsInTheWorkIsHeardByWhoeverWaits() throws Exception {
        OutOfMemoryError full = new OutOfMemoryError("test");
        try (Converters converters = new Converters(2)) {
            Object place = converters.take(Object::new);
            converters.convert(place, () -> {
                throw full;
            });
            assertTimeoutPreemptively(
                    LONGEST, () -> assertSame(full, assertThrows(OutOfMemoryError.class, converters::join)));
        }
    }

    /** A place that no worker can free, as one that dies between two works leaves it, is not waited for. */
    @Test
    void aWorkerThatDiesIsHeardByWhoeverWaits() throws Exception {
        try (Converters converters = new Converters(1)) {
            converters.take(Object::new);
            converters.convert(null, () -> {});
            assertTimeoutPreemptively(LONGEST, () -> assertThrows(NullPointerException.class, converters::join));
        }
    }
}
