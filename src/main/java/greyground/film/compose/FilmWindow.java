package greyground.film.compose;

import greyground.film.sheet.FilmRows;
import greyground.raster.Bands;
import greyground.raster.BitPlane;
import greyground.raster.PixelRect;
import java.io.IOException;

/**
 * Rows of a film of hard dots about its image, with a halo on all sides; past the film's ends it is clear. Used by one thread.
 */
final class FilmWindow {
    private final FilmRows film;
    private final int halo;
    private final int firstColumn;
    private final int wordsPerRow;
    private final Bands.Maker<byte[]> maker;
    /** The film's rows made last, from row {@code madeFrom} on. */
    private byte[] made = new byte[0];

    private int madeFrom;

    /**
     * A window that sees the image and a halo about it.
     *
     * @param image on the film
     * @param halo in pixels, on all sides
     */
    FilmWindow(FilmRows film, PixelRect image, int halo) {
        this.film = film;
        this.halo = halo;
        this.firstColumn = Math.floorDiv(image.left() - halo, 8) * 8;
        this.wordsPerRow = (image.right() + halo - firstColumn + BitPlane.WORD - 1) / BitPlane.WORD;
        this.maker = film.maker();
    }

    /** The film column that is a window's column 0; may lie before the film. */
    int firstColumn() {
        return firstColumn;
    }

    /** Rows {@code first} to {@code first + count - 1} and the halo: {@code count + 2 halo} in all. */
    BitPlane rows(int first, int count) throws IOException {
        BitPlane window = new BitPlane(wordsPerRow, count + 2 * halo);
        int from = Math.max(0, first - halo);
        int to = Math.min(film.height(), first + count + halo);
        made = maker.make(from, to - from);
        madeFrom = from;
        for (int y = from; y < to; y++) {
            window.take(y - first + halo, made, (y - from) * film.bytesPerRow(), film.width(), firstColumn);
        }
        return window;
    }

    /** The film's rows with a plane, as wide as a window, put in; the rows were among those asked for last. */
    byte[] packed(BitPlane rows, int first) {
        int bytesPerRow = film.bytesPerRow();
        byte[] bytes = new byte[Math.multiplyExact(rows.rows(), bytesPerRow)];
        System.arraycopy(made, (first - madeFrom) * bytesPerRow, bytes, 0, bytes.length);
        int left = Math.max(0, firstColumn);
        int right = Math.min(film.width(), firstColumn + rows.width());
        for (int y = 0; y < rows.rows(); y++) {
            rows.give(y, left - firstColumn, right - left, bytes, y * bytesPerRow + left / 8);
        }
        return bytes;
    }
}
