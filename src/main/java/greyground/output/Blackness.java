package greyground.output;

import greyground.film.sheet.FilmRows;
import greyground.raster.Bands;
import greyground.raster.Progress;
import java.util.function.Supplier;

/** How a film's samples, which count black, become a file's samples. */
enum Blackness {
    /** The file counts black too. */
    KEPT,
    /** The file counts light: every sample is taken from its largest value, which turns every bit over. */
    TURNED;

    /** Bands of the film as the file wants them. Bits that only fill a row up are clear in the one and set in the other. */
    Supplier<Bands.Maker<byte[]>> bands(FilmRows rows) {
        if (this == KEPT) {
            return rows::maker;
        }
        return () -> {
            Bands.Maker<byte[]> maker = rows.maker();
            return (first, count) -> turned(maker.make(first, count));
        };
    }

    /** Turns a band over where it lies. */
    static byte[] turned(byte[] band) {
        turn(band, 0, band.length);
        return band;
    }

    /** Turns part of a band over where it lies. */
    static void turn(byte[] band, int offset, int count) {
        for (int i = offset; i < offset + count; i++) {
            band[i] = (byte) ~band[i];
        }
    }

    /** The watcher of film {@code index} of {@code count}. */
    static Progress share(Progress progress, int index, int count) {
        return progress.part((double) index / count, (index + 1.0) / count);
    }
}
