package greyground.simulation;

/** Reflectance over a print and the paper round it, in square cells; places are micrometres from the plate's top left. */
final class Canvas {
    final int width;
    final int height;
    final double cell;
    final double margin;
    final float[] reflectance;

    Canvas(double plateWidth, double plateHeight, double margin, double cell) {
        this.cell = cell;
        this.margin = margin;
        this.width = (int) Math.ceil((plateWidth + 2 * margin) / cell);
        this.height = (int) Math.ceil((plateHeight + 2 * margin) / cell);
        this.reflectance = new float[width * height];
    }

    /** Micrometres across the plate of a column's middle. */
    double x(int column) {
        return (column + 0.5) * cell - margin;
    }

    double y(int row) {
        return (row + 0.5) * cell - margin;
    }

    int column(double x) {
        return (int) Math.floor((x + margin) / cell);
    }

    /** What a painter gives for each place. */
    @FunctionalInterface
    interface Paint {
        double at(double x, double y);
    }

    /** Paints a rectangle; cells that its edge crosses get their share. */
    void fill(double left, double top, double width, double height, Paint paint) {
        int firstRow = Math.max(0, column(top));
        int endRow = Math.min(this.height, column(top + height) + 1);
        int first = Math.max(0, column(left));
        int end = Math.min(this.width, column(left + width) + 1);
        for (int row = firstRow; row < endRow; row++) {
            double down = overlap(row, top, top + height);
            for (int column = first; column < end; column++) {
                double share = down * overlap(column, left, left + width);
                int at = row * this.width + column;
                if (share > 0) {
                    double value = paint.at(x(column), y(row));
                    reflectance[at] += (float) (share * (value - reflectance[at]));
                }
            }
        }
    }

    private double overlap(int index, double from, double to) {
        double low = index * cell - margin;
        return Math.max(0, Math.min(low + cell, to) - Math.max(low, from)) / cell;
    }

    /** Reflectance at a place between cells; past the rim that of the rim. */
    double sample(double x, double y) {
        double across = Math.max(0, Math.min(width - 1.001, (x + margin) / cell - 0.5));
        double down = Math.max(0, Math.min(height - 1.001, (y + margin) / cell - 0.5));
        int column = (int) across;
        int row = (int) down;
        double right = across - column;
        double below = down - row;
        int at = row * width + column;
        return (1 - below) * ((1 - right) * reflectance[at] + right * reflectance[at + 1])
                + below * ((1 - right) * reflectance[at + width] + right * reflectance[at + width + 1]);
    }
}
