package greyground.cli;

import greyground.output.FilmPdfReader;
import greyground.raster.PixelRect;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;

/**
 * The samples of one film in a PDF, 1 bit each.
 *
 * @param film what the PDF says of it
 * @param rows row after row, each padded to whole bytes, 1 is black
 */
record FilmBits(FilmPdfReader.ReadFilm film, byte[] rows) {
    /** Reads film {@code index}, from 0. */
    static FilmBits of(Path pdf, int index) throws Exception {
        try (FilmPdfReader reader = FilmPdfReader.open(pdf)) {
            FilmPdfReader.ReadFilm film = reader.films().get(index);
            ByteArrayOutputStream rows = new ByteArrayOutputStream();
            reader.readRows(index, 256, (first, count, band) -> rows.write(band, 0, count * film.bytesPerRow()));
            return new FilmBits(film, rows.toByteArray());
        }
    }

    boolean black(int x, int y) {
        return (rows[y * film.bytesPerRow() + (x >> 3)] >> (7 - (x & 7)) & 1) == 1;
    }

    /** Share of black pixels within the plate. */
    double coverage() {
        PixelRect plate = film.plate();
        long black = 0;
        for (int y = plate.top(); y < plate.bottom(); y++) {
            for (int x = plate.left(); x < plate.right(); x++) {
                black += black(x, y) ? 1 : 0;
            }
        }
        return (double) black / ((long) plate.width() * plate.height());
    }
}
