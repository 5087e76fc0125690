package greyground.scan;

import greyground.quantity.Refusal;
import greyground.raster.Bands;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.io.IOException;
import java.util.Arrays;

/**
 * A scan made smaller: each value is the mean light of a square of scan pixels, as a densitometer would average it. Places on it are
 * scan pixels from the scan's top left corner, so that maps of every size agree. Never changed once made.
 */
final class LightMap {
    /** Values of the largest map made from a scan: fine enough for codes, small enough to keep in memory (assumed). */
    private static final int MOST_VALUES = 16_000_000;

    private static final int BAND_ROWS = 16;

    private final int width;
    private final int height;
    private final double step;
    private final int left;
    private final int top;
    private final float[] values;

    private LightMap(int width, int height, double step, int left, int top, float[] values) {
        this.width = width;
        this.height = height;
        this.step = step;
        this.left = left;
        this.top = top;
        this.values = values;
    }

    /** The whole scan, white as 1, as fine as memory allows. */
    static LightMap of(GreyPlane scan, int threads, Progress progress) {
        int side = 1;
        while ((long) rounded(scan.width(), side) * rounded(scan.height(), side) > MOST_VALUES) {
            side++;
        }
        int factor = side;
        int width = rounded(scan.width(), factor);
        int height = rounded(scan.height(), factor);
        float[] values = new float[width * height];
        try {
            Bands.<float[]>inOrder(
                    height,
                    BAND_ROWS,
                    threads,
                    () -> {
                        short[] row = new short[scan.width()];
                        return (first, count) -> means(scan, factor, width, first, count, row);
                    },
                    (first, count, means) -> System.arraycopy(means, 0, values, first * width, means.length),
                    progress);
        } catch (IOException broken) {
            throw Refusal.failure("the scan can't be read: open it again", broken);
        }
        return new LightMap(width, height, factor, 0, 0, values);
    }

    private static float[] means(GreyPlane scan, int factor, int width, int first, int count, short[] row) {
        float[] means = new float[width * count];
        long[] sums = new long[width];
        for (int r = 0; r < count; r++) {
            Arrays.fill(sums, 0);
            int top = (first + r) * factor;
            int bottom = Math.min(scan.height(), top + factor);
            for (int y = top; y < bottom; y++) {
                scan.readRow(y, row);
                int x = 0;
                for (int i = 0; i < width; i++) {
                    int end = Math.min(scan.width(), (i + 1) * factor);
                    long sum = 0;
                    for (; x < end; x++) {
                        sum += row[x] & 0xFFFF;
                    }
                    sums[i] += sum;
                }
            }
            for (int i = 0; i < width; i++) {
                int across = Math.min(scan.width(), (i + 1) * factor) - i * factor;
                means[r * width + i] =
                        (float) ((double) sums[i] / ((double) across * (bottom - top) * GreyPlane.WHITE));
            }
        }
        return means;
    }

    private static int rounded(int length, int factor) {
        return (length + factor - 1) / factor;
    }

    /** The part of a scan that holds some places, and two pixels beside them. */
    static LightMap about(GreyPlane scan, double[] x, double[] y) {
        return part(
                scan,
                (int) Math.floor(Arrays.stream(x).min().orElse(0)) - 2,
                (int) Math.floor(Arrays.stream(y).min().orElse(0)) - 2,
                (int) Math.ceil(Arrays.stream(x).max().orElse(0)) + 2,
                (int) Math.ceil(Arrays.stream(y).max().orElse(0)) + 2);
    }

    /** A part of a scan, pixel by pixel; what lies outside of the scan is left away. */
    static LightMap part(GreyPlane scan, int left, int top, int right, int bottom) {
        int fromX = Math.max(0, Math.min(scan.width() - 1, left));
        int fromY = Math.max(0, Math.min(scan.height() - 1, top));
        int width = Math.max(1, Math.min(scan.width(), right) - fromX);
        int height = Math.max(1, Math.min(scan.height(), bottom) - fromY);
        float[] values = new float[Math.multiplyExact(width, height)];
        short[] row = new short[scan.width()];
        for (int y = 0; y < height; y++) {
            scan.readRow(fromY + y, row);
            for (int x = 0; x < width; x++) {
                values[y * width + x] = (float) ((row[fromX + x] & 0xFFFF) / (double) GreyPlane.WHITE);
            }
        }
        return new LightMap(width, height, 1, fromX, fromY, values);
    }

