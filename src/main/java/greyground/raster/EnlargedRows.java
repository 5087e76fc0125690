package greyground.raster;

import java.util.Arrays;

/**
 * Rows of art at film resolution, for one thread: Lanczos-3 in linear light, first across and then down.
 *
 * <p>Each art row is enlarged across once and kept in a ring while the film rows that need it go by; a film row is then a
 * weighted sum of ring rows. The sums are integers, {@code (grey - 32768) * 8192}, in loops short enough for the JIT
 * compiler to vectorise (measured: four products a loop run eight times faster than six). The centre and the 13-bit weights
 * keep any sum within ±0.64e9: overshoot multiplies the half range 32 768 by at most 1.543 in each direction, the absolute
 * sum of Lanczos-3 weights at half phase. A caller may therefore add a limit of up to ±{@link #BEYOND} and read the sign.
 *
 * <p>Owned by one thread: the ring and the scratch rows are reused from call to call. The plane is shared and only read.
 */
public final class EnlargedRows {
    /** Larger than any sum. */
    public static final int BEYOND = 660_000_000;

    private static final int CENTRE = 32_768;
    // Adding this before truncation keeps the truncated number positive, so it rounds half up on both sides of zero.
    private static final float LIFT = 262_144.5f;
    private static final int LIFTED = 262_144;
    private static final int EMPTY = -1;

    private final GreyPlane plane;
    private final ResampleAxis across;
    private final ResampleAxis down;
    private final int lead;
    private final int[][] ring;
    private final int[] ringRow;
    private final int[] weights;
    private final short[] codes;
    private final float[] greys;

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
        this.ring = new int[down.taps()][lead + across.count()];
        this.ringRow = new int[down.taps()];
        Arrays.fill(ringRow, EMPTY);
        this.weights = new int[down.taps()];
        this.codes = new short[plane.width()];
        this.greys = new float[plane.width()];
    }

    /**
     * Makes ready for film row {@code row}: enlarges the art rows it needs that the ring does not hold.
     *
     * @param row 0 to the down axis' count - 1
     */
    public void turnTo(int row) {
        int first = down.first(row);
        down.fixedWeights(row, weights);
        for (int k = 0; k < ring.length; k++) {
            int slot = (first + k) % ring.length;
            if (ringRow[slot] != first + k) {
                enlarge(first + k, ring[slot]);
                ringRow[slot] = first + k;
            }
        }
        // Weights follow the ring's slots, so that slot order never matters below.
        rotate(weights, first % ring.length);
    }

    /**
     * Adds the row's sums, {@code (grey - 32768) * 8192}, to places {@code from..to-1} of {@code sums}; place {@code lead}
     * is the first film pixel. Places below {@code lead} gain nothing.
     */
    public void addTo(int[] sums, int from, int to) {
        int k = 0;
        for (; k + 4 <= ring.length; k += 4) {
            addFour(
                    ring[k],
                    ring[k + 1],
                    ring[k + 2],
                    ring[k + 3],
                    weights[k],
                    weights[k + 1],
                    weights[k + 2],
                    weights[k + 3],
                    sums,
                    from,
                    to);
        }
        for (; k + 2 <= ring.length; k += 2) {
            addTwo(ring[k], ring[k + 1], weights[k], weights[k + 1], sums, from, to);
        }
        if (k < ring.length) {
            addOne(ring[k], weights[k], sums, from, to);
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

    private void enlarge(int artRow, int[] into) {
        plane.readRow(artRow, codes);
        for (int x = 0; x < greys.length; x++) {
            greys[x] = (codes[x] & 0xFFFF) - CENTRE;
        }
        if (across.taps() == 6) {
            acrossSix(greys, across.firsts(), across.weights(), lead, into);
        } else {
            acrossAny(greys, across.firsts(), across.weights(), across.taps(), lead, into);
        }
    }

    private static void acrossSix(float[] art, int[] firsts, float[] weights, int lead, int[] into) {
        for (int x = 0, w = 0; x < firsts.length; x++, w += 6) {
            int i = firsts[x];
            float sum = weights[w] * art[i]
                    + weights[w + 1] * art[i + 1]
                    + weights[w + 2] * art[i + 2]
                    + weights[w + 3] * art[i + 3]
                    + weights[w + 4] * art[i + 4]
                    + weights[w + 5] * art[i + 5];
            into[lead + x] = (int) (sum + LIFT) - LIFTED;
        }
    }

    private static void acrossAny(float[] art, int[] firsts, float[] weights, int taps, int lead, int[] into) {
        for (int x = 0, w = 0; x < firsts.length; x++) {
            float sum = 0;
            for (int i = firsts[x], end = i + taps; i < end; i++, w++) {
                sum += weights[w] * art[i];
            }
            into[lead + x] = (int) (sum + LIFT) - LIFTED;
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

    private static void rotate(int[] values, int by) {
        reverse(values, 0, values.length);
        reverse(values, 0, by);
        reverse(values, by, values.length);
    }

    private static void reverse(int[] values, int from, int to) {
        for (int i = from, j = to - 1; i < j; i++, j--) {
            int kept = values[i];
            values[i] = values[j];
            values[j] = kept;
        }
    }
}
