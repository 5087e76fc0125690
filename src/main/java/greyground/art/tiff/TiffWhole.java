package greyground.art.tiff;

import com.twelvemonkeys.imageio.plugins.tiff.TIFFImageReaderSpi;
import greyground.art.page.ArtBytes;
import greyground.art.page.RowPipe;
import greyground.art.page.RowSink;
import greyground.art.page.SampleReading;
import greyground.art.page.Samples;
import java.awt.image.Raster;
import java.io.EOFException;
import java.io.IOException;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import org.jspecify.annotations.Nullable;

/**
 * Reads TIFF pages that {@link TiffRows} does not, by a library and whole: fax-coded ones, luma and chroma, old-style JPEG,
 * fractions, signed and odd depths. What its numbers mean is decided here.
 */
final class TiffWhole implements RowPipe.Source {
    private final ArtBytes file;
    private final int directory;
    private final Samples samples;
    private final @Nullable TiffNumbers numbers;
    private final boolean indices;
    private volatile @Nullable FileImageInputStream input;

    /**
     * {@code numbers} says what the samples mean; without it the library turns them into 8-bit RGB. {@code indices} of a
     * palette stay as they are.
     */
    TiffWhole(ArtBytes file, int directory, Samples samples, @Nullable TiffNumbers numbers, boolean indices) {
        this.file = file;
        this.directory = directory;
        this.samples = samples;
        this.numbers = numbers;
        this.indices = indices;
    }

    @Override
    public void run(RowSink sink) throws IOException {
        Raster raster = raster();
        if (raster.getWidth() != samples.width()
                || raster.getHeight() != samples.height()
                || raster.getNumBands() < samples.channels()) {
            throw unreadable(null);
        }
        TiffNumbers scale = numbers;
        if (scale != null && !scale.plain()) {
            check(raster, scale);
        }
        hand(raster, sink);
    }

    private Raster raster() throws IOException {
        ImageReader reader = new TIFFImageReaderSpi().createReaderInstance();
        try (FileImageInputStream stream = new FileImageInputStream(file.path().toFile())) {
            input = stream;
            reader.setInput(stream);
            return numbers == null ? reader.read(directory).getRaster() : reader.readRaster(directory, null);
        } catch (EOFException early) {
            throw new EOFException("the picture data end early");
        } catch (IOException | RuntimeException wrong) {
            throw unreadable(wrong);
        } finally {
            reader.dispose();
        }
    }

    private static IOException unreadable(@Nullable Exception cause) {
        return new IOException(
                "its picture data are damaged, or packed in a way that can't be read: save it uncompressed or with LZW or"
                        + " Deflate, with 8 or 16 bits",
                cause);
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

    @Override
    public void abort() {
        FileImageInputStream open = input;
        try {
            if (open != null) {
                open.close();
            }
        } catch (IOException closed) {
            // It came to its end meanwhile.
        }
    }
}
