package greyground.art.page;

import java.time.Duration;
import java.util.function.LongSupplier;

/**
 * How long a decoder may be waited for, counted in processor time of this program: on a machine that is busy with others the clock alone would
 * call sound files slow.
 */
public final class Patience {
    /** How often to ask whether it has come to its end (assumed). */
    public static final long SLICE_MILLISECONDS = 200;
    /** How much longer by the clock, should the decoder wait for a disk instead of working (assumed). */
    private static final int CLOCK = 4;

    private final long limitNanos;
    private final LongSupplier clock;
    private final LongSupplier processor;
    private final long clockStart;
    private final long processorStart;

    public Patience(long seconds) {
        this(seconds, System::nanoTime, Patience::processor);
    }

    /** With clocks of one's own, in nanoseconds. */
    Patience(long seconds, LongSupplier clock, LongSupplier processor) {
        this.limitNanos = Duration.ofSeconds(seconds).toNanos();
        this.clock = clock;
        this.processor = processor;
        this.clockStart = clock.getAsLong();
        this.processorStart = processor.getAsLong();
    }

    /** Whether it has come to its end. */
    public boolean over() {
        long passed = clock.getAsLong() - clockStart;
        return passed > limitNanos
                && (passed > CLOCK * limitNanos || processor.getAsLong() - processorStart > limitNanos);
    }

    /** The clock's where the system doesn't tell. */
    private static long processor() {
        return ProcessHandle.current()
                .info()
                .totalCpuDuration()
                .map(Duration::toNanos)
                .orElseGet(System::nanoTime);
    }
}
