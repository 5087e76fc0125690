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
import java.util.Arrays;

/** A film drawn band by band, each pixel as one pixel of a picture that is laid down at its true size. */
final class FilmBands {
    private static final byte PAPER = (byte) 0xFF;
    private static final byte[] CLEAR_AND_BLACK = {PAPER, 0};
    private static final IndexColorModel BITS =
            new IndexColorModel(1, 2, CLEAR_AND_BLACK, CLEAR_AND_BLACK, CLEAR_AND_BLACK);

    /** Java's own printing holds a band at 24 bits a pixel: 12 MB (assumed). */
    private static final int BAND_PIXELS = 4_000_000;

    /** Of film pixels: printers' grids and films of up to some 2540 dpi meet within so many (assumed). */
    private static final int LARGEST_STEP = 300;

    /** Of a step: by so much a picture is made smaller, or rounding might take a step too many (assumed). */
    private static final double SHY = 0.005;

    /** Of a step: what Java's arithmetic of single precision leaves undecided (assumed). */
    private static final double SAME = 1e-3;

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
        int height = film.heightPixels();
        AffineTransform pixels = new AffineTransform(page);
        pixels.concatenate(new AffineTransform(1.0 / film.widthPixels(), 0, 0, -1.0 / height, 0, 1));
        AffineTransform onPaper = new AffineTransform(pen.getTransform());
        onPaper.concatenate(pixels);
        double across = StrictMath.hypot(onPaper.getScaleX(), onPaper.getShearY());
        double down = StrictMath.hypot(onPaper.getShearX(), onPaper.getScaleY());
        int width = wholes(film.widthPixels(), step(across));
        int rowStep = step(down);
        int rowsPerBand = Math.max(rowStep, BAND_PIXELS / width / rowStep * rowStep);
        for (int first = 0; first < height; first += rowsPerBand) {
            int count = Math.min(rowsPerBand, height - first);
            byte[] band = new byte[count * film.bytesPerRow()];
            rows.read(band, 0, count);
            AffineTransform place = new AffineTransform(pixels);
            place.translate(0, first);
            int tall = wholes(count, rowStep);
            place.scale(1 - SHY / (width * across), 1 - SHY / (tall * down));
            BufferedImage drawn =
                    film.bitsPerSample() == 1 ? dots(film, band, width, tall) : greys(film, band, width, tall);
            if (turned) {
                drawn = turned(drawn);
                place.concatenate(new AffineTransform(0, 1, -1, 0, width, 0));
            }
            pen.drawImage(drawn, place, null);
            progress.done((double) (first + count) / height);
        }
    }

    /**
     * Java's printing stretches a picture to whole steps of its grid, such as 1/300 inch. So many pixels must be drawn at once
     * that they take whole steps of themselves; clear ones, past the sheet's edge, make up what the film lacks.
     *
     * @param pixel of the film, in steps
     */
    private static int step(double pixel) {
        for (int count = 1; count <= LARGEST_STEP; count++) {
            double taken = count * pixel;
            if (Math.abs(taken - Math.rint(taken)) < SAME && Math.rint(taken) > 0) {
                return count;
            }
        }
        return 1;
    }

    private static int wholes(int count, int step) {
        return (count + step - 1) / step * step;
    }

    private static BufferedImage dots(ReadFilm film, byte[] band, int width, int height) {
        int rowBytes = (width + 7) / 8;
        byte[] wide = new byte[rowBytes * height];
        for (int row = 0; row < band.length / film.bytesPerRow(); row++) {
            System.arraycopy(band, row * film.bytesPerRow(), wide, row * rowBytes, film.bytesPerRow());
        }
        var raster = Raster.createPackedRaster(new DataBufferByte(wide, wide.length), width, height, 1, null);
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
    private static BufferedImage greys(ReadFilm film, byte[] band, int width, int height) {
        BufferedImage greys = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        byte[] into = ((DataBufferByte) greys.getRaster().getDataBuffer()).getData();
        Arrays.fill(into, PAPER);
        int step = film.bitsPerSample() / 8;
        for (int row = 0; row < band.length / film.bytesPerRow(); row++) {
            for (int x = 0; x < film.widthPixels(); x++) {
                into[row * width + x] = (byte) ~band[row * film.bytesPerRow() + x * step];
            }
        }
        return greys;
    }
}
