package greyground.plate;

import greyground.quantity.Refusal;

/**
 * A rectangle of a plate, looked at in square cells, as the print reads.
 *
 * @param leftMicrometres from the plate's left edge
 * @param topMicrometres from the plate's top edge
 * @param cellMicrometres side of a cell, 0.5 to 10 000
 * @param columns cells across, at least 1
 * @param rows cells down, at least 1; at most 100 million cells in all
 */
public record PlateWindow(
        double leftMicrometres, double topMicrometres, double cellMicrometres, int columns, int rows) {
    private static final long MOST_CELLS = 100_000_000;

    public PlateWindow {
        Refusal.checkRange("cell of a picture", cellMicrometres, 0.5, 10_000, "µm", "150 dpi are 169 µm");
        if (columns < 1 || rows < 1 || (long) columns * rows > MOST_CELLS) {
            throw Refusal.use("a picture of " + columns + " x " + rows + " pixels is asked for; it must have 1 to "
                    + MOST_CELLS + " pixels: ask for fewer dots per inch");
        }
    }

    /** Cells in all. */
    public int area() {
        return columns * rows;
    }
}
