package greyground.raster;

import java.util.Arrays;

/**
 * Rows of art at film resolution, for one thread: Lanczos-3 in linear light, first across and then down.
 *
 * <p>Art rows are enlarged across once, two at a time, and kept in a ring while the film rows that need them go by; a film row
 * is then a weighted sum of ring rows. Two rows share one 64-bit multiplication: a product with {@code b * 2^32 + a} holds both
 * products, exactly, as long as each sum fits 32 bits (measured: twice as fast as float arithmetic row by row). Down, the
 * sums are integers, {@code (grey - 32768) * 8192}, in loops short enough for the JIT compiler to vectorise (measured: four
 * products a loop run eight times faster than six). The centre and the 13-bit weights keep any sum within ±0.64e9:
 * overshoot multiplies the half range 32 768 by at most 1.543 in each direction, the absolute sum of Lanczos-3 weights at half
 * phase. A caller may therefore add a limit of up to ±{@link #BEYOND} and read the sign.
 *
 * <p>Owned by one thread: the ring and the scratch rows are reused from call to call. The plane is shared and only read.
 */
public final class EnlargedRows {
    /** Larger than any sum. */
    public static final int BEYOND = 660_000_000;

    private static final int CENTRE = 32_768;
    private static final int HALF = 1 << (ResampleAxis.FINE_BITS - 1);
    private static final int EMPTY = -1;

    private final GreyPlane plane;
    private final ResampleAxis across;
    private final ResampleAxis down;
    private final int lead;
    private final int[][] ring;
    private final int[][] rows;
    private final int[] ringRow;
    private final int[] weights;
    private final short[] codes;
    private final long[] greys;

    /**
     * Prepares the buffers.
     *
     * @param lead places left free before the first film pixel, for callers that pack bits from a byte boundary; 0 to 7
     */
    public EnlargedRows(GreyPlane plane, ResampleAxis across, ResampleAxis down, int lead) {
        this.plane = plane;
        this.across = across;
        this.down = down;
        this.lead = lead;
        // Room for every pair that a window of taps rows can touch.
        int room = (down.taps() + 3) & ~1;
        this.ring = new int[room][lead + across.count()];
        this.rows = new int[down.taps()][];
        this.ringRow = new int[room];
        Arrays.fill(ringRow, EMPTY);
        this.weights = new int[down.taps()];
        this.codes = new short[plane.width()];
        this.greys = new long[plane.width()];
    }

    /**
     * Makes ready for film row {@code row}: enlarges the art rows it needs that the ring does not hold.
     *
     * @param row 0 to the down axis' count - 1
     */
    public void turnTo(int row) {
        int first = down.firsts()[row];
        down.fixedWeights(row, weights);
        for (int k = 0; k < rows.length; k++) {
            int artRow = first + k;
            int slot = artRow % ring.length;
            if (ringRow[slot] != artRow) {
                enlargePair(artRow & ~1);
            }
            rows[k] = ring[slot];
        }
    }

    /**
     * Adds the row's sums, {@code (grey - 32768) * 8192}, to places {@code from..to-1} of {@code sums}; place {@code lead}
     * is the first film pixel. Places below {@code lead} gain nothing.
     */
    public void addTo(int[] sums, int from, int to) {
        int k = 0;
        for (; k + 4 <= rows.length; k += 4) {
            addFour(
                    rows[k],
                    rows[k + 1],
                    rows[k + 2],
                    rows[k + 3],
                    weights[k],
                    weights[k + 1],
                    weights[k + 2],
                    weights[k + 3],
                    sums,
                    from,
                    to);
        }
        for (; k + 2 <= rows.length; k += 2) {
            addTwo(rows[k], rows[k + 1], weights[k], weights[k + 1], sums, from, to);
        }
        if (k < rows.length) {
            addOne(rows[k], weights[k], sums, from, to);
        }
    }

