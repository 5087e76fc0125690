package greyground.plate.edge;

/**
 * The exact Euclidean distance from each pixel to a set, as the lower envelope of unit parabolas that stand on the set
 * (Felzenszwalb and Huttenlocher 2012, section 3).
 */
public final class Distance {
    private Distance() {}

    /**
     * Squared distances between pixel centres, in pixels: whole numbers, exact to 2^24 (4096 pixels away), beyond that
     * within one part in 10^7.
     *
     * @param set marks the pixels of the set
     * @param marked the mark that counts, so that the complement needs no copy
     * @return 0 in the set; positive infinity everywhere if the set is empty
     */
    public static float[] squaredPixels(boolean[] set, boolean marked, Grid grid) {
        grid.check("a set of pixels", set.length);
        float[] plane = new float[set.length];
        for (int i = 0; i < plane.length; i++) {
            plane[i] = set[i] == marked ? 0 : Float.POSITIVE_INFINITY;
        }
        ParabolicEnvelope.lower(plane, grid, 1);
        return plane;
    }

    /**
     * Distances to the set's edge, in micrometres. The edge runs midway between a pixel of the set and its neighbour, and
     * is met by rows and columns as {@link EdgeDistance} does.
     *
     * @return 0 in the set
     */
    public static float[] micrometres(boolean[] set, boolean marked, Grid grid) {
        return EdgeDistance.micrometres(set, marked, DoseEdge.NONE, grid);
    }

    /** The same where only small distances matter; those beyond {@code mostMicrometres} may be positive infinity. */
    public static float[] micrometres(boolean[] set, boolean marked, Grid grid, double mostMicrometres) {
        return EdgeDistance.micrometres(set, marked, DoseEdge.NONE, grid, mostMicrometres);
    }
}
