package greyground.grain;

/**
 * Enlarges a grain to a finer film: edges become smooth, and each dot and land is born at the least size that the
 * finer film allows.
 */
final class FineGrain {
    private FineGrain() {}

    /**
     * Enlarges.
     *
     * @param coarse the coverage at which each pixel of the grid turns black, row by row, 0 to 1
     * @param times whole enlargement in both directions, at least 2
     */
    static float[] enlarged(GrainSites sites, float[] coarse, int times, LeastDot least, long seed) {
        int from = (int) sites.side;
        int side = from * times;
        float[] fine = new float[side * side];
        int[] near = new int[times];
        float[] share = new float[times];
        for (int i = 0; i < times; i++) {
            double at = (i + 0.5) / times - 0.5;
            near[i] = at < 0 ? -1 : 0;
            share[i] = (float) (at - near[i]);
        }
        for (int y = 0; y < side; y++) {
            int above = Math.floorMod(y / times + near[y % times], from) * from;
            int below = (above + from) % (from * from);
            float down = share[y % times];
            for (int column = 0; column < from; column++) {
                for (int i = 0; i < times; i++) {
                    int left = column + near[i] < 0 ? from - 1 : column + near[i];
                    int right = left + 1 == from ? 0 : left + 1;
                    float upper = coarse[above + left] + share[i] * (coarse[above + right] - coarse[above + left]);
                    float lower = coarse[below + left] + share[i] * (coarse[below + right] - coarse[below + left]);
                    fine[y * side + column * times + i] = upper + down * (lower - upper);
                }
            }
        }
        for (int s = 0; s < 2 * sites.count; s++) {
            boolean dot = s < sites.count;
            int row = (int) sites.y[s];
            int home = row * from + (int) sites.x[s];
            float birth = coarse[home];
            for (int pixel : least.at(sites.x[s] * times, sites.y[s] * times, side, seed, s)) {
                fine[pixel] = dot ? Math.min(fine[pixel], birth) : Math.max(fine[pixel], birth);
            }
        }
        return fine;
    }
}