    /** Reads a sum as a grey code, 0 to 65 535, rounded half up and held within the range. */
    public static int grey(int sum) {
        int grey = ((sum + (1 << (ResampleAxis.FIXED_BITS - 1))) >> ResampleAxis.FIXED_BITS) + CENTRE;
        return Math.max(0, Math.min(GreyPlane.WHITE, grey));
    }

    /**
     * What to put in a sum's place beforehand so that the sum ends below zero exactly where its {@link #grey} is below
     * {@code limit}.
     *
     * @param limit 0 (never) to 65 536 (always)
     */
    public static int start(int limit) {
        if (limit <= 0) {
            return BEYOND;
        }
        if (limit > GreyPlane.WHITE) {
            return -BEYOND;
        }
        return (1 << (ResampleAxis.FIXED_BITS - 1)) - ((limit - CENTRE) << ResampleAxis.FIXED_BITS);
    }

    private void enlargePair(int artRow) {
        int next = Math.min(artRow + 1, plane.height() - 1);
        plane.readRow(artRow, codes);
        for (int x = 0; x < greys.length; x++) {
            greys[x] = (long) (codes[x] & 0xFFFF) - CENTRE;
        }
        plane.readRow(next, codes);
        for (int x = 0; x < greys.length; x++) {
            greys[x] += (long) ((codes[x] & 0xFFFF) - CENTRE) << 32;
        }
        int slot = artRow % ring.length;
        int[] upper = ring[slot];
        int[] lower = ring[slot + 1];
        if (across.taps() == 6) {
            acrossSix(greys, across.firsts(), across.fineWeights(), lead, upper, lower);
        } else {
            acrossAny(greys, across.firsts(), across.fineWeights(), across.taps(), lead, upper, lower);
        }
        ringRow[slot] = artRow;
        ringRow[slot + 1] = artRow + 1;
    }

    private static void acrossSix(long[] art, int[] firsts, int[] weights, int lead, int[] upper, int[] lower) {
        for (int x = 0, w = 0; x < firsts.length; x++, w += 6) {
            int i = firsts[x];
            long both = weights[w] * art[i]
                    + weights[w + 1] * art[i + 1]
                    + weights[w + 2] * art[i + 2]
                    + weights[w + 3] * art[i + 3]
                    + weights[w + 4] * art[i + 4]
                    + weights[w + 5] * art[i + 5];
            int low = (int) both;
            upper[lead + x] = (low + HALF) >> ResampleAxis.FINE_BITS;
            lower[lead + x] = ((int) ((both - low) >> 32) + HALF) >> ResampleAxis.FINE_BITS;
        }
    }

    private static void acrossAny(
            long[] art, int[] firsts, int[] weights, int taps, int lead, int[] upper, int[] lower) {
        for (int x = 0, w = 0; x < firsts.length; x++) {
            long both = 0;
            for (int i = firsts[x], end = i + taps; i < end; i++, w++) {
                both += weights[w] * art[i];
            }
            int low = (int) both;
            upper[lead + x] = (low + HALF) >> ResampleAxis.FINE_BITS;
            lower[lead + x] = ((int) ((both - low) >> 32) + HALF) >> ResampleAxis.FINE_BITS;
        }
    }

    private static void addFour(
            int[] a, int[] b, int[] c, int[] d, int wa, int wb, int wc, int wd, int[] sums, int from, int to) {
        for (int x = from; x < to; x++) {
            sums[x] += wa * a[x] + wb * b[x] + wc * c[x] + wd * d[x];
        }
    }

    private static void addTwo(int[] a, int[] b, int wa, int wb, int[] sums, int from, int to) {
        for (int x = from; x < to; x++) {
            sums[x] += wa * a[x] + wb * b[x];
        }
    }

    private static void addOne(int[] a, int wa, int[] sums, int from, int to) {
        for (int x = from; x < to; x++) {
            sums[x] += wa * a[x];
        }
    }
}
