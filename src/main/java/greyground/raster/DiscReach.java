package greyground.raster;

import java.util.Arrays;

/**
 * Every pixel that lies nearer than a radius to a set, centre to centre: a dilation by a disc, and by turning over an erosion.
 *
 * <p>Small discs go row by row, 64 pixels at a time; measured on grain, that is ten times quicker at 20 pixels and still
 * quicker at 100. Of a larger disc time does not grow with the radius: where the nearest set pixel of a column lies g rows away, it reaches {@code sqrt(r^2 - g^2)} to either side; one sweep to
 * the right and one to the left carry that along the row. Past the plane's edges there is no set pixel. Stateless.
 */
public final class DiscReach {
    private static final int STRIP = 1024;

    private static final double SMALL = 100;

    private DiscReach() {}

    /**
     * The pixels reached.
     *
     * @param radiusPixels above 0, at most 16 000
     */
    public static BitPlane within(BitPlane set, double radiusPixels) {
        return within(set, radiusPixels, 0, set.rows());
    }

    /**
     * The pixels reached, of some rows alone; every row of the set counts.
     *
     * @param firstRow of the set that becomes row 0 of the result
     * @param rows of the result
     */
    public static BitPlane within(BitPlane set, double radiusPixels, int firstRow, int rows) {
        BitPlane reached = new BitPlane(set.wordsPerRow(), rows);
        if (set.isEmpty()) {
            return reached;
        }
        if (radiusPixels <= SMALL) {
            double square = radiusPixels * radiusPixels;
            DiscRows.of(radiusPixels, 0, 0, (dx, dy) -> dx * dx + dy * dy - square)
                    .spread(set, firstRow, reached);
            return reached;
        }
        int margin = (int) Math.ceil(radiusPixels);
        int[] halves = halves(radiusPixels, margin);
        ColumnDistances distances = new ColumnDistances();
        int[] near = new int[Math.min(STRIP, set.width()) + 2 * margin];
        for (int from = 0; from < set.width(); from += STRIP) {
            int count = Math.min(STRIP, set.width() - from);
            distances.measure(set, from - margin, count + 2 * margin, margin);
            for (int y = 0; y < rows; y++) {
                sweep(distances, firstRow + y, halves, near);
                pack(near, margin, count, reached.words(), y * set.wordsPerRow() + from / BitPlane.WORD);
            }
        }
        return reached;
    }

    /** Half the run that a set pixel g rows away reaches, or far below 0 where it reaches nothing. */
    private static int[] halves(double radius, int margin) {
        int[] halves = new int[margin + 1];
        Arrays.fill(halves, Integer.MIN_VALUE / 2);
        for (int g = 0; g <= margin; g++) {
            double left = radius * radius - (double) g * g;
            if (left > 0) {
                int half = (int) Math.sqrt(left);
                halves[g] = (double) half * half < left ? half : half - 1;
            }
        }
        return halves;
    }

    /** Leaves below 0 whatever is reached. */
    private static void sweep(ColumnDistances distances, int y, int[] halves, int[] near) {
        int columns = distances.columns();
        short[] all = distances.distances();
        int at = y * columns;
        int reach = Integer.MIN_VALUE / 2;
        for (int c = 0; c < columns; c++) {
            int half = halves[all[at + c]];
            reach = Math.max(reach, c + half);
            near[c] = c - reach - 1;
        }
        reach = Integer.MAX_VALUE / 2;
        for (int c = columns - 1; c >= 0; c--) {
            int half = halves[all[at + c]];
            reach = Math.min(reach, c - half);
            near[c] = Math.min(near[c], reach - c - 1);
        }
    }

    private static void pack(int[] near, int from, int count, long[] into, int at) {
        for (int word = 0; word < count / BitPlane.WORD; word++) {
            long bits = 0;
            int start = from + word * BitPlane.WORD;
            for (int bit = 0; bit < BitPlane.WORD; bit++) {
                bits = bits << 1 | near[start + bit] >>> 31;
            }
            into[at + word] = bits;
        }
    }
}
