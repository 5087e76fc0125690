package greyground.plate.neighbourhood;

/**
 * Cells of a window along one axis, each a mean whose weights fall off evenly to nought at the middles of its neighbours. So between two
 * middles a pixel belongs to two cells, in shares that sum to one.
 */
final class Tents {
    private final double start;
    private final double perPixel;
    private final int cells;
    private final int first;
    private final int[] below;
    private final double[] share;
    private final double[] weights;

    /**
     * Deals out pixels.
     *
     * @param startMicrometres of the first cell
     */
    Tents(double startMicrometres, double cellMicrometres, int cells, double pitchMicrometres) {
        this.start = startMicrometres / cellMicrometres + 0.5;
        this.perPixel = pitchMicrometres / cellMicrometres;
        this.cells = cells;
        this.first = (int) Math.floor((start - 1) / perPixel - 0.5) + 1;
        int end = (int) Math.ceil((start + cells) / perPixel - 0.5);
        below = new int[end - first];
        share = new double[end - first];
        weights = new double[cells];
        for (int i = 0; i < below.length; i++) {
            double at = (first + i + 0.5) * perPixel - start;
            below[i] = (int) Math.floor(at);
            share[i] = at - below[i];
            add(weights, below[i], 1 - share[i]);
            add(weights, below[i] + 1, share[i]);
        }
    }

    private void add(double[] sums, int cell, double weight) {
        if (cell >= 0 && cell < cells) {
            sums[cell] += weight;
        }
    }

    /** First pixel that has a share in any cell. */
    int first() {
        return first;
    }

    /** Pixels that have. */
    int count() {
        return below.length;
    }

    /** First pixel that has a share in a cell or one after it; past the last for the cell after the last. */
    int firstOf(int cell) {
        return Math.max(first, (int) Math.floor((start + cell - 1) / perPixel - 0.5) + 1);
    }

    /** The cell whose middle lies before a pixel, -1 for the first half of the first. */
    int below(int pixel) {
        return below[pixel - first];
    }

    /** Share of a pixel that belongs to the cell after that. */
    double share(int pixel) {
        return share[pixel - first];
    }

    /** Weights of a cell's pixels. */
    double weight(int cell) {
        return weights[cell];
    }

    /**
     * Sums a row's values.
     *
     * @param values by entry
     * @param entries of {@link #count} pixels
     * @param sums by cell, one to the left of the first and one to the right of the last besides
     */
    void sum(float[] values, int[] entries, double[] sums) {
        int at = 0;
        while (at < below.length) {
            int cell = below[at];
            double all = 0;
            double after = 0;
            for (; at < below.length && below[at] == cell; at++) {
                float value = values[entries[at]];
                all += value;
                after += share[at] * value;
            }
            sums[cell + 1] += all - after;
            sums[cell + 2] += after;
        }
    }
}
