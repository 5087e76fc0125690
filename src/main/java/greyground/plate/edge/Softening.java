package greyground.plate.edge;

import java.util.Arrays;
import java.util.stream.IntStream;

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
        blocks(height).forEach(block -> {
            float[] padded = new float[width + 2 * reach];
            int[] from = new int[2 * reach + 1];
            float[] weights = new float[from.length];
            Arrays.setAll(from, i -> reach + (i % 2 == 0 ? i / 2 : -(i + 1) / 2));
            for (int i = 0; i < from.length; i++) {
                weights[i] = kernel[Math.abs(from[i] - reach)];
            }
            for (int y = block * ROWS; y < Math.min(height, (block + 1) * ROWS); y++) {
                pad(padded, plane, y * width, width, reach, grid.rim());
                sum(between, y * width, padded, from, weights, width);
            }
        });
        float[] spread = new float[plane.length];
        blocks(height).forEach(block -> {
            int[] from = new int[2 * reach + 1];
            float[] weights = new float[from.length];
            for (int i = 0; i < from.length; i++) {
                weights[i] = kernel[Math.abs(i - reach)];
            }
            for (int y = block * ROWS; y < Math.min(height, (block + 1) * ROWS); y++) {
                for (int i = 0; i < from.length; i++) {
                    from[i] = place(y + i - reach, height, grid.rim()) * width;
                }
                sum(spread, y * width, between, from, weights, width);
            }
        });
        return spread;
    }

    /** Blocks of rows, each computed by one thread: their number can't change the result. */
    private static IntStream blocks(int height) {
        return IntStream.range(0, (height + ROWS - 1) / ROWS).parallel();
    }

    private static void pad(float[] padded, float[] plane, int from, int width, int reach, Rim rim) {
        System.arraycopy(plane, from, padded, reach, width);
        for (int k = 1; k <= reach; k++) {
            padded[reach - k] = plane[from + place(-k, width, rim)];
            padded[reach + width - 1 + k] = plane[from + place(width - 1 + k, width, rim)];
        }
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

    /** Adds weighted runs one after the other, four in a turn: the sum is not laid down and taken up again between them. */
    private static void sum(float[] into, int to, float[] plane, int[] from, float[] weights, int count) {
        int i = 0;
        for (; i + 4 <= from.length; i += 4) {
            four(into, to, plane, from, weights, i, count);
        }
        for (; i < from.length; i++) {
            one(into, to, plane, from[i], weights[i], count);
        }
    }

    private static void four(float[] into, int to, float[] plane, int[] from, float[] weights, int i, int count) {
        int a = from[i];
        int b = from[i + 1];
        int c = from[i + 2];
        int d = from[i + 3];
        float ofA = weights[i];
        float ofB = weights[i + 1];
        float ofC = weights[i + 2];
        float ofD = weights[i + 3];
        for (int x = 0; x < count; x++) {
            into[to + x] =
                    into[to + x] + ofA * plane[a + x] + ofB * plane[b + x] + ofC * plane[c + x] + ofD * plane[d + x];
        }
    }

    private static void one(float[] into, int to, float[] plane, int from, float weight, int count) {
        for (int x = 0; x < count; x++) {
            into[to + x] += weight * plane[from + x];
        }
    }
}
