package greyground.plate;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Distances that matter only near an edge. The same sites as {@link EdgeDistance}'s, measured by running along
 * each row and then looking a few rows up and down: a fraction of the envelope's time while the reach is a few dozen pixels.
 */
final class NearEdge {
    /** Rows up and down beyond which the envelope is no slower. */
    static final int MOST_REACH = 40;

    private static final int ROWS = 16;
    private static final int COLUMNS = 256;

    /** Longer than any line, and its square still a plain number. */
    private static final float FAR = 1e9f;

    private final boolean[] mask;
    private final boolean marked;
    private final EdgeDistance edges;
    private final Grid grid;
    private final int reach;

    private NearEdge(boolean[] mask, boolean marked, EdgeDistance edges, Grid grid, int reach) {
        this.mask = mask;
        this.marked = marked;
        this.edges = edges;
        this.grid = grid;
        this.reach = reach;
    }

    /**
     * Squared distances to a set, in pixels.
     *
     * @param edges tells where between two pixels the set's edge lies
     * @param reach pixels, 1 to {@value #MOST_REACH}
     * @return 0 in the set; positive infinity farther away than the reach
     */
    static float[] squaredPixels(boolean[] mask, boolean marked, EdgeDistance edges, Grid grid, int reach) {
        NearEdge near = new NearEdge(mask, marked, edges, grid, reach);
        float[] across = new float[mask.length];
        near.rows(across);
        float[] squared = new float[mask.length];
        near.columns(across, squared);
        return squared;
    }

    /** Squared distance along each row. */
    private void rows(float[] across) {
        int width = grid.width();
        int blocks = (grid.height() + ROWS - 1) / ROWS;
        int lead = grid.rim() == Rim.WRAPPED ? Math.min(reach, width) : 0;
        IntStream.range(0, blocks).parallel().forEach(block -> {
            int end = Math.min(grid.height(), (block + 1) * ROWS);
            for (int y = block * ROWS; y < end; y++) {
                int from = y * width;
                float distance = FAR;
                int before = -1;
                for (int x = -lead; x < width; x++) {
                    int at = from + (x < 0 ? x + width : x);
                    distance = next(distance, before, at);
                    before = at;
                    if (x >= 0) {
                        across[at] = distance;
                    }
                }
                distance = FAR;
                before = -1;
                for (int x = width - 1 + lead; x >= 0; x--) {
                    int at = from + (x < width ? x : x - width);
                    distance = next(distance, before, at);
                    before = at;
                    if (x < width) {
                        float least = Math.min(across[at], distance);
                        across[at] = least * least;
                    }
                }
            }
        });
    }

    /** Distance at a pixel of a line, from that at the pixel before it. */
    private float next(float distance, int before, int at) {
        if (mask[at] == marked) {
            return 0;
        }
        if (before >= 0 && mask[before] == marked) {
            return (float) edges.crossing(at, before);
        }
        return distance + 1;
    }

    private void columns(float[] across, float[] squared) {
        int blocks = (grid.width() + COLUMNS - 1) / COLUMNS;
        IntStream.range(0, blocks).parallel().forEach(block -> {
            int left = block * COLUMNS;
            int count = Math.min(COLUMNS, grid.width() - left);
            alongColumns(squared, left, count);
            for (int y = 0; y < grid.height(); y++) {
                nearRows(across, squared, y, left, count);
            }
        });
    }

    /** Squared distance along each column, which alone knows where the edge crosses the column. */
    private void alongColumns(float[] squared, int left, int count) {
        int width = grid.width();
        int height = grid.height();
        int lead = grid.rim() == Rim.WRAPPED ? Math.min(reach, height) : 0;
        float[] distance = new float[count];
        Arrays.fill(distance, FAR);
        for (int y = -lead; y < height; y++) {
            int from = (y < 0 ? y + height : y) * width + left;
            int before = y == -lead ? -1 : (y < 1 ? (y - 1 + height) % height : y - 1) * width + left;
            for (int x = 0; x < count; x++) {
                distance[x] = next(distance[x], before < 0 ? -1 : before + x, from + x);
            }
            if (y >= 0) {
                System.arraycopy(distance, 0, squared, from, count);
            }
        }
        Arrays.fill(distance, FAR);
        for (int y = height - 1 + lead; y >= 0; y--) {
            int from = (y < height ? y : y - height) * width + left;
            int before = y == height - 1 + lead ? -1 : ((y + 1) % height) * width + left;
            for (int x = 0; x < count; x++) {
                distance[x] = next(distance[x], before < 0 ? -1 : before + x, from + x);
            }
            if (y < height) {
                for (int x = 0; x < count; x++) {
                    float least = Math.min(squared[from + x], distance[x]);
                    squared[from + x] = least * least;
                }
            }
        }
    }

    private void nearRows(float[] across, float[] squared, int y, int left, int count) {
        int width = grid.width();
        int height = grid.height();
        int into = y * width + left;
        for (int dy = -reach; dy <= reach; dy++) {
            int row = y + dy;
            if (row < 0 || row >= height) {
                if (grid.rim() == Rim.BOUNDED) {
                    continue;
                }
                row = Math.floorMod(row, height);
            }
            int from = row * width + left;
            float down = (float) dy * dy;
            for (int x = 0; x < count; x++) {
                squared[into + x] = Math.min(squared[into + x], across[from + x] + down);
            }
        }
        float most = (float) reach * reach;
        for (int x = into; x < into + count; x++) {
            squared[x] = squared[x] <= most ? squared[x] : Float.POSITIVE_INFINITY;
        }
    }
}
