package greyground.plan;

/** Whether a film has the size that it should have. */
public final class TrueSize {
    /** A film whose 100 mm ruler is out by more than this is printed again: 0.2 mm in 100 (common practice). */
    public static final double RULER_TOLERANCE = 0.002;

    private TrueSize() {}

    /** Whether a scale, measured over meant, lies within the tolerance of a ruler. */
    public static boolean isTrue(double scale) {
        // A ruler read at the very limit must not fail on the last bit of a division.
        return Math.abs(scale - 1) <= RULER_TOLERANCE + 1e-9;
    }
}
