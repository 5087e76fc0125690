package greyground.art.page;

import java.time.Duration;

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
    private final long clock = System.nanoTime();
    private final long processor = processor();

    public Patience(long seconds) {
        this.limitNanos = Duration.ofSeconds(seconds).toNanos();
    }

    /** Whether it has come to its end. */
    public boolean over() {
        long passed = System.nanoTime() - clock;
        return passed > limitNanos && (passed > CLOCK * limitNanos || processor() - processor > limitNanos);
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
