package greyground.film.sheet;

import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.Bands;
import greyground.raster.PixelRect;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;

/**
 * Splits a sheet that no film is large enough for over several films with an overlap.
 *
 * <p>Each tile repeats its neighbours' edge, has a clear border and, in the border, register marks where the middle of the overlap
 * runs: lay mark on mark on the light table, cut through both films along them, and tape. {@link Seams} says where.
 */
public final class SheetTiles {
    /** Enough to match the grain under a loupe (assumed). */
    private static final double OVERLAP_MILLIMETRES = 10;

    /** Room for ticks, words and tape; the words as large as on the sheet itself (assumed). */
    private static final double BORDER_MILLIMETRES = 8;

    /** A quarter point, as the sheet's other marks: {@link PlateMarks}. */
    private static final double LINE_MILLIMETRES = 25.4 / 288;

    private static final double CROSS_MILLIMETRES = 6;
    private static final double CIRCLE_MILLIMETRES = 3;
    /** How far a legend keeps off the cut, and begins from the sheet's edge: {@link SheetLayout}. */
    private static final double BESIDE_LINES_MILLIMETRES = 8;

    private static final double CAP_MILLIMETRES = 1.8;
    private static final int MOST_TILES = 64;

    private SheetTiles() {}

    /** The longest legend that goes on a tile of films of this size, beside its border and half an overlap. */
    public static double widestLineMillimetres(Size film) {
        return film.widthMillimetres() - 2 * BORDER_MILLIMETRES - OVERLAP_MILLIMETRES / 2 - BESIDE_LINES_MILLIMETRES;
    }

    /**
     * One film of several.
     *
     * @param sheet where everything lies on it
     * @param rows its samples
     * @param window what it shows of the whole film
     * @param border clear pixels around that
     */
    public record Tile(Sheet sheet, FilmRows rows, PixelRect window, int border) {}

    /** How near to a tile's edges a register mark comes. */
    private static final double CLEAR_MILLIMETRES = (BORDER_MILLIMETRES - CROSS_MILLIMETRES) / 2;

