package greyground.raster;

import java.util.Arrays;
import java.util.function.DoubleBinaryOperator;

/**
 * A small figure, symmetric about a pixel's middle or about the gap to its right, as one run of pixels a row: row {@code top +
 * k} is {@code runs[k]} pixels wide. Erodes and dilates planes by it, 64 pixels at a time. Immutable.
 */
final class DiscRows {
    /** Words of scratch past both ends of a row: runs may reach 127 pixels to either side. */
    private static final int PAD = 3;

    private final int top;
    private final int[] runs;
    private final int longest;

    private DiscRows(int top, int[] runs) {
        this.top = top;
        this.runs = runs;
        this.longest = Arrays.stream(runs).max().orElse(0);
    }

    /**
     * The pixels whose centre, seen from the figure's middle, is inside.
     *
     * @param radius that no such pixel passes, at most 126
     * @param across of the middle, 0 or a half to the right of a pixel
     * @param down of the middle, 0 or a half below a pixel
     * @param outside below 0 where a pixel at an offset is inside; even in both
     */
    static DiscRows of(double radius, double across, double down, DoubleBinaryOperator outside) {
        int from = (int) Math.ceil(down - radius);
        int to = (int) Math.floor(down + radius);
        int first = to;
        int[] found = new int[Math.max(0, to - from + 1)];
        int count = 0;
        for (int j = from; j <= to; j++) {
            int run = 0;
            for (int i = (int) Math.floor(-radius); i <= radius + 1; i++) {
                run += outside.applyAsDouble(i - across, j - down) < 0 ? 1 : 0;
            }
            if (run > 0) {
                first = Math.min(first, j);
                found[count++] = run;
            }
        }
        return new DiscRows(first, Arrays.copyOf(found, count));
    }

    /** Where the figure fits into a set; past the plane's top and bottom everything does, past its sides nothing. */
    BitPlane fits(BitPlane set) {
        int words = set.wordsPerRow();
        BitPlane fits = new BitPlane(words, set.rows());
        Arrays.fill(fits.words(), -1L);
        long[] source = new long[words + 2 * PAD];
        long[] run = new long[words];
        for (int y = 0; y < set.rows(); y++) {
            System.arraycopy(set.words(), y * words, source, PAD, words);
            System.arraycopy(source, PAD, run, 0, words);
            for (int length = 1; length <= longest; length++) {
                if (length > 1) {
                    // A run grows by a pixel to the right, then by one to the left.
                    narrow(run, source, (length & 1) == 0 ? length / 2 : -(length / 2));
                }
                for (int k = 0; k < runs.length; k++) {
                    int centre = y - top - k;
                    if (runs[k] == length && centre >= 0 && centre < set.rows()) {
                        and(fits.words(), centre * words, run);
                    }
                }
            }
        }
        return fits;
    }

    /**
     * Adds the figure about every pixel of a set.
     *
     * @param from row of the set that lies on row 0 of {@code into}
     */
    void spread(BitPlane set, int from, BitPlane into) {
        int words = set.wordsPerRow();
        long[] source = new long[words + 2 * PAD];
        long[] run = new long[words];
        for (int y = 0; y < set.rows(); y++) {
            if (y - from + top + runs.length <= 0 || y - from + top >= into.rows()) {
                continue;
            }
            System.arraycopy(set.words(), y * words, source, PAD, words);
            if (isEmpty(source)) {
                continue;
            }
            System.arraycopy(source, PAD, run, 0, words);
            for (int length = 1; length <= longest; length++) {
                if (length > 1) {
                    widen(run, source, (length & 1) == 0 ? -(length / 2) : length / 2);
                }
                for (int k = 0; k < runs.length; k++) {
                    int row = y - from + top + k;
                    if (runs[k] == length && row >= 0 && row < into.rows()) {
                        or(into.words(), row * words, run);
                    }
                }
            }
        }
    }

    private static boolean isEmpty(long[] words) {
        for (long word : words) {
            if (word != 0) {
                return false;
            }
        }
        return true;
    }

    /** Keeps of {@code run} the pixels whose neighbour {@code step} to the right is set in {@code source}. */
    private static void narrow(long[] run, long[] source, int step) {
        int from = PAD + Math.floorDiv(step, BitPlane.WORD);
        int left = Math.floorMod(step, BitPlane.WORD);
        int right = BitPlane.WORD - 1 - left;
        for (int i = 0; i < run.length; i++) {
            run[i] &= source[from + i] << left | source[from + i + 1] >>> 1 >>> right;
        }
    }

    /** Adds to {@code run} the pixels whose neighbour {@code step} to the right is set in {@code source}. */
    private static void widen(long[] run, long[] source, int step) {
        int from = PAD + Math.floorDiv(step, BitPlane.WORD);
        int left = Math.floorMod(step, BitPlane.WORD);
        int right = BitPlane.WORD - 1 - left;
        for (int i = 0; i < run.length; i++) {
            run[i] |= source[from + i] << left | source[from + i + 1] >>> 1 >>> right;
        }
    }

    private static void and(long[] into, int at, long[] run) {
        for (int i = 0; i < run.length; i++) {
            into[at + i] &= run[i];
        }
    }

    private static void or(long[] into, int at, long[] run) {
        for (int i = 0; i < run.length; i++) {
            into[at + i] |= run[i];
        }
    }
}