    /** The same made smaller by a whole factor; the last odd values are dropped. */
    LightMap reduced(int factor) {
        if (factor == 1) {
            return this;
        }
        int across = Math.max(1, width / factor);
        int down = Math.max(1, height / factor);
        int boxWidth = Math.min(factor, width);
        int boxHeight = Math.min(factor, height);
        float[] means = new float[across * down];
        for (int y = 0; y < down; y++) {
            for (int x = 0; x < across; x++) {
                double sum = 0;
                for (int dy = 0; dy < boxHeight; dy++) {
                    int at = (y * factor + dy) * width + x * factor;
                    for (int dx = 0; dx < boxWidth; dx++) {
                        sum += values[at + dx];
                    }
                }
                means[y * across + x] = (float) (sum / (boxWidth * boxHeight));
            }
        }
        return new LightMap(across, down, step * factor, left, top, means);
    }

    /** The same with values a share of a step apart, drawn between the neighbours. */
    LightMap redrawn(double share) {
        int across = (int) Math.max(1, Math.floor(width / share));
        int down = (int) Math.max(1, Math.floor(height / share));
        float[] drawn = new float[Math.multiplyExact(across, down)];
        for (int y = 0; y < down; y++) {
            for (int x = 0; x < across; x++) {
                drawn[y * across + x] = (float) at(left + (x + 0.5) * share * step, top + (y + 0.5) * share * step);
            }
        }
        return new LightMap(across, down, step * share, left, top, drawn);
    }

    /** The same by its square root, in which prints look about as even in tone as to the eye. */
    LightMap roots() {
        float[] roots = new float[values.length];
        for (int i = 0; i < values.length; i++) {
            roots[i] = (float) Math.sqrt(Math.max(0, values[i]));
        }
        return new LightMap(width, height, step, left, top, roots);
    }

    /** A window, as far as it lies on the map. */
    LightMap window(int fromX, int fromY, int side) {
        int across = Math.min(side, width - fromX);
        int down = Math.min(side, height - fromY);
        float[] part = new float[across * down];
        for (int y = 0; y < down; y++) {
            System.arraycopy(values, (fromY + y) * width + fromX, part, y * across, across);
        }
        return new LightMap(across, down, step, left, top, part);
    }

    /** Each value with its eight neighbours. */
    LightMap softened() {
        float[] across = new float[values.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                float before = values[y * width + Math.max(0, x - 1)];
                float after = values[y * width + Math.min(width - 1, x + 1)];
                across[y * width + x] = (before + 2 * values[y * width + x] + after) / 4;
            }
        }
        float[] softened = new float[values.length];
        for (int y = 0; y < height; y++) {
            int above = Math.max(0, y - 1) * width;
            int below = Math.min(height - 1, y + 1) * width;
            for (int x = 0; x < width; x++) {
                softened[y * width + x] = (across[above + x] + 2 * across[y * width + x] + across[below + x]) / 4;
            }
        }
        return new LightMap(width, height, step, left, top, softened);
    }

    /** Means over squares of values, each found at once from sums over all that lies above and left (Crow 1984; from memory). */
    final class Means {
        private final int line = width + 1;
        private final double[] sums = new double[line * (height + 1)];

        Means() {
            for (int y = 0; y < height; y++) {
                double row = 0;
                for (int x = 0; x < width; x++) {
                    row += values[y * width + x];
                    sums[(y + 1) * line + x + 1] = sums[y * line + x + 1] + row;
                }
            }
        }

        /** The mean of the values up to {@code reach} away from one, as far as they lie on the map. */
        double about(int x, int y, int reach) {
            int fromX = Math.max(0, x - reach);
            int toX = Math.min(width, x + reach + 1);
            int fromY = Math.max(0, y - reach);
            int toY = Math.min(height, y + reach + 1);
            double sum = sums[toY * line + toX]
                    - sums[fromY * line + toX]
                    - sums[toY * line + fromX]
                    + sums[fromY * line + fromX];
            return sum / ((double) (toX - fromX) * (toY - fromY));
        }
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** Scan pixels along the side of one value. */
    double step() {
        return step;
    }

    float value(int x, int y) {
        return values[y * width + x];
    }

    /** The value at a place in scan pixels, between its four neighbours; not a number outside of the scan. */
    double at(double xPixels, double yPixels) {
        double x = (xPixels - left) / step - 0.5;
        double y = (yPixels - top) / step - 0.5;
        if (!(x >= -0.5 && y >= -0.5 && x <= width - 0.5 && y <= height - 0.5)) {
            return Double.NaN;
        }
        x = Math.max(0, Math.min(width - 1.0, x));
        y = Math.max(0, Math.min(height - 1.0, y));
        int before = Math.min((int) x, Math.max(0, width - 2));
        int above = Math.min((int) y, Math.max(0, height - 2));
        int after = Math.min(before + 1, width - 1);
        int below = Math.min(above + 1, height - 1);
        double across = x - before;
        double down = y - above;
        double upper = values[above * width + before] * (1 - across) + values[above * width + after] * across;
        double lower = values[below * width + before] * (1 - across) + values[below * width + after] * across;
        return upper * (1 - down) + lower * down;
    }
}
