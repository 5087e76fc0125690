package greyground.film.sheet;

import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.Bands;
import greyground.raster.PixelRect;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Splits a sheet that no film is large enough for over several films with an overlap.
 *
 * <p>Each tile repeats its neighbours' edge, has a clear border and, in the border, ticks where the middle of the overlap
 * runs: lay tick on tick on the light table, cut through both films along it, and tape.
 */
public final class SheetTiles {
    /** Enough to match the grain under a loupe (assumed). */
    private static final double OVERLAP_MILLIMETRES = 10;

    /** Room for ticks, words and tape; the words as large as on the sheet itself (assumed). */
    private static final double BORDER_MILLIMETRES = 8;

    private static final double TICK_MILLIMETRES = 5;
    private static final double CAP_MILLIMETRES = 1.8;
    private static final int MOST_TILES = 64;

    private SheetTiles() {}

    /**
     * One film of several.
     *
     * @param sheet where everything lies on it
     * @param rows its samples
     * @param window what it shows of the whole film
     * @param border clear pixels around that
     */
    public record Tile(Sheet sheet, FilmRows rows, PixelRect window, int border) {}

    /** Splits {@code rows}, laid out as {@code whole}, over films of size {@code film}; row by row from the top left. */
    public static List<Tile> of(Sheet whole, FilmRows rows, Size film) {
        int border = whole8(whole.resolution().pixels(BORDER_MILLIMETRES));
        int overlap = whole8(whole.resolution().pixels(OVERLAP_MILLIMETRES));
        int across = whole.pixels().across(film.widthMillimetres()) / 8 * 8 - 2 * border;
        int down = whole.pixels().down(film.heightMillimetres()) / 8 * 8 - 2 * border;
        if (across < 2 * overlap || down < 2 * overlap) {
            throw Refusal.use("the sheet is " + film + "; tiles need at least 40 x 40 mm: give a larger sheet");
        }
        List<PixelRect> windows = new ArrayList<>();
        List<Integer> lefts = starts(whole.widthPixels(), across, overlap);
        List<Integer> tops = starts(whole.heightPixels(), down, overlap);
        if ((long) lefts.size() * tops.size() > MOST_TILES) {
            throw Refusal.use("a film of " + whole.widthPixels() + " x " + whole.heightPixels() + " pixels would take "
                    + lefts.size() * tops.size() + " tiles of " + film + "; at most " + MOST_TILES
                    + " are made: give a larger sheet");
        }
        for (int top : tops) {
            for (int left : lefts) {
                windows.add(new PixelRect(
                        left,
                        top,
                        Math.min(across, whole.widthPixels() - left),
                        Math.min(down, whole.heightPixels() - top)));
            }
        }
        List<Tile> tiles = new ArrayList<>();
        for (PixelRect window : windows) {
            String place = "tile " + (tiles.size() + 1) + " of " + windows.size() + ", row "
                    + (tops.indexOf(window.top()) + 1) + " column " + (lefts.indexOf(window.left()) + 1);
            tiles.add(tile(whole, rows, window, border, overlap, place));
        }
        return tiles;
    }

    private static Tile tile(Sheet whole, FilmRows rows, PixelRect window, int border, int overlap, String place) {
        int width = window.width() + 2 * border;
        int height = window.height() + 2 * border;
        List<Legend> legends = new ArrayList<>();
        double offsetX = whole.resolution().millimetres(border - window.left());
        double offsetY = whole.resolution().millimetres(border - window.top());
        double rightEdge = whole.resolution().millimetres(border + window.width());
        double bottomEdge = whole.resolution().millimetres(border + window.height());
        for (Legend legend : whole.legends()) {
            double x = legend.leftMillimetres() + offsetX;
            double y = legend.topMillimetres() + offsetY;
            double from = whole.resolution().millimetres(border);
            if (x >= from && x < rightEdge && y >= from && y < bottomEdge) {
                legends.add(new Legend(x, y, legend.capHeightMillimetres(), legend.quarterTurns(), legend.text()));
            }
        }
        double baseline = BORDER_MILLIMETRES / 2 + CAP_MILLIMETRES / 2;
        legends.add(new Legend(
                BORDER_MILLIMETRES * 3, baseline, CAP_MILLIMETRES, 0, place + ": match ticks, cut along them"));
        Sheet sheet = new Sheet(
                whole.pixels(),
                width,
                height,
                seen(whole.plate(), window, border),
                seen(whole.image(), window, border),
                legends);
        return new Tile(sheet, new TileRows(rows, window, border, overlap, width, height), window, border);
    }

