package greyground.plate.edge;

import java.util.Arrays;

/**
 * Where the edge that light draws on the resist runs between two pixels: where the dose crosses a threshold, found by interpolating not
 * the dose but the place on a blurred edge that it tells.
 *
 * <p>Safe for many threads: what two of them find out at once is the same.
 */
public final class DoseEdge {
    /** No light draws any edge: all run midway between two pixels. */
    static final DoseEdge NONE = new DoseEdge(new float[0], 1);

    private final float[] dose;
    private final double threshold;
    private final double least;
    private final double span;
    private final double edgeDeviations;
    /** What each pixel's dose tells, NaN where nobody has asked: a pixel at an edge is asked about some ten times. */
    private final double[] known;

    /**
     * The edge of a plane.
     *
     * @param dose of each pixel, above 0
     * @param threshold of the dose that sets the edge
     */
    public DoseEdge(float[] dose, double threshold) {
        this.dose = dose;
        this.threshold = threshold;
        float low = Float.POSITIVE_INFINITY;
        float high = 0;
        for (float one : dose) {
            low = Math.min(low, one);
            high = Math.max(high, one);
        }
        this.least = low;
        this.span = high - low;
        this.edgeDeviations = deviations(threshold);
        this.known = new double[dose.length];
        Arrays.fill(known, Double.NaN);
    }

    /** Whether a place has the threshold's dose or more. */
    public boolean reached(int place) {
        return dose[place] >= threshold;
    }

    /**
     * How far from the edge of the film a place lies, in standard deviations of the blur, if the edge is a straight one between
     * the greatest and the least dose there are: the share of dose taken through the inverse of the normal distribution.
     */
    private double deviations(double oneDose) {
        double share = span > 0 ? (oneDose - least) / span : 0.5;
        return Normal.deviations(Math.max(1e-6, Math.min(1 - 1e-6, share)));
    }

    private double deviations(int place) {
        double found = known[place];
        if (Double.isNaN(found)) {
            found = deviations(dose[place]);
            known[place] = found;
        }
        return found;
    }

    /** Share of the way from one pixel to the next at which the edge lies; kept off the centres, where a site stands. */
    double crossing(int here, int there) {
        double share = 0.5;
        if (this != NONE && reached(here) != reached(there)) {
            double from = deviations(here) - edgeDeviations;
            share = from / (from - (deviations(there) - edgeDeviations));
        }
        return Math.max(1e-6, Math.min(1 - 1e-6, share));
    }
}
