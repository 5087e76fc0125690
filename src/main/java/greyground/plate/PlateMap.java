package greyground.plate;

/**
 * One quantity over a window of plate, row by row. Whoever holds it owns the array and should not change it.
 *
 * @param window what is mapped
 * @param values the mean over each cell
 */
@SuppressWarnings("ArrayRecordComponent") // a plane of megapixels, handed on without copying; equality is never asked
public record PlateMap(PlateWindow window, float[] values) {}
