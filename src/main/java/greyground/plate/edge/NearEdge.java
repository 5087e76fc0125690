package greyground.plate.edge;

/**
 * Distances that matter only near an edge. The same sites as {@link EdgeDistance}'s, measured from each edge along its row and
 * column, and then by looking a few rows up and down: a fraction of the envelope's time while the reach is a few dozen pixels.
 */
final class NearEdge {
    /** Rows up and down beyond which the envelope is no slower. */
    static final int MOST_REACH = 39;

    private static final int ROWS = 16;
    private static final int COLUMNS = 256;

    /** Beyond any reach. */
    private static final float FAR = 1e9f;

    private final boolean[] mask;
    private final boolean marked;
    private final DoseEdge edge;
    private final Grid grid;
    private final double reach;

    private NearEdge(boolean[] mask, boolean marked, DoseEdge edge, Grid grid, double reach) {
        this.mask = mask;
        this.marked = marked;
        this.edge = edge;
        this.grid = grid;
        this.reach = reach;
    }

    /**
     * Squared distances to a set, in pixels.
     *
     * @param edge tells where between two pixels the set's edge lies
     * @param reach pixels, 0 to {@value #MOST_REACH}
     * @return 0 in the set; positive infinity farther away than the reach
     */
    static float[] squaredPixels(boolean[] mask, boolean marked, DoseEdge edge, Grid grid, double reach) {
        NearEdge near = new NearEdge(mask, marked, edge, grid, reach);
        float[] across = new float[mask.length];
        near.rows(across);
        float[] squared = new float[mask.length];
        near.columns(across, squared);
        return squared;
    }

    /** Squared distance along each row. */
    private void rows(float[] across) {
        int width = grid.width();
        boolean wrapped = grid.rim() == Rim.WRAPPED;
        grid.strips(grid.height(), ROWS).forEach(block -> {
            int end = Math.min(grid.height(), (block + 1) * ROWS);
            for (int y = block * ROWS; y < end; y++) {
                int from = y * width;
                for (int x = from; x < from + width; x++) {
                    across[x] = mask[x] == marked ? 0 : FAR;
                }
                for (int x = 0; x + 1 < width; x++) {
                    if (mask[from + x] != mask[from + x + 1]) {
                        fromEdge(across, from, 1, width, x, x + 1);
                    }
                }
                if (wrapped && mask[from + width - 1] != mask[from]) {
                    fromEdge(across, from, 1, width, width - 1, 0);
                }
            }
        });
    }

    /**
     * Measures away from an edge between two neighbours of a line, as far as the reach or the next edge.
     *
     * @param first the line's place of its pixel 0
     * @param stride from pixel to pixel
     * @param one pixel of the line; {@code other} follows it
     */
    private void fromEdge(float[] plane, int first, int stride, int length, int one, int other) {
        boolean forward = mask[first + one * stride] == marked;
        int at = forward ? other : one;
        int step = forward ? 1 : -1;
        float distance = (float) edge.crossing(first + at * stride, first + (forward ? one : other) * stride);
        for (; distance <= reach; distance++) {
            int place = first + at * stride;
            if (mask[place] == marked) {
                return;
            }
            plane[place] = Math.min(plane[place], distance * distance);
            at += step;
            if (at < 0 || at >= length) {
                if (grid.rim() == Rim.BOUNDED) {
                    return;
                }
                at = Math.floorMod(at, length);
            }
        }
    }

    private void columns(float[] across, float[] squared) {
        grid.strips(grid.width(), COLUMNS).forEach(block -> {
            int left = block * COLUMNS;
            int count = Math.min(COLUMNS, grid.width() - left);
            alongColumns(squared, left, count);
            float[] own = new float[count];
            float[] other = new float[count];
            for (int y = 0; y < grid.height(); y++) {
                System.arraycopy(squared, y * grid.width() + left, own, 0, count);
                nearRows(own, other, across, y, left);
                System.arraycopy(own, 0, squared, y * grid.width() + left, count);
            }
        });
    }

    /** Squared distance along each column, which alone knows where the edge crosses the column. */
    private void alongColumns(float[] squared, int left, int count) {
        int width = grid.width();
        int height = grid.height();
        for (int y = 0; y < height; y++) {
            int from = y * width + left;
            for (int x = from; x < from + count; x++) {
                squared[x] = mask[x] == marked ? 0 : FAR;
            }
        }
        for (int y = 0; y + 1 < height; y++) {
            int from = y * width + left;
            for (int x = 0; x < count; x++) {
                if (mask[from + x] != mask[from + x + width]) {
                    fromEdge(squared, left + x, width, height, y, y + 1);
                }
            }
        }
        if (grid.rim() == Rim.WRAPPED) {
            int last = (height - 1) * width;
            for (int x = left; x < left + count; x++) {
                if (mask[last + x] != mask[x]) {
                    fromEdge(squared, x, width, height, height - 1, 0);
                }
            }
        }
    }

    /**
     * Looks from one row's piece at those above and below it.
     *
     * @param own the piece
     * @param other room for another's
     */
    private void nearRows(float[] own, float[] other, float[] across, int y, int left) {
        int height = grid.height();
        int rows = (int) reach;
        for (int dy = -rows; dy <= rows; dy++) {
            int row = y + dy;
            if (row < 0 || row >= height) {
                if (grid.rim() == Rim.BOUNDED) {
                    continue;
                }
                row = Math.floorMod(row, height);
            }
            // Only arrays that are read and written at one and the same index are computed eight places at a time.
            System.arraycopy(across, row * grid.width() + left, other, 0, other.length);
            lower(own, other, (float) dy * dy);
        }
        float most = (float) (reach * reach);
        for (int x = 0; x < own.length; x++) {
            own[x] = own[x] <= most ? own[x] : Float.POSITIVE_INFINITY;
        }
    }

    private static void lower(float[] own, float[] other, float down) {
        for (int x = 0; x < own.length; x++) {
            own[x] = Math.min(own[x], other[x] + down);
        }
    }
}
