package greyground.art.library;

import greyground.art.page.Interpretation;
import greyground.art.page.RowSink;
import greyground.art.page.SampleReading;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;
import java.awt.image.SampleModel;
import java.io.IOException;

/**
 * How a picture that the platform holds in memory becomes rows of samples. Palettes are looked up; floating-point samples count
 * as coded, 0 black and 1 white (common practice), and become sixteen bits.
 *
 * @param samples the rows' layout
 * @param meaning what they mean
 * @param bits bits of one stored sample
 */
record LibraryLayout(Samples samples, Interpretation meaning, int bits) {
    static LibraryLayout of(ColorModel colours, SampleModel stored, int width, int height) throws IOException {
        boolean alpha = colours.hasAlpha();
        if (colours instanceof IndexColorModel) {
            Samples samples = new Samples(width, height, alpha ? 4 : 3, 1, true);
            return new LibraryLayout(samples, meaning(Interpretation.Model.RGB, alpha, false), stored.getSampleSize(0));
        }
        Interpretation.Model model = switch (colours.getColorSpace().getType()) {
            case ColorSpace.TYPE_GRAY -> Interpretation.Model.GREY;
            case ColorSpace.TYPE_RGB -> Interpretation.Model.RGB;
            case ColorSpace.TYPE_CMYK -> Interpretation.Model.CMYK;
            default -> throw new Unreadable("its colours are of an unknown kind: save it as grey, RGB or CMYK");
        };
        int channels = model.channels() + (alpha ? 1 : 0);
        if (stored.getNumBands() != channels) {
            throw new Unreadable("it has " + stored.getNumBands() + " channels where " + model + " has " + channels);
        }
        int bits = 0;
        for (int size : stored.getSampleSize()) {
            bits = Math.max(bits, size);
        }
        Samples samples = new Samples(width, height, channels, bits > 8 ? 2 : 1, true);
        return new LibraryLayout(samples, meaning(model, alpha, colours.isAlphaPremultiplied()), Math.min(16, bits));
    }

    private static Interpretation meaning(Interpretation.Model model, boolean alpha, boolean mixed) {
        return new Interpretation(
                model,
                false,
                mixed ? Interpretation.Alpha.OVER_BLACK : Interpretation.Alpha.STRAIGHT,
                alpha ? model.channels() : -1,
                null);
    }

    /** Hands all rows of {@code image} on. */
    void hand(BufferedImage image, RowSink sink) throws IOException {
        byte[] row = new byte[Math.toIntExact(samples.bytesPerRow())];
        Filler filler = filler(image);
        for (int y = 0; y < image.getHeight(); y++) {
            filler.fill(y, row);
            sink.row(row, 0, row.length);
        }
    }

    @FunctionalInterface
    private interface Filler {
        void fill(int y, byte[] row);
    }

    private Filler filler(BufferedImage image) {
        Raster raster = image.getRaster();
        int width = raster.getWidth();
        int channels = samples.channels();
        if (image.getColorModel() instanceof IndexColorModel palette) {
            int[] entries = new int[palette.getMapSize()];
            palette.getRGBs(entries);
            int[] indices = new int[width];
            return (y, row) -> {
                raster.getPixels(0, y, width, 1, indices);
                for (int x = 0; x < width; x++) {
                    // One beyond the palette is black, as the other readers have it.
                    int entry = indices[x] < entries.length ? entries[indices[x]] : 0xFF00_0000;
                    for (int c = 0; c < channels; c++) {
                        row[x * channels + c] = (byte) (entry >> (c == 3 ? 24 : 16 - 8 * c));
                    }
                }
            };
        }
        if (image.getSampleModel().getDataType() == DataBuffer.TYPE_FLOAT) {
            float[] found = new float[width * channels];
            return (y, row) -> {
                raster.getPixels(0, y, width, 1, found);
                for (int i = 0; i < found.length; i++) {
                    SampleReading.putTwo(row, 2 * i, sixteenBits(found[i]), true);
                }
            };
        }
        int[] sizes = image.getSampleModel().getSampleSize();
        int[] pixels = new int[width * channels];
        return (y, row) -> {
            raster.getPixels(0, y, width, 1, pixels);
            for (int i = 0, c = 0; i < pixels.length; i++, c = c + 1 == channels ? 0 : c + 1) {
                SampleReading.put(row, i * samples.bytesPerSample(), scaled(pixels[i], sizes[c]), samples);
            }
        };
    }

    /** A sample 0..1 in sixteen bits; what isn't a number is black. */
    static int sixteenBits(float sample) {
        return (int) (Math.max(0, Math.min(1, sample)) * 65_535.0 + 0.5);
    }

    private int scaled(int value, int size) {
        if (size == 8 * samples.bytesPerSample()) {
            return value;
        }
        long most = (1L << size) - 1;
        return size == 0 ? 0 : (int) (((value & most) * samples.most() + most / 2) / most);
    }
}
