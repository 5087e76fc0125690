package greyground.raster;

/**
 * Decoded art: a rectangle of linear luminance, 16 bits a pixel, unsigned; 0 is no light and 65 535 the art's white.
 *
 * <p>Rows may be read in any order and by many threads at once; nothing changes a plane once it is built. Whoever opened
 * it closes it, which frees a spill file; closing twice is harmless.
 */
public interface GreyPlane extends AutoCloseable {
    /** The code of the art's white. */
    int WHITE = 65_535;

    /** Pixels across, at least 1. */
    int width();

    /** Pixels down, at least 1. */
    int height();

    /**
     * Copies row {@code y} (0 at the top) into the first {@link #width()} places of {@code into}.
     *
     * @throws greyground.quantity.Refusal if a spill file can no longer be read
     */
    void readRow(int y, short[] into);

    /**
     * Copies {@code count} pixels of row {@code y} from column {@code x} on into {@code into}, from its place {@code at} on.
     *
     * @throws greyground.quantity.Refusal if a spill file can no longer be read
     */
    default void readRun(int x, int y, int count, short[] into, int at) {
        short[] row = new short[width()];
        readRow(y, row);
        System.arraycopy(row, x, into, at, count);
    }

    @Override
    void close();
}
