package greyground.raster;

import java.util.ArrayList;
import java.util.List;

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
    private List<Run> before = new ArrayList<>();
    private List<Run> now = new ArrayList<>();

    /** A run of one row; the one that stands for its region holds what the region has so far. */
    private static final class Run {
        private final int start;
        private final int end;
        private long pixels;
        private long weight;
        private double best;
        private int bestX;
        private int bestY;
        private Run standsFor = this;
        private boolean settled;

        Run(int start, int end, long weight, double best, int bestX, int bestY) {
            this.start = start;
            this.end = end;
            this.pixels = (long) end - start;
            this.weight = weight;
            this.best = best;
            this.bestX = bestX;
            this.bestY = bestY;
        }

        /** The run that stands for this one's region (union and find, with ways made shorter as they are gone). */
        Run region() {
            Run at = this;
            while (at.standsFor != at) {
                at.standsFor = at.standsFor.standsFor;
                at = at.standsFor;
            }
            return at;
        }

        void join(Run other) {
            Run into = other.region();
            Run from = region();
            if (from == into) {
                return;
            }
            from.standsFor = into;
            into.pixels += from.pixels;
            into.weight += from.weight;
            boolean earlier = from.bestY < into.bestY || (from.bestY == into.bestY && from.bestX < into.bestX);
            if (from.best > into.best || (from.best == into.best && earlier)) {
                into.best = from.best;
                into.bestX = from.bestX;
                into.bestY = from.bestY;
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
        now.add(new Run(start, end, weight, best, bestX, y));
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
        int above = 0;
        for (Run run : now) {
            while (above < before.size() && before.get(above).end < run.start) {
                above++;
            }
            for (int k = above; k < before.size() && before.get(k).start <= run.end; k++) {
                run.join(before.get(k));
            }
        }
        before.forEach(run -> run.region().settled = false);
        now.forEach(run -> run.region().settled = true);
        for (Run run : before) {
            Run region = run.region();
            if (!region.settled) {
                region.settled = true;
                taker.take(region.pixels, region.weight, region.best, region.bestX, region.bestY);
            }
        }
        List<Run> row = before;
        before = now;
        now = row;
        now.clear();
    }

    /** Hands on whatever regions are left. */
    public void end() {
        endRow();
        endRow();
    }
}
