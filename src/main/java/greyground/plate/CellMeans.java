package greyground.plate;

import greyground.plate.edge.Grid;
import java.util.Arrays;

/**
 * Means of a plane over the cells of a window. Cells that hold many pixels reach half into their neighbours with weights that
 * fall off evenly (a tent): a mere mean over the square would let a grain about as wide as a cell show as patterns that the
 * print does not have. Cells about as small as pixels count each pixel by the share of it inside.
 */
final class CellMeans {
    /** Pixels across a cell from which on it is a tent. */
    private static final double LEAST_TENT = 4;

    private CellMeans() {}

    /** How far a cell's mean reaches past its edges. */
    static double reachMicrometres(double cellMicrometres, double pixelMicrometres) {
        return cellMicrometres < LEAST_TENT * pixelMicrometres ? 0 : cellMicrometres / 2 + pixelMicrometres;
    }

    /**
     * Averages a patch over the cells that it covers.
     *
     * @param values of the patch's grid
     * @param place tells where the grid lies on the plate
     */
    static void add(PlateMap map, WholePlate.CellRange range, float[] values, Grid grid, FilmPatch place) {
        PlateWindow window = map.window();
        double pitch = grid.pitchMicrometres();
        int columns = range.endColumn() - range.firstColumn();
        int left = (int) Math.round(place.leftMicrometres() / pitch);
        int top = (int) Math.round(place.topMicrometres() / pitch);
        Share[] across = new Share[columns];
        for (int k = 0; k < columns; k++) {
            across[k] = Share.of(window.leftMicrometres(), range.firstColumn() + k, window.cellMicrometres(), pitch);
        }
        double[] sums = new double[columns];
        for (int row = range.firstRow(); row < range.endRow(); row++) {
            Share down = Share.of(window.topMicrometres(), row, window.cellMicrometres(), pitch);
            Arrays.fill(sums, 0);
            for (int i = 0; i < down.weights.length; i++) {
                int start = (down.first + i - top) * grid.width() - left;
                for (int k = 0; k < columns; k++) {
                    sums[k] += down.weights[i] * across[k].of(values, start);
                }
            }
            int into = row * window.columns() + range.firstColumn();
            for (int k = 0; k < columns; k++) {
                map.values()[into + k] = (float) sums[k];
            }
        }
    }

    /** A cell's weights along one axis, which sum to one; pixels count from the plate's edge, wherever a tile begins. */
    private static final class Share {
        private final int first;
        private final float[] weights;

        private Share(int first, float[] weights) {
            this.first = first;
            this.weights = weights;
        }

        static Share of(double windowStart, int cell, double side, double pitch) {
            double from = (windowStart + cell * side) / pitch;
            double to = (windowStart + (cell + 1) * side) / pitch;
            boolean tent = to - from >= LEAST_TENT;
            double half = tent ? (to - from) / 2 : 0;
            int first = (int) Math.floor(from - half);
            int end = (int) Math.ceil(to + half);
            double[] exact = new double[end - first];
            double sum = 0;
            for (int i = 0; i < exact.length; i++) {
                int x = first + i;
                double middle = (from + to) / 2;
                exact[i] = tent
                        ? Math.max(0, 1 - Math.abs(x + 0.5 - middle) / (to - from))
                        : Math.min(to, x + 1) - Math.max(from, x);
                sum += exact[i];
            }
            float[] weights = new float[exact.length];
            for (int i = 0; i < weights.length; i++) {
                weights[i] = (float) (exact[i] / sum);
            }
            return new Share(first, weights);
        }

        double of(float[] values, int start) {
            float sum = 0;
            int from = start + first;
            for (int i = 0; i < weights.length; i++) {
                sum += weights[i] * values[from + i];
            }
            return sum;
        }
    }
}
