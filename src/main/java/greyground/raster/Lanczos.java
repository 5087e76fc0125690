package greyground.raster;

/**
 * The three-lobed windowed sinc: {@code sinc(x) sinc(x/3)} for {@code |x| < 3}, else 0, with {@code sinc(x) = sin(πx)/(πx)}.
 *
 * <p>Source: Duchon C.E. 1979, "Lanczos filtering in one and two dimensions", J. Appl. Meteorol. 18, 1016-1022 (from memory,
 * unverified); the tests hold it against an independent imaging library.
 */
final class Lanczos {
    /** Source pixels reached on either side, before any widening for reduction. */
    static final int LOBES = 3;

    private Lanczos() {}

    /** The weight at distance {@code x}, in source pixels. */
    static double weight(double x) {
        if (x == 0) {
            return 1;
        }
        if (Math.abs(x) >= LOBES) {
            return 0;
        }
        double angle = Math.PI * x;
        return LOBES * StrictMath.sin(angle) * StrictMath.sin(angle / LOBES) / (angle * angle);
    }
}
