package greyground.plate.edge;

import java.util.Arrays;

/**
 * Spreads a plane by a round Gaussian, as rows and then columns. Each pixel is taken as uniform over its square, so the kernel
 * is the Gaussian's share of each pixel, out to four standard deviations and scaled to sum to one; a uniform plane and, on a
 * wrapped grid, the total are kept.
 */
public final class Softening {
    private Softening() {}

    /**
     * Returns the spread plane; the given one is not changed.
     *
     * @param sigmaMicrometres standard deviation along each axis; below a twentieth of a pixel nothing is spread
     */
    public static float[] gaussian(float[] plane, Grid grid, double sigmaMicrometres) {
        double sigma = sigmaMicrometres / grid.pitchMicrometres();
        if (sigma < 0.05) {
            return plane.clone();
        }
        float[] kernel = kernel(sigma);
        int width = grid.width();
        int height = grid.height();
        int reach = kernel.length - 1;
        float[] between = new float[plane.length];
        float[] padded = new float[width + 2 * reach];
        for (int y = 0; y < height; y++) {
            int from = y * width;
            System.arraycopy(plane, from, padded, reach, width);
            for (int k = 1; k <= reach; k++) {
                padded[reach - k] = plane[from + place(-k, width, grid.rim())];
                padded[reach + width - 1 + k] = plane[from + place(width - 1 + k, width, grid.rim())];
            }
            for (int k = 0; k <= reach; k++) {
                add(between, from, padded, reach - k, width, kernel[k]);
                if (k > 0) {
                    add(between, from, padded, reach + k, width, kernel[k]);
                }
            }
        }
        float[] spread = new float[plane.length];
        for (int y = 0; y < height; y++) {
            for (int k = -reach; k <= reach; k++) {
                int from = place(y + k, height, grid.rim()) * width;
                add(spread, y * width, between, from, width, kernel[Math.abs(k)]);
            }
        }
        return spread;
    }

    /** The half kernel, centre first. */
    private static float[] kernel(double sigma) {
        float[] half = new float[(int) Math.ceil(4 * sigma) + 1];
        double[] exact = new double[half.length];
        Arrays.setAll(exact, k -> Normal.below((k + 0.5) / sigma) - Normal.below((k - 0.5) / sigma));
        double sum = -exact[0];
        for (double weight : exact) {
            sum += 2 * weight;
        }
        for (int k = 0; k < half.length; k++) {
            half[k] = (float) (exact[k] / sum);
        }
        return half;
    }

    private static int place(int at, int size, Rim rim) {
        return rim == Rim.WRAPPED ? Math.floorMod(at, size) : Math.max(0, Math.min(size - 1, at));
    }

    private static void add(float[] into, int to, float[] from, int start, int count, float weight) {
        for (int i = 0; i < count; i++) {
            into[to + i] += weight * from[start + i];
        }
    }
}
