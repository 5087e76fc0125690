package greyground.bench;

import greyground.art.Art;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;

/**
 * Megapixels a second of our readers, luminance included, beside those of the library or platform reader that ImageIO chooses, samples alone;
 * the best of five, in one process.
 *
 * <pre>
 * java -Xmx2g -cp ... greyground.bench.ReaderBench SCAN.tif SCAN.png ...
 * </pre>
 */
public final class ReaderBench {
    private static final int TIMES = 5;

    private ReaderBench() {}

    @FunctionalInterface
    private interface Reading {
        /** Pixels read. */
        long read() throws Exception;
    }

    public static void main(String[] files) throws Exception {
        System.out.println("file, ours, library (megapixels a second), ratio");
        Path folder = Files.createTempDirectory("readers");
        for (String name : files) {
            Path file = Path.of(name);
            double ours = best(() -> {
                try (GreyPlane plane = Art.open(file).decode(Progress.NONE, 1L << 30, folder)) {
                    return (long) plane.width() * plane.height();
                }
            });
            double library = best(() -> {
                try (ImageInputStream stream = ImageIO.createImageInputStream(file.toFile())) {
                    ImageReader reader = ImageIO.getImageReaders(stream).next();
                    reader.setInput(stream, false, true);
                    var raster = reader.read(0).getRaster();
                    reader.dispose();
                    return (long) raster.getWidth() * raster.getHeight();
                }
            });
            System.out.printf(Locale.ROOT, "%s, %.1f, %.1f, %.2f%n", file.getFileName(), ours, library, ours / library);
        }
        Files.delete(folder);
    }

    private static double best(Reading reading) throws Exception {
        double best = 0;
        for (int i = 0; i < TIMES; i++) {
            long from = System.nanoTime();
            long pixels = reading.read();
            best = Math.max(best, pixels * 1e3 / (System.nanoTime() - from));
        }
        return best;
    }
}