    /** The part of a rectangle that a tile shows, in the tile's pixels; the whole window where it shows none of it. */
    private static PixelRect seen(PixelRect rect, PixelRect window, int border) {
        if (!rect.meets(window)) {
            return new PixelRect(border, border, window.width(), window.height());
        }
        int left = Math.max(rect.left(), window.left());
        int top = Math.max(rect.top(), window.top());
        int right = Math.min(rect.right(), window.right());
        int bottom = Math.min(rect.bottom(), window.bottom());
        return new PixelRect(left - window.left() + border, top - window.top() + border, right - left, bottom - top);
    }

    private static List<Integer> starts(int length, int window, int overlap) {
        List<Integer> starts = new ArrayList<>();
        int start = 0;
        starts.add(start);
        while (start + window < length) {
            start += window - overlap;
            starts.add(start);
        }
        return starts;
    }

    private static int whole8(int pixels) {
        return (pixels + 7) / 8 * 8;
    }

    /** A window of a larger film within a clear border. Windows and borders begin on whole bytes. */
    private record TileRows(FilmRows rows, PixelRect window, int border, int overlap, int width, int height)
            implements FilmRows {
        @Override
        public int bitsPerSample() {
            return rows.bitsPerSample();
        }

        @Override
        public Bands.Maker<byte[]> maker() {
            Bands.Maker<byte[]> source = rows.maker();
            return (first, count) -> band(source, first, count);
        }

        private byte[] band(Bands.Maker<byte[]> source, int first, int count) throws IOException {
            byte[] band = new byte[Math.multiplyExact(count, bytesPerRow())];
            int from = Math.max(first, border);
            int to = Math.min(first + count, border + window.height());
            if (from < to) {
                byte[] inside = source.make(window.top() + from - border, to - from);
                int skip = window.left() / 8 * bitsPerSample();
                int length = (window.width() * bitsPerSample() + 7) / 8;
                for (int y = from; y < to; y++) {
                    int at = (y - first) * bytesPerRow() + border / 8 * bitsPerSample();
                    System.arraycopy(inside, (y - from) * rows.bytesPerRow() + skip, band, at, length);
                    clearPast(band, at, length);
                }
            }
            for (int y = first; y < first + count; y++) {
                tick(band, (y - first) * bytesPerRow(), y);
            }
            return band;
        }

        /** The last byte may hold pixels past the window. */
        private void clearPast(byte[] band, int at, int length) {
            int past = length * 8 - window.width() * bitsPerSample();
            if (past > 0) {
                band[at + length - 1] &= (byte) (0xFF << past);
            }
        }

        private void tick(byte[] band, int row, int y) {
            int reach = (int) (border * TICK_MILLIMETRES / BORDER_MILLIMETRES);
            boolean inBorder = (y >= border - reach && y < border)
                    || (y >= border + window.height() && y < border + window.height() + reach);
            if (inBorder) {
                if (window.left() > 0) {
                    black(band, row, border + overlap / 2, 1);
                }
                if (window.right() < rows.width()) {
                    black(band, row, border + window.width() - overlap / 2, 1);
                }
            }
            boolean atTop = window.top() > 0 && y == border + overlap / 2;
            boolean atBottom = window.bottom() < rows.height() && y == border + window.height() - overlap / 2;
            if (atTop || atBottom) {
                black(band, row, border - reach, reach);
                black(band, row, border + window.width(), reach);
            }
        }

        private void black(byte[] band, int row, int x, int count) {
            for (int i = x; i < x + count; i++) {
                if (bitsPerSample() == 1) {
                    band[row + i / 8] |= (byte) (0x80 >> (i & 7));
                } else {
                    int bytes = bitsPerSample() / 8;
                    for (int b = 0; b < bytes; b++) {
                        band[row + i * bytes + b] = (byte) 0xFF;
                    }
                }
            }
        }
    }
}
