package greyground.output;

import greyground.output.FilmPdfReader.FilmStream;
import greyground.output.FilmPdfReader.ReadFilm;
import greyground.raster.Progress;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;

/** A film drawn band by band, each pixel as one pixel of a picture that is laid down at its true size. */
final class FilmBands {
    private static final byte PAPER = (byte) 0xFF;
    private static final byte[] CLEAR_AND_BLACK = {PAPER, 0};
    private static final IndexColorModel BITS =
            new IndexColorModel(1, 2, CLEAR_AND_BLACK, CLEAR_AND_BLACK, CLEAR_AND_BLACK);

    /** Java's own printing holds a band at 24 bits a pixel: 12 MB (assumed). */
    private static final int BAND_PIXELS = 4_000_000;

    private FilmBands() {}

    /**
     * Draws a film into the unit square of a page, the way a PDF draws a picture.
     *
     * @param rows of the film, from its first
     * @param turned whether the page is turned so that its left edge lies towards the paper's foot
     * @param page where the unit square lies, y upwards
     */
    static void draw(
            ReadFilm film, FilmStream rows, boolean turned, Graphics2D pen, AffineTransform page, Progress progress) {
        int width = film.widthPixels();
        int height = film.heightPixels();
        int rowsPerBand = Math.max(1, Math.min(height, BAND_PIXELS / width));
        for (int first = 0; first < height; first += rowsPerBand) {
            int count = Math.min(rowsPerBand, height - first);
            byte[] band = new byte[count * film.bytesPerRow()];
            rows.read(band, 0, count);
            AffineTransform place = new AffineTransform(page);
            place.concatenate(new AffineTransform(1.0 / width, 0, 0, -1.0 / height, 0, 1 - (double) first / height));
            BufferedImage drawn = film.bitsPerSample() == 1 ? dots(band, width, count) : greys(film, band, count);
            if (turned) {
                drawn = turned(drawn);
                place.concatenate(new AffineTransform(0, 1, -1, 0, width, 0));
            }
            pen.drawImage(drawn, place, null);
            progress.done((double) (first + count) / height);
        }
    }

    private static BufferedImage dots(byte[] band, int width, int count) {
        var raster = Raster.createPackedRaster(new DataBufferByte(band, band.length), width, count, 1, null);
        return new BufferedImage(BITS, raster, false, null);
    }

    /** A quarter turn to the left, pixel by pixel. */
    private static BufferedImage turned(BufferedImage band) {
        int columns = band.getWidth();
        int rows = band.getHeight();
        BufferedImage turned = band.getType() == BufferedImage.TYPE_BYTE_GRAY
                ? new BufferedImage(rows, columns, BufferedImage.TYPE_BYTE_GRAY)
                : new BufferedImage(rows, columns, BufferedImage.TYPE_BYTE_BINARY, BITS);
        int[] row = new int[columns];
        int[] column = new int[columns];
        for (int y = 0; y < rows; y++) {
            band.getRaster().getSamples(0, y, columns, 1, 0, row);
            for (int x = 0; x < columns; x++) {
                column[columns - 1 - x] = row[x];
            }
            turned.getRaster().setSamples(y, 0, 1, columns, 0, column);
        }
        return turned;
    }

    /** Printing knows 256 greys; a 16-bit film keeps its upper eight bits. */
    private static BufferedImage greys(ReadFilm film, byte[] band, int count) {
        BufferedImage greys = new BufferedImage(film.widthPixels(), count, BufferedImage.TYPE_BYTE_GRAY);
        byte[] into = ((DataBufferByte) greys.getRaster().getDataBuffer()).getData();
        int step = film.bitsPerSample() / 8;
        for (int i = 0; i < into.length; i++) {
            into[i] = (byte) ~band[i * step];
        }
        return greys;
    }
}
