package greyground.art.tiff;

import com.twelvemonkeys.imageio.plugins.tiff.TIFFImageReaderSpi;
import greyground.art.library.LibraryReader;
import greyground.art.page.ArtBytes;
import greyground.art.page.RowPipe;
import greyground.art.page.RowSink;
import greyground.art.page.SampleReading;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import java.awt.image.Raster;
import java.io.IOException;
import javax.imageio.ImageReader;
import org.jspecify.annotations.Nullable;

/**
 * Reads TIFF pages that {@link TiffRows} does not, by a library and whole: fax-coded ones, luma and chroma, old-style JPEG,
 * fractions, signed and odd depths. What its numbers mean is decided here.
 *
 * @param directory which of the file's, from 0
 * @param samples the layout delivered
 * @param numbers what the samples mean; without it the library turns them into 8-bit RGB
 * @param indices whether the samples are a palette's, and stay as they are
 */
record TiffWhole(int directory, Samples samples, @Nullable TiffNumbers numbers, boolean indices) {
    RowPipe rows(ArtBytes file) throws IOException {
        return LibraryReader.rows(file, () -> new TIFFImageReaderSpi().createReaderInstance(), samples, this::deliver);
    }

    private void deliver(ImageReader reader, RowSink sink) throws IOException {
        Raster raster = LibraryReader.walled(
                () -> numbers == null ? reader.read(directory).getRaster() : reader.readRaster(directory, null));
        if (raster.getWidth() != samples.width()
                || raster.getHeight() != samples.height()
                || raster.getNumBands() < samples.channels()) {
            throw new Unreadable("its picture is not what its header says: save it anew");
        }
        if (numbers != null && !numbers.plain()) {
            check(raster, numbers);
        }
        hand(raster, sink);
    }

    private static void check(Raster raster, TiffNumbers scale) throws IOException {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        double[] row = new double[raster.getWidth() * raster.getNumBands()];
        for (int y = 0; y < raster.getHeight(); y++) {
            raster.getPixels(raster.getMinX(), raster.getMinY() + y, raster.getWidth(), 1, row);
            for (double sample : row) {
                double number = scale.number(sample);
                least = Math.min(least, number);
                most = Math.max(most, number);
            }
        }
        scale.check(least, most);
    }

    private void hand(Raster raster, RowSink sink) throws IOException {
        int bands = raster.getNumBands();
        int channels = samples.channels();
        int size = samples.bytesPerSample();
        double[] pixels = new double[samples.width() * bands];
        byte[] row = new byte[samples.width() * channels * size];
        for (int y = 0; y < samples.height(); y++) {
            raster.getPixels(raster.getMinX(), raster.getMinY() + y, samples.width(), 1, pixels);
            for (int x = 0; x < samples.width(); x++) {
                for (int c = 0; c < channels; c++) {
                    SampleReading.put(row, (x * channels + c) * size, code(pixels[x * bands + c]), samples);
                }
            }
            sink.row(row, 0, row.length);
        }
    }

    private int code(double sample) {
        return numbers == null || indices ? (int) sample : numbers.code(sample, samples.most());
    }
}
