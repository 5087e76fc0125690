package greyground.film;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.Bands;
import java.util.ArrayList;
import java.util.List;

/**
 * A film too large for the printer's sheet, cut into several that overlap by 10 mm so that they can be taped over a light
 * table: the same pixels, sheet by sheet, left to right and top to bottom.
 */
public final class SheetTiles {
    private static final double OVERLAP_MILLIMETRES = 10;
    private static final double LEAST_SHEET_MILLIMETRES = 50;

    private SheetTiles() {}

    /**
     * One sheet of several.
     *
     * @param place on the whole film, in film pixels; its left edge is a multiple of 8
     * @param column from 1
     * @param row from 1
     * @param words such as "sheet 2 of 4 (column 2, row 1)"
     * @param rows the sheet's own samples
     */
    public record Tile(PixelRect place, int column, int row, String words, FilmRows rows) {}

    /**
     * Cuts a film.
     *
     * @param film the whole
     * @param sheet the printer's sheet, 50 mm or more each way
     */
    public static List<Tile> cut(FilmRows film, Resolution resolution, Size sheet) {
        String remedy = "give the film printer's sheet";
        Refusal.checkRange("sheet width", sheet.widthMillimetres(), LEAST_SHEET_MILLIMETRES, 10_000, "mm", remedy);
        Refusal.checkRange("sheet height", sheet.heightMillimetres(), LEAST_SHEET_MILLIMETRES, 10_000, "mm", remedy);
        int overlap = resolution.pixels(OVERLAP_MILLIMETRES);
        // Rounded down: a sheet must not grow past what the printer holds. Whole bytes across, so that bits need no
        // shifting.
        int wide = (int) Math.min(film.width(), Math.floor(pixels(resolution, sheet.widthMillimetres())));
        int high = (int) Math.min(film.height(), Math.floor(pixels(resolution, sheet.heightMillimetres())));
        int stepAcross = Math.max(8, (wide - overlap) & ~7);
        int stepDown = Math.max(1, high - overlap);
        int columns = steps(film.width(), wide, stepAcross);
        int rows = steps(film.height(), high, stepDown);
        List<Tile> tiles = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                int left = column * stepAcross;
                int top = row * stepDown;
                PixelRect place = new PixelRect(
                        left, top, Math.min(wide, film.width() - left), Math.min(high, film.height() - top));
                String words = "sheet " + (row * columns + column + 1) + " of " + rows * columns + " (column "
                        + (column + 1) + ", row " + (row + 1) + ")";
                tiles.add(new Tile(place, column + 1, row + 1, words, new Part(film, place)));
            }
        }
        return tiles;
    }

    private static double pixels(Resolution resolution, double millimetres) {
        return millimetres / resolution.millimetres(1);
    }

    private static int steps(int whole, int sheet, int step) {
        return whole <= sheet ? 1 : 1 + (whole - sheet + step - 1) / step;
    }

    /** The pixels of one rectangle of a film. */
    private record Part(FilmRows film, PixelRect place) implements FilmRows {
        @Override
        public int width() {
            return place.width();
        }

        @Override
        public int height() {
            return place.height();
        }

        @Override
        public int bitsPerSample() {
            return film.bitsPerSample();
        }

        @Override
        public Bands.Maker<byte[]> maker() {
            Bands.Maker<byte[]> whole = film.maker();
            int skip = place.left() * film.bitsPerSample() / 8;
            int bytes = bytesPerRow();
            int unused = bytes * 8 - place.width() * film.bitsPerSample();
            return (firstRow, rowCount) -> {
                byte[] wide = whole.make(place.top() + firstRow, rowCount);
                byte[] band = new byte[Math.multiplyExact(rowCount, bytes)];
                for (int row = 0; row < rowCount; row++) {
                    System.arraycopy(wide, row * film.bytesPerRow() + skip, band, row * bytes, bytes);
                    // Bits past the sheet's edge belong to the neighbour.
                    band[row * bytes + bytes - 1] &= (byte) (0xFF << unused);
                }
                return band;
            };
        }
    }
}
