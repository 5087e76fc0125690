package greyground.app.gather;

import greyground.film.sheet.FilmRows;
import greyground.output.FilmPdfReader;
import greyground.output.FilmPdfReader.FilmStream;
import greyground.output.FilmPdfReader.ReadFilm;
import greyground.raster.Bands;
import java.io.IOException;

/**
 * A film's rows out of its PDF. They come from top to bottom; asked for rows again, it begins again. Whoever opened the reader closes it, and
 * one thread asks.
 *
 * @param reader of the PDF
 * @param index of the film in it
 * @param film what it says of itself
 */
record FilmOnFile(FilmPdfReader reader, int index, ReadFilm film) implements FilmRows {
    @Override
    public int width() {
        return film.widthPixels();
    }

    @Override
    public int height() {
        return film.heightPixels();
    }

    @Override
    public int bitsPerSample() {
        return film.bitsPerSample();
    }

    @Override
    public Bands.Maker<byte[]> maker() {
        return new Rows();
    }

    private final class Rows implements Bands.Maker<byte[]> {
        private FilmStream rows = reader.stream(index);
        private int next;

        @Override
        public byte[] make(int firstRow, int rowCount) throws IOException {
            if (firstRow < next) {
                rows.close();
                rows = reader.stream(index);
                next = 0;
            }
            byte[] band = new byte[Math.multiplyExact(rowCount, bytesPerRow())];
            for (; next < firstRow; next++) {
                rows.read(band, 0, 1);
            }
            rows.read(band, 0, rowCount);
            next += rowCount;
            clearPadding(band);
            return band;
        }

        /** Bits past a row's last pixel are nobody's. */
        private void clearPadding(byte[] band) {
            int kept = film.widthPixels() % 8;
            if (film.bitsPerSample() == 1 && kept != 0) {
                for (int last = bytesPerRow() - 1; last < band.length; last += bytesPerRow()) {
                    band[last] &= (byte) (0xFF00 >> kept);
                }
            }
        }
    }
}
