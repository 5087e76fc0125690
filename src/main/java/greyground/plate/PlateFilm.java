package greyground.plate;

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
    }
}
