package greyground.film.sheet;

import greyground.raster.Bands;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.tone.ToneCurve;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * A film sheet from afar: which share of each pixel of a window is black. Marks and wedge strip come from the layout that the film
 * itself is composed of, run by run, so a mark's share is exactly the mean of the film's own pixels; a field of the strip has its even
 * tone in place of its dots.
 */
public final class SheetShares {
    private static final int BAND_ROWS = 64;

    private final Window window;
    private final float[] shares;

    /**
     * A window over a sheet.
     *
     * @param left its left edge, in film pixels of the sheet; may lie off it
     * @param top its upper edge
     * @param across film pixels of one of its pixels, above 0
     * @param down the same, downwards
     * @param width its pixels across, at least 1
     * @param height its pixels down, at least 1
     */
    public record Window(double left, double top, double across, double down, int width, int height) {}

    private SheetShares(Window window) {
        this.window = window;
        this.shares = new float[Math.multiplyExact(window.width(), window.height())];
    }

    /**
     * Marks and wedge strip, without art and legends: one share a pixel, 0 clear to 1 black, row by row.
     *
     * @param layout as the film is, mirrored or not
     * @param curve that the strip's greys go through
     */
    public static float[] of(SheetLayout layout, ToneCurve curve, Window window) {
        SheetShares made = new SheetShares(window);
        made.marks(layout.marks());
        for (Patch patch : layout.patches()) {
            made.field(patch.box(), (float) patch.coverage(curve) / ToneCurve.SOLID);
        }
        return made.shares;
    }

    /**
     * A film's own pixels, averaged.
     *
     * @param top first row of the film to be looked at
     * @param bottom first row past those
     */
    public static float[] ofFilm(FilmRows film, int top, int bottom, Window window, Progress progress)
            throws IOException {
        SheetShares made = new SheetShares(window);
        Bands.Maker<byte[]> maker = film.maker();
        double[] before = new double[film.width() + 1];
        for (int first = top; first < bottom; first += BAND_ROWS) {
            int count = Math.min(BAND_ROWS, bottom - first);
            byte[] band = maker.make(first, count);
            for (int row = 0; row < count; row++) {
                sum(film, band, row * film.bytesPerRow(), before);
                made.rows(first + row, first + row + 1, (into, part) -> made.means(into, part, before));
            }
            progress.done((double) (first + count - top) / (bottom - top));
        }
        return made.shares;
    }

    /** Blackness of all the pixels before each. */
    private static void sum(FilmRows film, byte[] band, int start, double[] before) {
        double sum = 0;
        for (int x = 0; x < film.width(); x++) {
            before[x] = sum;
            sum += switch (film.bitsPerSample()) {
                case 1 -> band[start + (x >> 3)] >> (7 - (x & 7)) & 1;
                case 8 -> (band[start + x] & 0xFF) / 255.0;
                default -> (((band[start + 2 * x] & 0xFF) << 8) | (band[start + 2 * x + 1] & 0xFF)) / 65_535.0;
            };
        }
        before[film.width()] = sum;
    }

    private void means(int row, float part, double[] before) {
        double from = between(before, window.left());
        for (int x = 0; x < window.width(); x++) {
            double to = between(before, window.left() + (x + 1) * window.across());
            shares[row * window.width() + x] += part * (float) ((to - from) / window.across());
            from = to;
        }
    }

    private static double between(double[] before, double at) {
        if (at <= 0) {
            return 0;
        }
        int whole = (int) at;
        return whole >= before.length - 1
                ? before[before.length - 1]
                : before[whole] + (at - whole) * (before[whole + 1] - before[whole]);
    }

    private void field(PixelRect box, float share) {
        if (share > 0) {
            rows(box.top(), box.bottom(), (row, part) -> run(row, part * share, box.left(), box.right()));
        }
    }

    /** Runs of several marks may overlap; black is black only once. */
    private void marks(List<Mark> marks) {
        List<Mark> waiting = new ArrayList<>(marks);
        waiting.sort(Comparator.comparingInt(mark -> mark.box().top()));
        double bottom = window.top() + window.height() * window.down();
        List<Mark> here = new ArrayList<>();
        Runs runs = new Runs();
        int next = 0;
        int y = 0;
        while (y < bottom && (next < waiting.size() || !here.isEmpty())) {
            if (here.isEmpty()) {
                y = Math.max(y, Math.max(waiting.get(next).box().top(), (int) Math.floor(Math.max(0, window.top()))));
            }
            while (next < waiting.size() && waiting.get(next).box().top() <= y) {
                here.add(waiting.get(next++));
            }
            int row = y;
            here.removeIf(mark -> mark.box().bottom() <= row);
            runs.clear();
            here.forEach(mark -> mark.spans(row, runs));
            rows(y, y + 1, (into, part) -> runs.merged((from, to) -> run(into, part, from, to)));
            y++;
        }
    }

    /** Takes a row of the window and which part of its height is meant. */
    private interface Row {
        void take(int row, float part);
    }

    private void rows(int from, int to, Row taker) {
        double first = (from - window.top()) / window.down();
        double last = (to - window.top()) / window.down();
        for (int row = Math.max(0, (int) Math.floor(first)); row < Math.min(window.height(), last); row++) {
            double part = Math.min(row + 1, last) - Math.max(row, first);
            if (part > 0) {
                taker.take(row, (float) part);
            }
        }
    }

    private void run(int row, float part, int from, int to) {
        double first = (from - window.left()) / window.across();
        double last = (to - window.left()) / window.across();
        int at = row * window.width();
        for (int x = Math.max(0, (int) Math.floor(first)); x < Math.min(window.width(), last); x++) {
            double share = Math.min(x + 1, last) - Math.max(x, first);
            if (share > 0) {
                shares[at + x] = Math.min(1, shares[at + x] + part * (float) share);
            }
        }
    }

    /** The runs of one film row. */
    private static final class Runs implements Mark.Span {
        private long[] ends = new long[64];
        private int count;

        void clear() {
            count = 0;
        }

        @Override
        public void black(int from, int to) {
            if (to > from) {
                if (count == ends.length) {
                    ends = Arrays.copyOf(ends, 2 * count);
                }
                ends[count++] = ((long) from << Integer.SIZE) | to;
            }
        }

        void merged(Mark.Span taker) {
            Arrays.sort(ends, 0, count);
            int from = 0;
            int to = -1;
            for (int i = 0; i < count; i++) {
                int start = (int) (ends[i] >> Integer.SIZE);
                if (start > to) {
                    if (to > from) {
                        taker.black(from, to);
                    }
                    from = start;
                    to = (int) ends[i];
                } else {
                    to = Math.max(to, (int) ends[i]);
                }
            }
            if (to > from) {
                taker.black(from, to);
            }
        }
    }
}
