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
     * @param inside distance of each place from the complement's edge, in micrometres
     * @param widthMicrometres least width that stays; below one pixel nothing changes
     */
    static void shutNarrow(boolean[] mask, boolean marked, float[] inside, double widthMicrometres, Grid grid) {
        double radius = widthMicrometres / 2;
        double pitch = grid.pitchMicrometres();
        if (widthMicrometres <= pitch) {
            return;
        }
        // The ridge of a line passes up to half a pixel beside the nearest centre: a quarter on average.
        double least = radius - 0.25 * pitch;
        boolean[] core = new boolean[mask.length];
        for (int i = 0; i < core.length; i++) {
            core[i] = mask[i] == marked && inside[i] >= least;
        }
        float[] away = Distance.squaredPixels(core, true, grid);
        // A whole pixel more than the disc, so that it never shaves a wide part's edge, which runs between pixels and
        // would be
        // moved to midway between them; a spur keeps up to a pixel too much.
        double reach = radius / pitch + 1;
        for (int i = 0; i < mask.length; i++) {
            if (mask[i] == marked && away[i] > reach * reach) {
                mask[i] = !marked;
            }
        }
    }
}
