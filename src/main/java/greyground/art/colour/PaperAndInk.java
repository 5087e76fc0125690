package greyground.art.colour;

import greyground.raster.GreyPlane;
import greyground.tone.ArtRange;
import greyground.tone.Lightness;

/** Finds the luminances that count as the art's paper white and ink black. */
public final class PaperAndInk {
    /** Blocks across the longer side that the finder averages over, so that a speck of dust sets neither end (assumed). */
    private static final int BLOCKS = 1024;

    private static final int BINS = 4096;
    /** Share of blocks taken for stray light or dark: 0.5 % at either end (common practice, no source). */
    private static final double STRAY = 0.005;
    /** A paper is there when this share of blocks lies within {@link #PAPER_WIDTH} of one lightness (assumed). */
    private static final double PAPER_SHARE = 0.15;

    private static final double PAPER_WIDTH = 2;
    /** Paper is the lightest thing in a drawing: at most this share of blocks may be lighter (assumed). */
    private static final double LIGHTER_THAN_PAPER = 0.05;

    private static final double PAPER_LEAST_LIGHTNESS = 60;
    /** Ends nearer than this in L* are no range: the art is flat. */
    private static final double LEAST_SPAN = 10;

    private PaperAndInk() {}

    /**
     * Finds the ends. The plane is averaged over blocks in linear light and sorted by lightness.
     *
     * <p>Black is the 0.5 % point. White is the paper where there is one: a narrow peak at the light end, of which the darker
     * shoulder at half its height counts, so that nearly all the paper prints bare. Else it is the 99.5 % point. Flat art, whose
     * ends lie within 10 L* of each other, gets the whole scale.
     */
    public static ArtRange find(GreyPlane plane) {
        long[] bins = lightnessCounts(plane);
        long all = 0;
        for (long count : bins) {
            all += count;
        }
        double black = percentile(bins, all, STRAY);
        double paper = paper(bins, all);
        double white = paper > 0 ? paper : percentile(bins, all, 1 - STRAY);
        if (white - black < LEAST_SPAN) {
            return ArtRange.WHOLE;
        }
        return new ArtRange(Lightness.toLuminance(white), Lightness.toLuminance(black));
    }

    private static long[] lightnessCounts(GreyPlane plane) {
        int side = Math.max(1, (Math.max(plane.width(), plane.height()) + BLOCKS - 1) / BLOCKS);
        int across = (plane.width() + side - 1) / side;
        // At most this many rows of a block are read: rows cost, and a block's mean hardly changes.
        int rowStep = Math.max(1, side / 4);
        long[] bins = new long[BINS];
        long[] sums = new long[across];
        short[] row = new short[plane.width()];
        for (int top = 0; top < plane.height(); top += side) {
            java.util.Arrays.fill(sums, 0);
            int rows = 0;
            for (int y = top; y < Math.min(top + side, plane.height()); y += rowStep) {
                plane.readRow(y, row);
                rows++;
                addBlocks(row, side, sums);
            }
            for (int b = 0; b < across; b++) {
                int columns = Math.min(side, plane.width() - b * side);
                double mean = (double) sums[b] / rows / columns / GreyPlane.WHITE;
                bins[(int) Math.round(Lightness.ofLuminance(mean) / 100 * (BINS - 1))]++;
            }
        }
        return bins;
    }

    private static void addBlocks(short[] row, int side, long[] sums) {
        for (int b = 0; b < sums.length; b++) {
            int sum = 0;
            int end = Math.min(row.length, (b + 1) * side);
            for (int x = b * side; x < end; x++) {
                sum += row[x] & 0xFFFF;
            }
            sums[b] += sum;
        }
    }

    private static double lightness(int bin) {
        return 100.0 * bin / (BINS - 1);
    }

    private static double percentile(long[] bins, long all, double share) {
        long below = 0;
        for (int i = 0; i < bins.length; i++) {
            below += bins[i];
            if (below > share * all) {
                return lightness(i);
            }
        }
        return lightness(bins.length - 1);
    }

    /** L* of the paper's darker shoulder, or 0 where no peak at the light end is tall enough. */
    private static double paper(long[] bins, long all) {
        int reach = (int) Math.round(PAPER_WIDTH / 100 * (BINS - 1) / 2);
        long[] near = new long[bins.length];
        int peak = -1;
        for (int i = (int) (PAPER_LEAST_LIGHTNESS / 100 * BINS); i < bins.length; i++) {
            for (int k = Math.max(0, i - reach); k <= Math.min(bins.length - 1, i + reach); k++) {
                near[i] += bins[k];
            }
            if (peak < 0 || near[i] > near[peak]) {
                peak = i;
            }
        }
        long lighter = 0;
        for (int i = peak + 2 * reach; i < bins.length; i++) {
            lighter += bins[i];
        }
        if (near[peak] < PAPER_SHARE * all || lighter > LIGHTER_THAN_PAPER * all) {
            return 0;
        }
        int shoulder = peak;
        while (shoulder > 0 && near[shoulder] * 2 > near[peak]) {
            shoulder--;
        }
        return lightness(shoulder);
    }
}
