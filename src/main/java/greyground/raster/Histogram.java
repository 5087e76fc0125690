package greyground.raster;

import java.io.IOException;

/** Counts the greys of a part of a plane. */
public final class Histogram {
    /** One count for each 16-bit code. */
    public static final int CODES = 65_536;

    private static final int ROWS_PER_BAND = 256;

    private Histogram() {}

    /** Counts every pixel of a rectangle, which must lie on the plane. */
    public static long[] of(GreyPlane plane, PixelRect part, int threads) throws IOException {
        return of(plane, part.left(), part.top(), part.width(), part.height(), threads);
    }

    /**
     * Counts every pixel of columns {@code left..left+width-1} and rows {@code top..top+height-1}, which must lie on the plane.
     *
     * @return 65 536 counts, indexed by grey code
     */
    public static long[] of(GreyPlane plane, int left, int top, int width, int height, int threads) throws IOException {
        long[] all = new long[CODES];
        Bands.<int[]>inOrder(
                height,
                ROWS_PER_BAND,
                threads,
                () -> {
                    short[] row = new short[plane.width()];
                    return (first, count) -> {
                        int[] counts = new int[CODES];
                        for (int y = first; y < first + count; y++) {
                            plane.readRow(top + y, row);
                            for (int x = left; x < left + width; x++) {
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
