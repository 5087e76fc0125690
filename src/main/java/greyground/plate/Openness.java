package greyground.plate;

/**
 * Removes whatever is narrower than a width: a morphological opening by a disc, as two distance transforms. What remains
 * is every place that a disc of that width covers without leaving the set.
 */
final class Openness {
    private Openness() {}

    /**
     * Turns narrow parts of a set over to its complement.
     *
     * @param mask the pixels; changed in place
     * @param marked which mark the set bears
     * @param widthMicrometres least width that stays; below one pixel nothing changes
     */
    static void shutNarrow(boolean[] mask, boolean marked, double widthMicrometres, Grid grid) {
        double width = widthMicrometres / grid.pitchMicrometres();
        if (width <= 1) {
            return;
        }
        float[] inside = Distance.squaredPixels(mask, !marked, grid);
        boolean[] core = core(inside, width / 2);
        float[] away = Distance.squaredPixels(core, true, grid);
        // The farthest pixel centre that the disc still covers lies half a pixel inside the edge.
        double reach = width / 2 + 0.5;
        for (int i = 0; i < mask.length; i++) {
            if (mask[i] == marked && away[i] > reach * reach) {
                mask[i] = !marked;
            }
        }
    }

    /**
     * Pixels where a disc of the radius fits. On a line n pixels wide the middle pixel lies n/2 or (n+1)/2 from the next
     * outside centre as n is even or odd; a quarter pixel between them errs by half a pixel of width either way.
     */
    static boolean[] core(float[] squaredInside, double radiusPixels) {
        double least = (radiusPixels + 0.25) * (radiusPixels + 0.25);
        boolean[] core = new boolean[squaredInside.length];
        for (int i = 0; i < core.length; i++) {
            core[i] = squaredInside[i] >= least;
        }
        return core;
    }
}
