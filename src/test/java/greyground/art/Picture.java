package greyground.art;

import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A small picture of 16-bit samples for the tests, with an anymap reader and writer of its own. */
record Picture(int width, int height, int channels, int[] samples) {
    /** A picture whose every sample differs from its neighbours, with all corners distinct and full black and white present. */
    static Picture chart(int width, int height, int channels) {
        int[] samples = new int[width * height * channels];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                for (int c = 0; c < channels; c++) {
                    double slope = (x * (c + 1.0) / width + y * (3.0 - c) / height) / 4;
                    int value = (int) (65_535 * Math.min(1, slope)) ^ (x * 37 + y * 11 + c * 5 & 0x3F);
                    samples[(y * width + x) * channels + c] = Math.min(65_535, value);
                }
            }
        }
        java.util.Arrays.fill(samples, 0, channels, 0);
        java.util.Arrays.fill(samples, channels, 2 * channels, 65_535);
        return new Picture(width, height, channels, samples);
    }

    void write(Path file, int bits) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int most = bits == 8 ? 255 : 65_535;
        out.writeBytes(("P" + (channels == 1 ? 5 : 6) + "\n" + width + " " + height + "\n" + most + "\n")
                .getBytes(StandardCharsets.US_ASCII));
        for (int sample : samples) {
            out.write(sample >> 8);
            if (bits == 16) {
                out.write(sample);
            }
        }
        Files.write(file, out.toByteArray());
    }

    /** Reads a binary grey or RGB anymap. */
    static Picture read(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        int[] numbers = new int[3];
        int start = 2;
        for (int i = 0; i < 3; i++) {
            while (bytes[start] <= ' ' || bytes[start] == '#') {
                boolean comment = bytes[start] == '#';
                while (comment && bytes[start] != '\n') {
                    start++;
                }
                start++;
            }
            for (; bytes[start] > ' '; start++) {
                numbers[i] = 10 * numbers[i] + bytes[start] - '0';
            }
        }
        // The samples begin one white space after the last number, whatever they look like.
        start++;
        int channels = bytes[1] == '6' ? 3 : 1;
        int width = numbers[0];
        int height = numbers[1];
        int most = numbers[2];
        int[] samples = new int[width * height * channels];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = most > 255
                    ? (bytes[start + 2 * i] & 0xFF) << 8 | bytes[start + 2 * i + 1] & 0xFF
                    : (bytes[start + i] & 0xFF) * 257;
        }
        return new Picture(width, height, channels, samples);
    }

    /**
     * What red, green and blue of sRGB add to luminance under D50: middle row of W3C CSS Color Module Level 4's sample matrices,
     * linear sRGB to XYZ and then D65 to D50.
     */
    static final double[] WEIGHTS = {0.222493, 0.716887, 0.060620};

    /** Luminance 0..1 as sRGB (IEC 61966-2-1), under D50. */
    double luminance(int x, int y) {
        int at = (y * width + x) * channels;
        if (channels == 1) {
            return linear(samples[at] / 65_535.0);
        }
        return WEIGHTS[0] * linear(samples[at] / 65_535.0)
                + WEIGHTS[1] * linear(samples[at + 1] / 65_535.0)
                + WEIGHTS[2] * linear(samples[at + 2] / 65_535.0);
    }

    static double linear(double coded) {
        return coded <= 0.04045 ? coded / 12.92 : Math.pow((coded + 0.055) / 1.055, 2.4);
    }

    static GreyPlane decode(Path file) {
        return Art.open(file)
                .decode(Progress.NONE, 256L << 20, file.toAbsolutePath().getParent());
    }

    /** All of a plane's samples, row by row. */
    static int[] samples(GreyPlane plane) {
        int[] all = new int[plane.width() * plane.height()];
        short[] row = new short[plane.width()];
        for (int y = 0; y < plane.height(); y++) {
            plane.readRow(y, row);
            for (int x = 0; x < row.length; x++) {
                all[y * row.length + x] = row[x] & 0xFFFF;
            }
        }
        return all;
    }

    /** The largest distance from {@code plane} to this picture's luminance, in codes of 65 535. */
    double farthest(GreyPlane plane) {
        if (plane.width() != width || plane.height() != height) {
            throw Refusal.failure(
                    "the plane is " + plane.width() + " x " + plane.height() + ", not " + width + " x " + height);
        }
        int[] found = samples(plane);
        double farthest = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                farthest = Math.max(farthest, Math.abs(found[y * width + x] - 65_535 * luminance(x, y)));
            }
        }
        return farthest;
    }
}
