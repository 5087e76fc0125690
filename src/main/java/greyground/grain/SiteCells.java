package greyground.grain;

/** Sites of a tile that wraps, sorted into square cells so that those near a place are found at once. */
final class SiteCells {
    private final int cells;
    private final double perPixel;
    private final int[] first;
    private final int[] byCell;
    private final int[] cellOf;

    /** @param cells along the tile's side */
    SiteCells(double[] x, double[] y, double side, int cells) {
        this.cells = cells;
        this.perPixel = cells / side;
        first = new int[cells * cells + 1];
        byCell = new int[x.length];
        cellOf = new int[x.length];
        for (int a = 0; a < x.length; a++) {
            int column = Math.min(cells - 1, (int) (x[a] * perPixel));
            int row = Math.min(cells - 1, (int) (y[a] * perPixel));
            cellOf[a] = row * cells + column;
            first[cellOf[a] + 1]++;
        }
        for (int c = 0; c < cells * cells; c++) {
            first[c + 1] += first[c];
        }
        int[] next = first.clone();
        for (int a = 0; a < x.length; a++) {
            byCell[next[cellOf[a]]++] = a;
        }
    }

    /** How many cells across must be searched for all sites within {@code reach} of any place in the middle one. */
    int span(double reach) {
        // One more ring than the reach asks for: the place may stand a little outside its site's own cell.
        return Math.min(cells, 2 * ((int) (reach * perPixel) + 1) + 1);
    }

    /** The cell at (column, row) of the {@code span} x {@code span} cells about a site's own, each once. */
    int near(int site, int column, int row, int span) {
        int c = cellOf[site] % cells - span / 2 + column;
        int r = cellOf[site] / cells - span / 2 + row;
        c = c < 0 ? c + cells : c >= cells ? c - cells : c;
        r = r < 0 ? r + cells : r >= cells ? r - cells : r;
        return r * cells + c;
    }

    /** Where a cell's sites begin; those of cell {@code c} end before {@code first(c + 1)}. */
    int first(int cell) {
        return first[cell];
    }

    /** The site at a place of the sorted list. */
    int site(int k) {
        return byCell[k];
    }
}
