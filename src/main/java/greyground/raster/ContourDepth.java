package greyground.raster;

import java.util.Arrays;

/**
 * How deep places lie within a shape, finer than a pixel: their distance to the line along which a plane passes through zero. Between four pixels
 * the line runs straight from crossing to crossing, each found by straight interpolation between two neighbours (marching squares, the plane's
 * case of Lorensen and Cline 1987; from memory).
 */
public final class ContourDepth {
    /** Below what rounding could make of a distance. */
    private static final float ROUNDED = 0.9999f;

    private final float[] plane;
    private final int width;
    private final int height;
    private final int reach;
    private final float[] squared;
    /** What no line within a cell can be nearer than, squared, for the pixels about it: row by row from {@code reach} up and left of the cell. */
    private final float[] least;

    private ContourDepth(float[] plane, int width, int height, int reach) {
        this.plane = plane;
        this.width = width;
        this.height = height;
        this.reach = reach;
        this.squared = new float[width * height];
        int side = 2 * reach + 2;
        this.least = new float[side * side];
        for (int i = 0; i < least.length; i++) {
            int across = outside(i % side - reach);
            int down = outside(i / side - reach);
            least[i] = (across * across + down * down) * ROUNDED;
        }
    }

    /** How far a place lies outside a cell from 0 to 1. */
    private static int outside(int place) {
        return Math.max(-place, Math.max(0, place - 1));
    }

    /**
     * Depths of all pixel centres.
     *
     * @param plane 0 or more within the shape, below 0 outside; row after row
     * @param reach pixels, at least 1: what lies farther from the line is at {@code reach + 1}
     * @return pixels, above 0 or 0 within and below 0 outside
     */
    public static float[] pixels(float[] plane, int width, int height, int reach) {
        return new ContourDepth(plane, width, height, reach).depths();
    }

    private float[] depths() {
        Arrays.fill(squared, (reach + 1f) * (reach + 1));
        for (int y = 0; y + 1 < height; y++) {
            for (int x = 0; x + 1 < width; x++) {
                int at = y * width + x;
                boolean inside = plane[at] >= 0;
                if (inside != plane[at + 1] >= 0
                        || inside != plane[at + width] >= 0
                        || inside != plane[at + width + 1] >= 0) {
                    cell(x, y, at);
                }
            }
        }
        for (int i = 0; i < squared.length; i++) {
            float distance = (float) Math.sqrt(squared[i]);
            squared[i] = plane[i] >= 0 ? distance : -distance;
        }
        return squared;
    }

    /** The line between four pixels; where it passes twice, their mean says which pair belongs together. */
    private void cell(int x, int y, int at) {
        float a = plane[at];
        float b = plane[at + 1];
        float c = plane[at + width + 1];
        float d = plane[at + width];
        float top = x + crossing(a, b);
        float right = y + crossing(b, c);
        float bottom = x + crossing(d, c);
        float left = y + crossing(a, d);
        boolean ab = a >= 0 != b >= 0;
        boolean bc = b >= 0 != c >= 0;
        boolean cd = c >= 0 != d >= 0;
        boolean da = d >= 0 != a >= 0;
        if (ab && bc && cd && da) {
            if (a + b + c + d >= 0 == a >= 0) {
                segment(x, y, top, y, x + 1f, right);
                segment(x, y, x, left, bottom, y + 1f);
            } else {
                segment(x, y, top, y, x, left);
                segment(x, y, x + 1f, right, bottom, y + 1f);
            }
        } else if (ab) {
            segment(x, y, top, y, bc ? x + 1f : cd ? bottom : x, bc ? right : cd ? y + 1f : left);
        } else if (bc) {
            segment(x, y, x + 1f, right, cd ? bottom : x, cd ? y + 1f : left);
        } else {
            segment(x, y, bottom, y + 1f, x, left);
        }
    }

    private static float crossing(float one, float other) {
        return one == other ? 0.5f : Math.max(0, Math.min(1, one / (one - other)));
    }

    /** Measures all pixels within reach of a cell to a piece of the line in it, but for those that another piece is nearer to for certain. */
    private void segment(int cellX, int cellY, float x0, float y0, float x1, float y1) {
        float across = x1 - x0;
        float down = y1 - y0;
        float length = across * across + down * down;
        float inverse = length > 0 ? 1 / length : 0;
        int left = Math.max(0, cellX - reach);
        int right = Math.min(width - 1, cellX + 1 + reach);
        int upper = Math.max(0, cellY - reach);
        int lower = Math.min(height - 1, cellY + 1 + reach);
        for (int y = upper; y <= lower; y++) {
            float dy = y - y0;
            int row = y * width;
            int about = (y - cellY + reach) * (2 * reach + 2) + reach - cellX;
            for (int x = left; x <= right; x++) {
                if (squared[row + x] > least[about + x]) {
                    float dx = x - x0;
                    float share = (dx * across + dy * down) * inverse;
                    float along = share > 0 ? share < 1 ? share : 1 : 0;
                    float ex = dx - along * across;
                    float ey = dy - along * down;
                    float distance = ex * ex + ey * ey;
                    squared[row + x] = distance < squared[row + x] ? distance : squared[row + x];
                }
            }
        }
    }

    /**
     * How deep the middle of a stroke lies whose middle line passes by a pixel; NaN where none does. A stroke's depth rises from both of its edges to a
     * ridge, over which its slope turns round; at a corner of 75 degrees or more it doesn't.
     *
     * @param depth of {@link #pixels}
     * @param at a pixel with neighbours on all sides
     */
    public static float middle(float[] depth, int width, int at) {
        float across = depth[at + 1] - depth[at - 1];
        float down = depth[at + width] - depth[at - width];
        if (depth[at] < 0 || across * across + down * down > 4 * FLAT * FLAT) {
            return Float.NaN;
        }
        float straight = Math.min(depth[at + 1] + depth[at - 1], depth[at + width] + depth[at - width]) / 2 + 1;
        float slanted =
                Math.min(depth[at + width + 1] + depth[at - width - 1], depth[at + width - 1] + depth[at - width + 1])
                                / 2
                        + DIAGONAL;
        return Math.max(depth[at], Math.min(straight, slanted));
    }

    /** Least slope, in pixels to the pixel, that is no ridge: one that passes between two pixels has half, a corner of a right angle 0.71. */
    private static final float FLAT = 0.6f;

    private static final float DIAGONAL = (float) Math.sqrt(2);
}
