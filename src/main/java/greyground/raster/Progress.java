package greyground.raster;

/** Watches long work. Called from the one loop that hands on finished bands, never from a worker. */
@FunctionalInterface
public interface Progress {
    /** Nobody is watching. */
    Progress NONE = fraction -> {};

    /**
     * Hears how much is done. An implementation that wants the work stopped throws
     * {@link java.util.concurrent.CancellationException}, which travels up through the work unharmed.
     *
     * @param fraction 0 to 1, never falling
     */
    void done(double fraction);

    /** The watcher of part {@code index} of {@code count} like parts. */
    default Progress share(int index, int count) {
        return part((double) index / count, (index + 1.0) / count);
    }

    /** The watcher of one part of this work: the part's 0..1 becomes {@code from..to} of the whole. */
    default Progress part(double from, double to) {
        return fraction -> done(from + (to - from) * fraction);
    }
}
