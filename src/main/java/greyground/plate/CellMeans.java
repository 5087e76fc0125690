package greyground.plate;

import java.util.Arrays;

/** Means of a plane over the cells of a window; a pixel that two cells share counts in each by its share. */
final class CellMeans {
    private CellMeans() {}

    /** Writes one value to every cell. */
    static void fill(PlateMap map, WholePlate.CellRange range, float value) {
        for (int row = range.firstRow(); row < range.endRow(); row++) {
            int from = row * map.window().columns();
            Arrays.fill(map.values(), from + range.firstColumn(), from + range.endColumn(), value);
        }
    }

    /**
     * Averages a patch over the cells that it covers.
     *
     * @param values of the patch's grid
     * @param place tells where the grid lies on the plate
     */
    static void add(PlateMap map, WholePlate.CellRange range, float[] values, Grid grid, FilmPatch place) {
        PlateWindow window = map.window();
        int columns = range.endColumn() - range.firstColumn();
        double pitch = grid.pitchMicrometres();
        // Cells' edges in whole-plate pixels, so that they do not depend on where a tile begins.
        int left = (int) Math.round(place.leftMicrometres() / pitch);
        int top = (int) Math.round(place.topMicrometres() / pitch);
        double[] edges = new double[columns + 1];
        for (int k = 0; k <= columns; k++) {
            edges[k] = (window.leftMicrometres() + (range.firstColumn() + k) * window.cellMicrometres()) / pitch;
        }
        double side = window.cellMicrometres() / pitch;
        double[] sums = new double[columns];
        for (int row = range.firstRow(); row < range.endRow(); row++) {
            double from = (window.topMicrometres() + row * window.cellMicrometres()) / pitch;
            double to = (window.topMicrometres() + (row + 1) * window.cellMicrometres()) / pitch;
            Arrays.fill(sums, 0);
            for (int y = (int) Math.floor(from); y < to; y++) {
                double share = Math.min(to, y + 1) - Math.max(from, y);
                if (share > 0) {
                    addRow(values, (y - top) * grid.width(), left, edges, share, sums);
                }
            }
            int into = row * window.columns() + range.firstColumn();
            for (int k = 0; k < columns; k++) {
                map.values()[into + k] = (float) (sums[k] / (side * side));
            }
        }
    }

    private static void addRow(float[] values, int start, int left, double[] edges, double share, double[] sums) {
        for (int k = 0; k < sums.length; k++) {
            double from = edges[k];
            double to = edges[k + 1];
            int first = (int) Math.floor(from);
            int end = (int) Math.ceil(to);
            double sum = 0;
            for (int x = first; x < end; x++) {
                sum += values[start + x - left];
            }
            // The ends were counted whole.
            sum -= values[start + first - left] * (from - first);
            sum -= values[start + end - 1 - left] * (end - to);
            sums[k] += share * sum;
        }
    }
}
