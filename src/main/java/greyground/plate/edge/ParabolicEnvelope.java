package greyground.plate.edge;

/**
 * Envelopes of equal paraboloids over a plane. A paraboloid is a sum of a parabola in x and one in y, so the plane's
 * envelope is the {@link LineEnvelope} of the rows and then of the columns; time is linear in pixels.
 *
 * <p>Lines are shared among all cores; each is computed by one thread, so their number can't change the result.
 */
public final class ParabolicEnvelope {
    // 16 floats are one cache line of common machines: a block of columns is read without waste.
    private static final int BLOCK = 16;

    private ParabolicEnvelope() {}

    /**
     * Replaces a plane by its lower envelope, {@code min over q of (f(q) + c |x - q|^2)}.
     *
     * @param plane one sample a pixel; positive infinity carries no paraboloid
     * @param steepness c, above 0, in sample units per squared pixel
     */
    public static void lower(float[] plane, Grid grid, double steepness) {
        rows(plane, grid, steepness, false);
        columns(plane, grid, steepness, false);
    }

    /** Replaces a plane by its upper envelope, {@code max over q of (f(q) - c |x - q|^2)}. */
    public static void upper(float[] plane, Grid grid, double steepness) {
        rows(plane, grid, steepness, true);
        columns(plane, grid, steepness, true);
    }

    private static void rows(float[] plane, Grid grid, double steepness, boolean upper) {
        int width = grid.width();
        grid.strips(grid.height(), BLOCK).forEach(block -> {
            LineEnvelope envelope = new LineEnvelope(width);
            int end = Math.min(grid.height(), (block + 1) * BLOCK);
            for (int y = block * BLOCK; y < end; y++) {
                int from = y * width;
                if (upper) {
                    negate(plane, from, width);
                }
                envelope.lower(plane, from, width, steepness, grid.rim());
                if (upper) {
                    negate(plane, from, width);
                }
            }
        });
    }

    private static void columns(float[] plane, Grid grid, double steepness, boolean upper) {
        int width = grid.width();
        int height = grid.height();
        float sign = upper ? -1 : 1;
        grid.strips(width, BLOCK).forEach(block -> {
            LineEnvelope envelope = new LineEnvelope(height);
            int left = block * BLOCK;
            int count = Math.min(width - left, BLOCK);
            float[] lines = new float[count * height];
            for (int y = 0; y < height; y++) {
                int from = y * width + left;
                for (int i = 0; i < count; i++) {
                    lines[i * height + y] = sign * plane[from + i];
                }
            }
            for (int i = 0; i < count; i++) {
                envelope.lower(lines, i * height, height, steepness, grid.rim());
            }
            for (int y = 0; y < height; y++) {
                int from = y * width + left;
                for (int i = 0; i < count; i++) {
                    plane[from + i] = sign * lines[i * height + y];
                }
            }
        });
    }

    private static void negate(float[] plane, int from, int count) {
        for (int i = from; i < from + count; i++) {
            plane[i] = -plane[i];
        }
    }
}
