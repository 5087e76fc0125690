package greyground.raster;

import greyground.quantity.Refusal;
import java.util.Arrays;

/**
 * How the pixels of one film direction are made from the pixels of one art direction: for each film pixel, which art pixels
 * and how much of each.
 *
 * <p>Film pixel {@code i} has its centre at art place {@code edge + (i + 0.5) * scale}, where art pixel {@code j} spans
 * {@code j..j+1}. When the art is reduced ({@code scale > 1}) the kernel widens by {@code scale}, so that fine detail
 * averages instead of aliasing. Kernel parts past the art's edge are left out and the rest made to sum to 1; past the edge the
 * art goes on as its own mirror image.
 *
 * <p>Immutable; any number of threads may read it. Its arrays never leave the package.
 */
public final class ResampleAxis {
    /** Fixed-point weights count 1/8192: see {@link EnlargedRows} for why no finer. */
    static final int FIXED_BITS = 13;

    /** Across, weights count 1/32768: 32 768 greys times the absolute sum 1.543 of the weights stays below 2^31. */
    static final int FINE_BITS = 15;

    /** Art pixels that the kernel reaches on either side, before any widening for reduction. */
    private static final int LOBES = 3;

    /** How far past the art's edge a centre still counts as on it, in film pixels: rounding leaves it there, bleed goes half a pixel past. */
    private static final double ON_EDGE = 0.25;

    private final double scale;
    private final int taps;
    private final int[] first;
    private final int[] nearest;
    private final float[] weights;
    private final int[] fine;

    private ResampleAxis(double scale, int taps, int[] first, int[] nearest, float[] weights) {
        this.scale = scale;
        this.taps = taps;
        this.first = first;
        this.nearest = nearest;
        this.weights = weights;
        this.fine = new int[weights.length];
        for (int i = 0; i < first.length; i++) {
            round(i, FINE_BITS, fine, i * taps);
        }
    }

    /**
     * Plans one direction.
     *
     * @param count film pixels, at least 1
     * @param edge art place of the first film pixel's outer edge, in art pixels
     * @param scale art pixels per film pixel, above 0; below 1 enlarges
     * @param artLength art pixels in this direction, at least 1
     */
    public static ResampleAxis of(int count, double edge, double scale, int artLength) {
        if (count < 1 || artLength < 1 || !(scale > 0) || scale > 4096 || !Double.isFinite(edge)) {
            throw Refusal.use("the art is to be drawn on " + count + " film pixels at " + Refusal.plain(scale)
                    + " art pixels each; it must be at least 1 film pixel and at most 4096 art pixels each:"
                    + " choose a larger crop-to-plate scale or a finer film");
        }
        double widening = Math.max(1, scale);
        double reach = LOBES * widening;
        int taps = (int) Math.min(artLength, Math.ceil(2 * reach));
        int[] first = new int[count];
        int[] nearest = new int[count];
        float[] weights = new float[Math.multiplyExact(count, taps)];
        double[] exact = new double[taps];
        for (int i = 0; i < count; i++) {
            double centre = mirrored(edge + (i + 0.5) * scale, ON_EDGE * scale, artLength);
            nearest[i] = (int) Math.max(0, Math.min(artLength - 1, Math.floor(centre)));
            if (centre < 0 || centre > artLength) {
                int edgePixel = centre < 0 ? 0 : artLength - 1;
                first[i] = Math.min(edgePixel, artLength - taps);
                weights[i * taps + edgePixel - first[i]] = 1;
                continue;
            }
            int from = (int) Math.floor(centre - reach - 0.5) + 1;
            from = Math.max(0, Math.min(from, artLength - taps));
            double sum = 0;
            for (int k = 0; k < taps; k++) {
                exact[k] = lanczos((from + k + 0.5 - centre) / widening);
                sum += exact[k];
            }
            first[i] = from;
            for (int k = 0; k < taps; k++) {
                weights[i * taps + k] = (float) (exact[k] / sum);
            }
        }
        return new ResampleAxis(scale, taps, first, nearest, weights);
    }

    /** A place beyond the art's edge by more than {@code slack}, as far within it; several art lengths away, turned back again and again. */
    private static double mirrored(double place, double slack, int length) {
        if (place >= -slack && place <= length + slack) {
            return place;
        }
        double within = place - 2.0 * length * Math.floor(place / (2.0 * length));
        return within <= length ? within : 2.0 * length - within;
    }

    /**
     * The three-lobed windowed sinc: {@code sinc(x) sinc(x/3)} for {@code |x| < 3}, else 0, with {@code sinc(x) = sin(πx)/(πx)}.
     *
     * <p>Source: Duchon C.E. 1979, "Lanczos filtering in one and two dimensions", J. Appl. Meteorol. 18, 1016-1022 (from memory,
     * unverified); the tests hold it against an independent imaging library.
     *
     * @param x distance in art pixels
     */
    private static double lanczos(double x) {
        if (x == 0) {
            return 1;
        }
        if (Math.abs(x) >= LOBES) {
            return 0;
        }
        double angle = Math.PI * x;
        return LOBES * StrictMath.sin(angle) * StrictMath.sin(angle / LOBES) / (angle * angle);
    }

    /** The same plan read from its other end: the film is mirrored, or turned by half. Sums are equal bit for bit. */
    public ResampleAxis reversed() {
        int count = first.length;
        int[] turnedFirst = new int[count];
        int[] turnedNearest = new int[count];
        float[] turnedWeights = new float[weights.length];
        for (int i = 0; i < count; i++) {
            turnedFirst[i] = first[count - 1 - i];
            turnedNearest[i] = nearest[count - 1 - i];
            System.arraycopy(weights, (count - 1 - i) * taps, turnedWeights, i * taps, taps);
        }
        return new ResampleAxis(scale, taps, turnedFirst, turnedNearest, turnedWeights);
    }

    /** The same plan for film pixels {@code from..from + count - 1} alone; their sums are equal bit for bit. */
    public ResampleAxis part(int from, int count) {
        return new ResampleAxis(
                scale,
                taps,
                Arrays.copyOfRange(first, from, from + count),
                Arrays.copyOfRange(nearest, from, from + count),
                Arrays.copyOfRange(weights, from * taps, (from + count) * taps));
    }

    public int count() {
        return first.length;
    }

    /** Art pixels per film pixel, above 0; below 1 where the art is enlarged. */
    public double scale() {
        return scale;
    }

    /** The art pixel on which the middle of a film pixel lies. */
    public int nearest(int filmPixel) {
        return nearest[filmPixel];
    }

    /** Art pixels that each film pixel is made from. */
    public int taps() {
        return taps;
    }

    /** First art pixel of each film pixel. */
    int[] firsts() {
        return first;
    }

    /** All weights in 1/32768, film pixel after film pixel. */
    int[] fineWeights() {
        return fine;
    }

    /** Writes film pixel {@code i}'s weights in 1/8192 into {@code into}. */
    void fixedWeights(int i, int[] into) {
        round(i, FIXED_BITS, into, 0);
    }

    /**
     * Rounds film pixel {@code i}'s weights. They sum to exactly 1, because the running sum is rounded and not each weight: a
     * uniform tone stays exact and slow gradients gain no steps.
     */
    private void round(int i, int fractionBits, int[] into, int at) {
        int one = 1 << fractionBits;
        double running = 0;
        int written = 0;
        for (int k = 0; k < taps; k++) {
            running += weights[i * taps + k];
            int upTo = k == taps - 1 ? one : (int) Math.rint(running * one);
            into[at + k] = upTo - written;
            written = upTo;
        }
    }
}
