package greyground.film.sheet;

import greyground.raster.Bands;

/**
 * A film sheet's samples, made on demand, band by band: a pure function of position.
 *
 * <p>A band is its rows one after the other, each row padded to whole bytes, first pixel in the highest bit. Samples count
 * black: with 1 bit, 1 is opaque; with 8 or 16 bits (big-endian), 0 is clear and the largest value the blackest the film
 * printer gives.
 */
public interface FilmRows {
    int width();

    int height();

    /** 1, 8 or 16. */
    int bitsPerSample();

    default int bytesPerRow() {
        return Math.toIntExact(((long) width() * bitsPerSample() + 7) / 8);
    }

    /** A new maker for one thread; each band it makes is a fresh array. */
    Bands.Maker<byte[]> maker();
}
