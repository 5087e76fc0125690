package greyground.desk.clock;

import java.util.Locale;
import java.util.function.LongSupplier;

/** A clock that runs down for one step at the bench; it can be stopped and go on. Past its end it counts how far past. */
public class Countdown {
    private static final double NANOS = 1e9;

    private double seconds;
    private final LongSupplier nanoTime;
    private double ran;
    private long since;
    private boolean running;

    /**
     * A clock that stands.
     *
     * @param seconds to run, above 0
     * @param nanoTime as {@link System#nanoTime}
     */
    Countdown(double seconds, LongSupplier nanoTime) {
        this.seconds = seconds;
        this.nanoTime = nanoTime;
    }

    final void start() {
        if (!running) {
            since = nanoTime.getAsLong();
            running = true;
        }
    }

    final void stop() {
        ran = ran();
        running = false;
    }

    /** Stands, or runs, as a clock does that has run so many seconds. */
    final void resume(double seconds, boolean runs) {
        ran = seconds;
        running = false;
        if (runs) {
            start();
        }
    }

    final void reset() {
        ran = 0;
        running = false;
    }

    public final boolean isRunning() {
        return running;
    }

    /** Whether it has been started and not set back. */
    final boolean hasBegun() {
        return running || ran > 0;
    }

    /** Seconds that it has run. */
    final double ran() {
        return running ? ran + (nanoTime.getAsLong() - since) / NANOS : ran;
    }

    /** Seconds left; below 0 once it is over. */
    public final double left() {
        return seconds - ran();
    }

    public final boolean isOver() {
        return left() <= 0;
    }

    /** Seconds that it was set to run. */
    final double seconds() {
        return seconds;
    }

    /** Runs for another time; what has passed of it counts. */
    final void lasts(double otherSeconds) {
        seconds = otherSeconds;
    }

    /** Minutes and seconds left, or how far past: "2:05", "0:00", "+0:07". */
    public final String words() {
        return words(left());
    }

    /** Seconds as minutes and seconds; those below 0 with a plus, as past the end. */
    public static String words(double left) {
        // A second counts until it is wholly gone.
        long whole = (long) Math.ceil(left - 1e-6);
        long size = Math.abs(whole);
        String sign = whole < 0 ? "+" : "";
        return size >= 3600
                ? String.format(Locale.ROOT, "%s%d:%02d:%02d", sign, size / 3600, size / 60 % 60, size % 60)
                : String.format(Locale.ROOT, "%s%d:%02d", sign, size / 60, size % 60);
    }
}
