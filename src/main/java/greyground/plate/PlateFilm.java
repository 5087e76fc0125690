package greyground.plate;

import greyground.raster.BitPlane;
import java.io.Closeable;
import java.io.IOException;

/**
 * The film that lies on a whole plate, at the film printer's own pixels, as the print reads: a mirrored film is turned back.
 * Columns and rows count from the plate's top left corner; past the plate the film goes on with its bleed, and past the film
 * it is clear.
 */
public interface PlateFilm {
    /** Film pixels across the plate. */
    int width();

    /** Film pixels down the plate. */
    int height();

    /** Centre-to-centre distance of film pixels. */
    double pitchMicrometres();

    /** Begins to read at the top. */
    Rows open();

    /** Reads downwards; one thread at a time. */
    interface Rows extends Closeable {
        /**
         * Reads rows; they may overlap those read before, but never start above them.
         *
         * @param firstRow below 0 above the plate
         * @param rowCount at least 1
         */
        Strip strip(int firstRow, int rowCount) throws IOException;
    }

    /** Some rows, held in memory; any thread may cut from it. */
    @FunctionalInterface
    interface Strip {
        /**
         * Cuts the strip's whole height.
         *
         * @param left first column, below 0 to the left of the plate
         * @param width columns, at least 1
         * @return bounded, and placed on the plate
         */
        FilmPatch cut(int left, int width);

        /**
         * The strip's whole height as packed bits, of a film that has bits.
         *
         * @param left first column, which becomes column 0
         * @param width columns; what follows them up to a whole word is unsaid
         */
        default BitPlane bits(int left, int width) {
            FilmPatch patch = cut(left, width);
            int words = (width + BitPlane.WORD - 1) / BitPlane.WORD;
            BitPlane bits = new BitPlane(words, patch.height());
            for (int y = 0; y < patch.height(); y++) {
                for (int x = 0; x < width; x++) {
                    if (patch.black(x, y)) {
                        bits.words()[y * words + (x >> 6)] |= Long.MIN_VALUE >>> x;
                    }
                }
            }
            return bits;
        }
    }
}
