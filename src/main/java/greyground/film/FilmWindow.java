package greyground.film;

import greyground.raster.Bands;
import greyground.raster.BitPlane;

/**
 * Rows of a film of hard dots with a halo above and below, and a word of clear film on either side; past the film's ends it is
 * clear as well. Used by one thread.
 */
final class FilmWindow {
    /** Columns of a window before the film's first. */
    static final int LEFT = BitPlane.WORD;

    private final FilmRows film;
    private final int halo;
    private final Bands.Maker<byte[]> maker;

    FilmWindow(FilmRows film, int halo) {
        this.film = film;
        this.halo = halo;
        this.maker = film.maker();
    }

    /** Rows {@code first} to {@code first + count - 1} and the halo: {@code count + 2 halo} in all. */
    BitPlane rows(int first, int count) throws Exception {
        int words = (film.width() + BitPlane.WORD - 1) / BitPlane.WORD + 2;
        BitPlane window = new BitPlane(words, count + 2 * halo);
        int from = Math.max(0, first - halo);
        int to = Math.min(film.height(), first + count + halo);
        byte[] bytes = maker.make(from, to - from);
        for (int y = from; y < to; y++) {
            window.take(y - first + halo, bytes, (y - from) * film.bytesPerRow(), film.width(), -LEFT);
        }
        return window;
    }

    /** Packs a plane as wide as the windows into rows of film. */
    byte[] packed(BitPlane rows) {
        byte[] bytes = new byte[Math.multiplyExact(rows.rows(), film.bytesPerRow())];
        for (int y = 0; y < rows.rows(); y++) {
            rows.give(y, LEFT, film.width(), bytes, y * film.bytesPerRow());
        }
        return bytes;
    }
}
