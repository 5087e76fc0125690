package greyground.raster;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Keeps of a set what a disc of some width covers without leaving it: a morphological opening (Serra 1982, from memory), 64
 * pixels at a time.
 *
 * <p>The disc's centre may lie on a pixel, midway between two, or at a corner of four; what any of the four covers stays. A
 * pixel blocks the disc where its own square would be entered through a side, or where its centre comes nearer than half the
 * width and half a pixel. So bars along the raster are judged exactly, odd widths or even; slanted ones pass for up to 0.3 pixel
 * narrower than they are. Widths to one pixel change nothing. The result does not depend on how the plane lies.
 *
 * <p>Past the plane's edges there is nothing above and below, and no set pixel left and right: what lies nearer to an edge
 * than {@link #reach} is not to be trusted. Immutable; shared by all threads.
 */
public final class DiscOpening {
    private static final double WIDEST_PIXELS = 240;

    /** Words of scratch past both ends of a row, enough for half the widest disc. */
    private static final int PAD = 3;

    private final List<Phase> phases;
    private final int reach;

    /**
     * Rows of one disc: row {@code top + k} is {@code runs[k]} pixels wide, centred on the pixel, or on the gap to its right.
     *
     * @param even whether runs are even
     */
    @SuppressWarnings("ArrayRecordComponent") // private, never compared
    private record Phase(int top, int[] runs, boolean even, int longest) {}

    /**
     * An opening by one disc.
     *
     * @param widthPixels 0 to 240
     */
    public DiscOpening(double widthPixels) {
        Refusal.checkRange(
                "narrowest part", widthPixels, 0, WIDEST_PIXELS, "film pixels", "give a smaller width or resolution");
        List<Phase> all = new ArrayList<>();
        if (widthPixels > 1) {
            double radius = widthPixels / 2 + 0.5;
            for (int half = 0; half < 4; half++) {
                all.add(phase(radius, (half & 1) / 2.0, (half >> 1) / 2.0));
            }
        }
        phases = List.copyOf(all);
        reach = phases.isEmpty() ? 0 : 2 * ((int) Math.ceil(widthPixels / 2) + 1);
    }

    private static Phase phase(double radius, double across, double down) {
        int top = (int) Math.ceil(down - radius);
        List<Integer> runs = new ArrayList<>();
        int first = 0;
        int longest = 0;
        for (int j = top; j <= down + radius; j++) {
            int run = run(radius, across, j - down);
            if (run > 0) {
                first = runs.isEmpty() ? j : first;
                runs.add(run);
                longest = Math.max(longest, run);
            }
        }
        return new Phase(first, runs.stream().mapToInt(Integer::intValue).toArray(), across > 0, longest);
    }

    private static int run(double radius, double across, double down) {
        int run = 0;
        for (int i = (int) Math.floor(-radius); i <= radius + 1; i++) {
            double dx = Math.abs(i - across);
            double dy = Math.abs(down);
            boolean inside = dx * dx + dy * dy < radius * radius;
            boolean throughSide = (dx <= 0.5 && dy < radius) || (dy <= 0.5 && dx < radius);
            run += inside || throughSide ? 1 : 0;
        }
        return run;
    }

    /** How far beyond a pixel others can matter to it, in pixels each way. */
    public int reach() {
        return reach;
    }

    /** What stays of the set. */
    public BitPlane of(BitPlane set) {
        if (phases.isEmpty()) {
            return set.rows(0, set.rows());
        }
        BitPlane kept = new BitPlane(set.wordsPerRow(), set.rows());
        for (Phase phase : phases) {
            spread(phase, fits(phase, set), kept);
        }
        return kept;
    }

    /** Where the disc's centre may lie. */
    private static BitPlane fits(Phase phase, BitPlane set) {
        int words = set.wordsPerRow();
        BitPlane fits = new BitPlane(words, set.rows());
        Arrays.fill(fits.words(), -1L);
        long[] source = new long[words + 2 * PAD];
        long[] run = new long[words];
        for (int y = 0; y < set.rows(); y++) {
            System.arraycopy(set.words(), y * words, source, PAD, words);
            System.arraycopy(source, PAD, run, 0, words);
            for (int length = 1; length <= phase.longest(); length++) {
                if (length > 1) {
                    // A run grows by a pixel to the right, then by one to the left.
                    narrow(run, source, (length & 1) == 0 ? length / 2 : -(length / 2));
                }
                for (int k = 0; k < phase.runs().length; k++) {
                    int centre = y - phase.top() - k;
                    if (phase.runs()[k] == length && centre >= 0 && centre < set.rows()) {
                        and(fits.words(), centre * words, run);
                    }
                }
            }
        }
        return fits;
    }

    private static void spread(Phase phase, BitPlane fits, BitPlane kept) {
        int words = fits.wordsPerRow();
        long[] source = new long[words + 2 * PAD];
        long[] run = new long[words];
        for (int y = 0; y < fits.rows(); y++) {
            System.arraycopy(fits.words(), y * words, source, PAD, words);
            if (isEmpty(source)) {
                continue;
            }
            System.arraycopy(source, PAD, run, 0, words);
            for (int length = 1; length <= phase.longest(); length++) {
                if (length > 1) {
                    widen(run, source, (length & 1) == 0 ? -(length / 2) : length / 2);
                }
                for (int k = 0; k < phase.runs().length; k++) {
                    int row = y + phase.top() + k;
                    if (phase.runs()[k] == length && row >= 0 && row < kept.rows()) {
                        or(kept.words(), row * words, run);
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
        int right = BitPlane.WORD - left;
        if (left == 0) {
            for (int i = 0; i < run.length; i++) {
                run[i] &= source[from + i];
            }
            return;
        }
        for (int i = 0; i < run.length; i++) {
            run[i] &= source[from + i] << left | source[from + i + 1] >>> right;
        }
    }

    /** Adds to {@code run} the pixels whose neighbour {@code step} to the right is set in {@code source}. */
    private static void widen(long[] run, long[] source, int step) {
        int from = PAD + Math.floorDiv(step, BitPlane.WORD);
        int left = Math.floorMod(step, BitPlane.WORD);
        int right = BitPlane.WORD - left;
        if (left == 0) {
            for (int i = 0; i < run.length; i++) {
                run[i] |= source[from + i];
            }
            return;
        }
        for (int i = 0; i < run.length; i++) {
            run[i] |= source[from + i] << left | source[from + i + 1] >>> right;
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
