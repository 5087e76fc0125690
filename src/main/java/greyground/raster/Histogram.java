package greyground.raster;

import java.io.IOException;

/** Counts the greys of a part of a plane. */
public final class Histogram {
    /** One count for each 16-bit code. */
    public static final int CODES = 65_536;

    private static final int ROWS_PER_BAND = 256;

    private Histogram() {}

    /**
     * Counts every pixel of a rectangle, which must lie on the plane.
     *
     * @return 65 536 counts, indexed by grey code
     */
    public static long[] of(GreyPlane plane, PixelRect part, int threads) throws IOException {
        long[] all = new long[CODES];
        Bands.<int[]>inOrder(
                part.height(),
                ROWS_PER_BAND,
                threads,
                () -> {
                    short[] row = new short[plane.width()];
                    return (first, count) -> {
                        int[] counts = new int[CODES];
                        for (int y = first; y < first + count; y++) {
                            plane.readRow(part.top() + y, row);
                            for (int x = part.left(); x < part.right(); x++) {
                                counts[row[x] & 0xFFFF]++;
                            }
                        }
                        return counts;
                    };
                },
                (first, count, counts) -> {
                    for (int code = 0; code < CODES; code++) {
                        all[code] += counts[code];
                    }
                },
                Progress.NONE);
        return all;
    }
}
