package greyground.raster;

import java.util.Arrays;

/**
 * Finds the connected regions of a bitmap that is seen once, row by row from the top; pixels that meet at a corner are
 * connected. Only the regions that the last row touches are kept, so memory grows with a row and not with the bitmap.
 *
 * <p>For each row: its runs from left to right, then {@link #endRow}. One thread.
 */
public final class Regions {
    /** Hears of each region once, when no row can add to it any more. */
    @FunctionalInterface
    public interface Taker {
        /**
         * Takes a region.
         *
         * @param pixels of all its runs
         * @param weight sum of its runs' weights
         * @param best the highest value of its runs
         * @param bestX where that was; the topmost, then leftmost, of several
         * @param bestY where that was
         */
        void take(long pixels, long weight, double best, int bestX, int bestY);
    }

    private final Taker taker;
    private Row before = new Row();
    private Row now = new Row();
    private int[] parents = new int[64];

    /** The runs of one row, and the regions they belong to. */
    private static final class Row {
        private int[] starts = new int[32];
        private int[] ends = new int[32];
        private int[] regions = new int[32];
        private int runs;
        private long[] pixels = new long[32];
        private long[] weights = new long[32];
        private double[] bests = new double[32];
        private int[] bestXs = new int[32];
        private int[] bestYs = new int[32];
        private int count;

        private void grow() {
            int size = 2 * starts.length;
            starts = Arrays.copyOf(starts, size);
            ends = Arrays.copyOf(ends, size);
            regions = Arrays.copyOf(regions, size);
            pixels = Arrays.copyOf(pixels, size);
            weights = Arrays.copyOf(weights, size);
            bests = Arrays.copyOf(bests, size);
            bestXs = Arrays.copyOf(bestXs, size);
            bestYs = Arrays.copyOf(bestYs, size);
        }

        private void add(int region, long morePixels, long moreWeight, double best, int x, int y) {
            pixels[region] += morePixels;
            weights[region] += moreWeight;
            boolean earlier = y < bestYs[region] || (y == bestYs[region] && x < bestXs[region]);
            if (best > bests[region] || (best == bests[region] && earlier)) {
                bests[region] = best;
                bestXs[region] = x;
                bestYs[region] = y;
            }
        }
    }

    /** Finds regions for a taker. */
    public Regions(Taker taker) {
        this.taker = taker;
    }

    /**
     * Adds a run of the row at hand.
     *
     * @param start first pixel, past the end of the run before it
     * @param end past the last pixel
     * @param weight added up over a region
     * @param best a value of which a region keeps the highest
     * @param bestX where it lies
     * @param y the row at hand
     */
    public void add(int start, int end, long weight, double best, int bestX, int y) {
        if (now.runs == now.starts.length) {
            now.grow();
        }
        int run = now.runs++;
        now.starts[run] = start;
        now.ends[run] = end;
        now.pixels[run] = (long) end - start;
        now.weights[run] = weight;
        now.bests[run] = best;
        now.bestXs[run] = bestX;
        now.bestYs[run] = y;
    }

    /**
     * Adds the runs of a row of a plane, valued by their length, placed at their middle.
     *
     * @param row of the plane
     * @param from first column
     * @param to past the last column
     * @param shift added to columns
     * @param y the row at hand
     */
    public void add(BitPlane plane, int row, int from, int to, int shift, int y) {
        int end = from;
        for (int start = plane.next(row, from, to, true); start < to; start = plane.next(row, end, to, true)) {
            end = plane.next(row, start, to, false);
            add(start + shift, end + shift, 0, end - start, start + shift + (end - start) / 2, y);
        }
    }

    /** Ends the row at hand; a row without runs ends all regions. */
    public void endRow() {
        int earlier = before.count;
        int nodes = earlier + now.runs;
        if (parents.length < nodes) {
            parents = new int[2 * nodes];
        }
        for (int i = 0; i < nodes; i++) {
            parents[i] = i;
        }
        int above = 0;
        for (int run = 0; run < now.runs; run++) {
            while (above < before.runs && before.ends[above] < now.starts[run]) {
                above++;
            }
            for (int k = above; k < before.runs && before.starts[k] <= now.ends[run]; k++) {
                join(before.regions[k], earlier + run);
            }
        }
        settle(earlier);
        Row old = before;
        before = now;
        now = old;
        now.runs = 0;
        now.count = 0;
    }

    /** Hands on whatever regions are left. */
    public void end() {
        endRow();
        endRow();
    }

    /** Gathers this row's runs, and the regions above that they join, into regions numbered from 0. */
    private void settle(int earlier) {
        // The first run of a region takes its number; runs were added in order, so a number never passes its run.
        int[] numbers = now.regions;
        int count = 0;
        for (int run = 0; run < now.runs; run++) {
            int root = root(earlier + run);
            if (root == earlier + run) {
                // The slot belonged to a run already gathered, or to this one.
                int number = count++;
                now.pixels[number] = now.pixels[run];
                now.weights[number] = now.weights[run];
                now.bests[number] = now.bests[run];
                now.bestXs[number] = now.bestXs[run];
                now.bestYs[number] = now.bestYs[run];
                numbers[run] = number;
            } else {
                int number = numbers[root - earlier];
                now.add(number, now.pixels[run], now.weights[run], now.bests[run], now.bestXs[run], now.bestYs[run]);
                numbers[run] = number;
            }
        }
        now.count = count;
        for (int region = 0; region < earlier; region++) {
            int root = root(region);
            if (root >= earlier) {
                now.add(
                        numbers[root - earlier],
                        before.pixels[region],
                        before.weights[region],
                        before.bests[region],
                        before.bestXs[region],
                        before.bestYs[region]);
            } else {
                taker.take(
                        before.pixels[region],
                        before.weights[region],
                        before.bests[region],
                        before.bestXs[region],
                        before.bestYs[region]);
            }
        }
    }

    /** Joins two regions; the root is the earliest run among them, or a region above where there is no run yet. */
    private void join(int a, int b) {
        int first = root(a);
        int second = root(b);
        if (first == second) {
            return;
        }
        int earlier = before.count;
        boolean firstIsRun = first >= earlier;
        boolean secondIsRun = second >= earlier;
        if (firstIsRun == secondIsRun) {
            parents[Math.max(first, second)] = Math.min(first, second);
        } else if (firstIsRun) {
            parents[second] = first;
        } else {
            parents[first] = second;
        }
    }

    private int root(int node) {
        int at = node;
        while (parents[at] != at) {
            parents[at] = parents[parents[at]];
            at = parents[at];
        }
        return at;
    }
}