    /**
     * Splits {@code rows}, laid out as {@code whole}, over films of size {@code sheet}; row by row from the top left. Tiles are so much smaller
     * than their films that no mark lies in a margin which the printer leaves unprinted.
     */
    public static List<Tile> of(Sheet whole, FilmRows rows, Size sheet, double marginMillimetres) {
        double edges = 2 * Math.max(0, marginMillimetres - CLEAR_MILLIMETRES);
        Size film =
                new Size(Math.max(1, sheet.widthMillimetres() - edges), Math.max(1, sheet.heightMillimetres() - edges));
        int border = whole8(whole.resolution().pixels(BORDER_MILLIMETRES));
        int overlap = whole8(whole.resolution().pixels(OVERLAP_MILLIMETRES));
        int across = whole.pixels().across(film.widthMillimetres()) / 8 * 8 - 2 * border;
        int down = whole.pixels().down(film.heightMillimetres()) / 8 * 8 - 2 * border;
        if (across < 2 * overlap || down < 2 * overlap) {
            throw Refusal.use("the sheet is " + sheet + ", of which " + film + " can be used; tiles need 40 x 40 mm:"
                    + " give a larger sheet");
        }
        List<PixelRect> windows = new ArrayList<>();
        List<Integer> lefts = new Seams(whole.widthPixels(), across, overlap)
                .starts(stretches(whole, PixelRect::left, PixelRect::right));
        List<Integer> tops = new Seams(whole.heightPixels(), down, overlap)
                .starts(stretches(whole, PixelRect::top, PixelRect::bottom));
        if ((long) lefts.size() * tops.size() > MOST_TILES) {
            throw Refusal.use("a film of " + whole.widthPixels() + " x " + whole.heightPixels() + " pixels would take "
                    + lefts.size() * tops.size() + " tiles of " + sheet + "; at most " + MOST_TILES
                    + " are made: give a larger sheet");
        }
        for (int row = 0; row < tops.size(); row++) {
            for (int column = 0; column < lefts.size(); column++) {
                int width = end(lefts, column, overlap, whole.widthPixels()) - lefts.get(column);
                int height = end(tops, row, overlap, whole.heightPixels()) - tops.get(row);
                windows.add(new PixelRect(lefts.get(column), tops.get(row), width, height));
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
        for (Legend legend : whole.legends()) {
            int x = whole.resolution().pixels(legend.leftMillimetres());
            int y = whole.resolution().pixels(legend.topMillimetres());
            if (within(x, window.left(), window.right(), whole.widthPixels(), overlap)
                    && within(y, window.top(), window.bottom(), whole.heightPixels(), overlap)) {
                legends.add(new Legend(
                        legend.leftMillimetres() + offsetX,
                        legend.topMillimetres() + offsetY,
                        legend.capHeightMillimetres(),
                        legend.quarterTurns(),
                        legend.text()));
            }
        }
        double baseline = BORDER_MILLIMETRES / 2 + CAP_MILLIMETRES / 2;
        legends.add(new Legend(
                BORDER_MILLIMETRES * 3, baseline, CAP_MILLIMETRES, 0, place + ": match marks, cut along them"));
        Sheet sheet = new Sheet(
                whole.pixels(),
                width,
                height,
                seen(whole.plate(), window, border),
                seen(whole.image(), window, border),
                legends);
        return new Tile(
                sheet,
                new TileRows(rows, window, border, seamMarks(whole, window, border, overlap), width, height),
                window,
                border);
    }

    /** Whether a place is on this side of the cuts through a tile's overlaps. */
    private static boolean within(int place, int from, int to, int length, int overlap) {
        return (from == 0 || place >= from + overlap / 2) && (to == length || place < to - overlap / 2);
    }

    private static int end(List<Integer> starts, int i, int overlap, int length) {
        return i + 1 < starts.size() ? starts.get(i + 1) + overlap : length;
    }

    private static List<Seams.Whole> stretches(
            Sheet sheet, ToIntFunction<PixelRect> from, ToIntFunction<PixelRect> to) {
        return sheet.undivided().stream()
                .map(rect -> new Seams.Whole(from.applyAsInt(rect), to.applyAsInt(rect)))
                .distinct()
                .toList();
    }

    /** A cross in a circle at either end of each cut, in the border. */
    private static List<Mark> seamMarks(Sheet whole, PixelRect window, int border, int overlap) {
        List<Mark> marks = new ArrayList<>();
        int upper = border / 2;
        int lower = border + window.height() + border / 2;
        int right = border + window.width() + border / 2;
        int cutLeft = border + overlap / 2;
        int cutRight = border + window.width() - overlap / 2;
        int cutBottom = border + window.height() - overlap / 2;
        for (int y : new int[] {upper, lower}) {
            if (window.left() > 0) {
                cross(marks, whole, cutLeft, y);
            }
            if (window.right() < whole.widthPixels()) {
                cross(marks, whole, cutRight, y);
            }
        }
        for (int x : new int[] {border / 2, right}) {
            if (window.top() > 0) {
                cross(marks, whole, x, border + overlap / 2);
            }
            if (window.bottom() < whole.heightPixels()) {
                cross(marks, whole, x, cutBottom);
            }
        }
        return marks;
    }

    private static void cross(List<Mark> marks, Sheet whole, int x, int y) {
        int line = Math.max(1, whole.resolution().pixels(LINE_MILLIMETRES));
        int across = whole.pixels().across(CROSS_MILLIMETRES / 2);
        int down = whole.pixels().down(CROSS_MILLIMETRES / 2);
        marks.add(new Mark.Bar(new PixelRect(x - across, y - line / 2, 2 * across, line)));
        marks.add(new Mark.Bar(new PixelRect(x - line / 2, y - down, line, 2 * down)));
        int wide = 2 * whole.pixels().across(CIRCLE_MILLIMETRES / 2) + line % 2;
        int high = 2 * whole.pixels().down(CIRCLE_MILLIMETRES / 2) + line % 2;
        if (Math.min(wide, high) > 2 * line) {
            marks.add(new Mark.Ring(new PixelRect(x - wide / 2, y - high / 2, wide, high), line));
        }
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

    private static int whole8(int pixels) {
        return (pixels + 7) / 8 * 8;
    }

    /** A window of a larger film within a clear border. Windows and borders begin on whole bytes. */
    private record TileRows(FilmRows rows, PixelRect window, int border, List<Mark> marks, int width, int height)
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
                int row = (y - first) * bytesPerRow();
                for (Mark mark : marks) {
                    mark.spans(y, (start, end) -> black(band, row, start, end - start));
                }
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
