package greyground.film.compose;

import greyground.grain.ThresholdTile;
import greyground.raster.EnlargedRows;
import greyground.tone.ToneCurve;

/**
 * A grain seen through a tone curve: for each film pixel, the grey below which it turns black.
 *
 * <p>A pixel is black where {@code curve(grey) > threshold}. The curve never rises, so that is the same as
 * {@code grey < limit(threshold)} with the first grey whose coverage is no more than the threshold: exact, and the curve
 * need not be looked up again for each of hundreds of millions of pixels. Limits are kept as {@link EnlargedRows#start}
 * puts them.
 *
 * <p>Immutable; shared by all threads. Small tiles are kept as limits, large ones turned row by row.
 */
final class GrainLimits {
    private static final long KEPT_PIXELS = 1 << 23;

    private final ThresholdTile tile;
    private final int[] startByThreshold;
    private final boolean mirrored;
    private final int sheetWidth;
    private final int[] kept;

    private GrainLimits(ThresholdTile tile, int[] startByThreshold, boolean mirrored, int sheetWidth) {
        this.tile = tile;
        this.startByThreshold = startByThreshold;
        this.mirrored = mirrored;
        this.sheetWidth = sheetWidth;
        this.kept = (long) tile.width() * tile.height() <= KEPT_PIXELS ? keep() : new int[0];
    }

    static GrainLimits of(ThresholdTile tile, ToneCurve curve, boolean mirrored, int sheetWidth) {
        int[] starts = new int[ToneCurve.SOLID];
        int grey = 0;
        for (int threshold = ToneCurve.SOLID - 1; threshold >= 0; threshold--) {
            while (grey < ToneCurve.CODES && curve.coverage(grey) > threshold) {
                grey++;
            }
            starts[threshold] = EnlargedRows.start(grey);
        }
        return new GrainLimits(tile, starts, mirrored, sheetWidth);
    }

    /** Limits of one coverage all over, whatever the art. */
    static GrainLimits of(ThresholdTile tile, int coverage, boolean mirrored, int sheetWidth) {
        int[] starts = new int[ToneCurve.SOLID];
        for (int threshold = 0; threshold < starts.length; threshold++) {
            starts[threshold] = coverage > threshold ? -EnlargedRows.BEYOND : EnlargedRows.BEYOND;
        }
        return new GrainLimits(tile, starts, mirrored, sheetWidth);
    }

    /** The film pixel's own threshold, for fields that pass the curve by. */
    int threshold(int x, int y) {
        return tile.threshold(mirrored ? sheetWidth - 1 - x : x, y);
    }

    /** The start of a pixel of another threshold; below 0 for black, {@link ToneCurve#SOLID} for clear, whatever the art. */
    int start(int threshold) {
        return threshold < 0
                ? -EnlargedRows.BEYOND
                : threshold >= startByThreshold.length ? EnlargedRows.BEYOND : startByThreshold[threshold];
    }

    /**
     * Writes the starts of film row {@code y}.
     *
     * @param x film column of the first
     * @param into receives {@code count} starts from place {@code at} on
     * @param thresholds scratch for large tiles, at least {@code count} long
     */
    void copyRow(int x, int y, int count, int[] into, int at, char[] thresholds) {
        if (kept.length == 0) {
            turnRow(x, y, count, into, at, thresholds);
            return;
        }
        int period = tile.width();
        int row = Math.floorMod(y, tile.height()) * period;
        int column = Math.floorMod(mirrored ? x - sheetWidth : x, period);
        int written = 0;
        while (written < count) {
            int run = Math.min(period - column, count - written);
            System.arraycopy(kept, row + column, into, at + written, run);
            written += run;
            column = 0;
        }
    }

    private void turnRow(int x, int y, int count, int[] into, int at, char[] thresholds) {
        int from = mirrored ? sheetWidth - x - count : x;
        tile.copyRow(from, y, count, thresholds);
        for (int i = 0; i < count; i++) {
            into[at + i] = startByThreshold[thresholds[mirrored ? count - 1 - i : i]];
        }
    }

    private int[] keep() {
        int width = tile.width();
        int[] limits = new int[width * tile.height()];
        char[] row = new char[width];
        for (int y = 0; y < tile.height(); y++) {
            tile.copyRow(0, y, width, row);
            for (int x = 0; x < width; x++) {
                limits[y * width + x] = startByThreshold[row[mirrored ? width - 1 - x : x]];
            }
        }
        return limits;
    }
}
