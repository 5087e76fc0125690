package greyground.desk.model;

import java.util.function.LongSupplier;

/** Guesses how long work still takes from how long it took so far. */
public final class TimeLeft {
    private static final double NANOS = 1e9;

    /** Earlier guesses are worth nothing. */
    private static final double LEAST_DONE = 0.04;

    private static final double LEAST_SECONDS = 0.5;

    private final LongSupplier nanoTime;
    private final long started;

    public TimeLeft(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
        this.started = nanoTime.getAsLong();
    }

    /**
     * In words; empty while nothing can be said.
     *
     * @param done 0 to 1
     */
    public String words(double done) {
        double spent = (nanoTime.getAsLong() - started) / NANOS;
        if (done < LEAST_DONE || spent < LEAST_SECONDS || done >= 1) {
            return "";
        }
        long seconds = (long) Math.ceil(spent * (1 - done) / done);
        return seconds < 60 ? "about " + seconds + " s left" : "about " + (seconds + 59) / 60 + " min left";
    }
}
