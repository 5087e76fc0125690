package greyground.art.touch;

import greyground.raster.Bands;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.io.IOException;

/**
 * A plane made smaller, a number to each square of pixels; squares at the right and the foot may be cut off.
 *
 * @param width pixels of the plane across
 * @param height pixels down
 * @param side of a square in pixels, at least 1
 */
record Cells(int width, int height, int side) {
    /** Adds a row of grey codes to the squares of its row, of which {@code first} is the place of the leftmost. */
    @FunctionalInterface
    interface Gathering {
        void add(short[] codes, double[] cells, int first);
    }

    int across() {
        return (width + side - 1) / side;
    }

    int down() {
        return (height + side - 1) / side;
    }

    /** Pixels of a square. */
    int pixels(int column, int row) {
        return Math.min(side, height - row * side) * Math.min(side, width - column * side);
    }

    /** A number for each square, row after row, which begins at 0 and to which each row of its pixels is added from the top. */
    double[] gathered(GreyPlane plane, Gathering gathering, int threads, Progress progress) throws IOException {
        double[] cells = new double[Math.multiplyExact(across(), down())];
        Bands.<Boolean>inOrder(
                down(),
                Math.max(1, Touch.ROWS / side),
                threads,
                () -> {
                    short[] row = new short[width];
                    return (first, count) -> {
                        for (int y = first * side; y < Math.min(height, (first + count) * side); y++) {
                            plane.readRow(y, row);
                            gathering.add(row, cells, Math.floorDiv(y, side) * across());
                        }
                        return true;
                    };
                },
                (first, count, done) -> {
                    // The maker has filled its own rows already.
                },
                progress);
        return cells;
    }

    /** A pixel's place among the middles of the squares: the square before it, and how far it is from there to the next. */
    record Place(int before, int after, double share) {}

    Place column(int x) {
        return place(x, across());
    }

    Place row(int y) {
        return place(y, down());
    }

    private Place place(int pixel, int cells) {
        double place = Math.max(0, Math.min(cells - 1, (pixel + 0.5) / side - 0.5));
        int before = Math.min((int) place, Math.max(0, cells - 2));
        return new Place(before, Math.min(before + 1, cells - 1), place - before);
    }

    /** What lies straight between four squares. */
    double between(double[] of, Place column, Place row) {
        int above = row.before() * across();
        int below = row.after() * across();
        double upper = of[above + column.before()] * (1 - column.share()) + of[above + column.after()] * column.share();
        double lower = of[below + column.before()] * (1 - column.share()) + of[below + column.after()] * column.share();
        return upper * (1 - row.share()) + lower * row.share();
    }
}
