package greyground.raster;

import java.util.Arrays;

/**
 * How far the nearest set pixel of its own column lies from each pixel: the first half of a distance transform, on a strip
 * of a plane. One thread uses it; its buffers serve strip after strip.
 */
public final class ColumnDistances {
    private short[] distances = new short[0];
    private int columns;

    /**
     * Measures a strip.
     *
     * @param first column of the strip, may lie outside the plane
     * @param columns of the strip; those outside the plane have no set pixel
     * @param most distances are cut off here, 1 to 32 000
     */
    public void measure(BitPlane set, int first, int columns, int most) {
        this.columns = columns;
        int rows = set.rows();
        if (distances.length < rows * columns) {
            distances = new short[rows * columns];
        }
        short[] all = distances;
        int inside = Math.max(0, -first);
        int insideEnd = Math.max(inside, Math.min(columns, set.width() - first));
        for (int y = 0; y < rows; y++) {
            int at = y * columns;
            int above = at - columns;
            Arrays.fill(all, at, at + inside, (short) most);
            Arrays.fill(all, at + insideEnd, at + columns, (short) most);
            int word = 0;
            int bit = BitPlane.WORD;
            long bits = 0;
            for (int c = inside; c < insideEnd; c++) {
                if (bit == BitPlane.WORD) {
                    int x = first + c;
                    word = y * set.wordsPerRow() + (x >> 6);
                    bit = x & 63;
                    bits = set.words()[word] << bit;
                }
                int grown = y == 0 ? most : Math.min(most, all[above + c] + 1);
                // The sign of the word is this pixel.
                all[at + c] = (short) (grown & ~(bits >> 63));
                bits <<= 1;
                bit++;
            }
        }
        for (int y = rows - 2; y >= 0; y--) {
            int at = y * columns;
            int below = at + columns;
            for (int c = 0; c < columns; c++) {
                all[at + c] = (short) Math.min(all[at + c], all[below + c] + 1);
            }
        }
    }

    /** The distances: row by row, {@code columns} apart. Valid until the next strip is measured. */
    public short[] distances() {
        return distances;
    }

    /** Columns of the strip measured last. */
    public int columns() {
        return columns;
    }
}
