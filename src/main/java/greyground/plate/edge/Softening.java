package greyground.plate.edge;

import java.util.Arrays;

/**
 * Spreads a plane by a round Gaussian, as rows and then columns. Each pixel is taken as uniform over its square, so the kernel
 * is the Gaussian's share of each pixel, out to four standard deviations and scaled to sum to one; a uniform plane and, on a
 * wrapped grid, the total are kept.
 */
public final class Softening {
    private static final int ROWS = 32;

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
        grid.strips(height, ROWS).forEach(block -> {
            float[] padded = new float[width + 2 * reach];
            float[] sum = new float[width];
            float[] run = new float[width];
            for (int y = block * ROWS; y < Math.min(height, (block + 1) * ROWS); y++) {
                pad(padded, plane, y * width, width, reach, grid.rim());
                Arrays.fill(sum, 0);
                add(sum, run, padded, reach, kernel[0]);
                for (int k = 1; k <= reach; k++) {
                    add(sum, run, padded, reach - k, kernel[k]);
                    add(sum, run, padded, reach + k, kernel[k]);
                }
                System.arraycopy(sum, 0, between, y * width, width);
            }
        });
        float[] spread = new float[plane.length];
        grid.strips(height, ROWS).forEach(block -> {
            float[] sum = new float[width];
            float[] run = new float[width];
            for (int y = block * ROWS; y < Math.min(height, (block + 1) * ROWS); y++) {
                Arrays.fill(sum, 0);
                for (int k = -reach; k <= reach; k++) {
                    add(sum, run, between, grid.rim().place(y + k, height) * width, kernel[Math.abs(k)]);
                }
                System.arraycopy(sum, 0, spread, y * width, width);
            }
        });
        return spread;
    }

    /** Pixels on each side of a place that have a share in what {@link #gaussian} makes of it. */
    public static int reach(Grid grid, double sigmaMicrometres) {
        return reach(sigmaMicrometres / grid.pitchMicrometres());
    }

    private static int reach(double sigma) {
        return (int) Math.ceil(4 * sigma);
    }

    private static void pad(float[] padded, float[] plane, int from, int width, int reach, Rim rim) {
        System.arraycopy(plane, from, padded, reach, width);
        for (int k = 1; k <= reach; k++) {
            padded[reach - k] = plane[from + rim.place(-k, width)];
            padded[reach + width - 1 + k] = plane[from + rim.place(width - 1 + k, width)];
        }
    }

    /** The half kernel, centre first. */
    private static float[] kernel(double sigma) {
        float[] half = new float[reach(sigma) + 1];
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

    /** Adds a weighted run; copied into {@code run} first, since only arrays of one index are computed eight places at a time. */
    private static void add(float[] sum, float[] run, float[] plane, int from, float weight) {
        System.arraycopy(plane, from, run, 0, run.length);
        for (int x = 0; x < sum.length; x++) {
            sum[x] += weight * run[x];
        }
    }
}
