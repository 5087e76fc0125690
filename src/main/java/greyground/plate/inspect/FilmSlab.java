package greyground.plate.inspect;

import greyground.plate.edge.LineEnvelope;
import greyground.raster.BitPlane;
import greyground.raster.ColumnDistances;
import greyground.raster.DiscReach;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The inspection of some rows of film by themselves, with enough rows and columns about them to judge every one of their
 * pixels. What is found is a bitmap for each kind, in whole rows, so that it makes no difference where slabs part.
 */
final class FilmSlab {
    private static final int STRIP = 512;

    /** A corner of a land or opening rounds off by (sqrt 2 - 1) of the radius, 0.21 of the width. */
    private static final double CORNER = 0.21;

    final int firstRow;
    final int rows;
    final BitPlane lostLands;
    final BitPlane shutOpenings;
    final BitPlane lands;
    final @Nullable BitPlane sites;
    final WidestRuns widest = new WidestRuns();
    final BitPlane black;
    final long blackPixels;
    final long shutPixels;
    final long lostPixels;

    /**
     * Inspects.
     *
     * @param window rows of film
     * @param halo rows of the window above the slab's, and at least as many below
     * @param firstRow of the slab, told on
     * @param rows of the slab
     * @param left first column of the plate in the window
     * @param right past the last column of the plate
     */
    FilmSlab(BitPlane window, int halo, int firstRow, int rows, int left, int right, BareCopper copper) {
        this.firstRow = firstRow;
        this.rows = rows;
        black = window.rows(halo, rows);
        BitPlane openings = copper.openings(window);
        BitPlane living = copper.landsBetween(openings);
        lands = living.rows(halo, rows);
        shutOpenings = lost(window, openings, copper.openingPixels(), halo, rows);
        lostLands =
                lost(openings.turned(), living, copper.landPixels(), halo, rows).without(black);
        long blacks = 0;
        long open = 0;
        long lost = 0;
        BitPlane dead = black.with(lands).turned();
        for (int y = 0; y < rows; y++) {
            blacks += black.count(y, left, right);
            open += openings.count(y + halo, left, right);
            lost += dead.count(y, left, right);
        }
        blackPixels = blacks;
        shutPixels = blacks - open;
        lostPixels = lost;
        double pad = copper.padRadiusPixels();
        int about = (int) Math.ceil(pad);
        BitPlane wiped = copper.wipedOut(living, halo - about, rows + 2 * about);
        if (wiped.isEmpty()) {
            sites = null;
        } else {
            sites = DiscReach.within(wiped, pad, about, rows);
            measure(living, wiped, halo, about, left, right, copper.farthestPixels());
        }
    }

    /** What an opening took away, without the corners of what it left. */
    private static BitPlane lost(BitPlane all, BitPlane kept, double widthPixels, int halo, int rows) {
        if (widthPixels <= 1) {
            return new BitPlane(all.wordsPerRow(), rows);
        }
        int steps = 1 + (int) (CORNER * widthPixels);
        BitPlane near = kept.rows(halo - steps, rows + 2 * steps);
        BitPlane mask = all.rows(halo - steps, rows + 2 * steps);
        for (int step = 0; step < steps; step++) {
            near = grown(near, mask);
        }
        return mask.without(near).rows(steps, rows);
    }

    /** One pixel farther in all eight directions, within a mask. */
    private static BitPlane grown(BitPlane set, BitPlane mask) {
        int words = set.wordsPerRow();
        BitPlane grown = new BitPlane(words, set.rows());
        long[] from = set.words();
        long[] wide = new long[from.length];
        for (int y = 0; y < set.rows(); y++) {
            int row = y * words;
            for (int i = row; i < row + words; i++) {
                long left = i > row ? from[i - 1] << 63 : 0;
                long right = i + 1 < row + words ? from[i + 1] >>> 63 : 0;
                wide[i] = from[i] | from[i] >>> 1 | left | from[i] << 1 | right;
            }
        }
        for (int i = 0; i < wide.length; i++) {
            long above = i >= words ? wide[i - words] : 0;
            long below = i + words < wide.length ? wide[i + words] : 0;
            grown.words()[i] = (wide[i] | above | below) & mask.words()[i];
        }
        return grown;
    }

    /** Finds, for each run of wiped-out pixels in the slab's rows, the pixel farthest from any living land. */
    private void measure(BitPlane living, BitPlane wiped, int halo, int about, int left, int right, int most) {
        ColumnDistances columns = new ColumnDistances();
        BitPlane near = living.rows(halo - most, rows + 2 * most);
        LineEnvelope envelope = new LineEnvelope(STRIP + 2 * most);
        float[] line = new float[STRIP + 2 * most];
        float farthest = (float) most * most;
        for (int from = left; from < right; from += STRIP) {
            int to = Math.min(right, from + STRIP);
            if (isEmpty(wiped, about, from, to)) {
                continue;
            }
            int count = to - from + 2 * most;
            columns.measure(near, from - most, count, most);
            for (int y = 0; y < rows; y++) {
                if (wiped.count(about + y, from, to) == 0) {
                    continue;
                }
                int at = (most + y) * count;
                Arrays.fill(line, 0, count, farthest);
                envelope.clear();
                for (int c = 0; c < count; c++) {
                    int g = columns.distances()[at + c];
                    if (g < most) {
                        envelope.add(c, (double) g * g);
                    }
                }
                envelope.fill(line, 0, count, 1);
                widest.add(wiped, about + y, from, to, y, line, most, farthest);
            }
        }
        widest.sort();
    }

    private boolean isEmpty(BitPlane plane, int firstRow, int from, int to) {
        for (int y = 0; y < rows; y++) {
            if (plane.count(firstRow + y, from, to) > 0) {
                return false;
            }
        }
        return true;
    }
}
