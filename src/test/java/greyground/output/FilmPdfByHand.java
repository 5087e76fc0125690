package greyground.output;

import greyground.raster.Progress;
import java.io.BufferedOutputStream;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Writes one sample film as {@code FOLDER/film.pdf} and {@code film.tif} in a fresh machine and prints the times: arguments
 * FOLDER BITS DPI WIDTH HEIGHT (millimetres).
 */
final class FilmPdfByHand {
    private FilmPdfByHand() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        FilmDocument document = SampleFilm.document(SampleFilm.film(
                Integer.parseInt(arguments[2]),
                Double.parseDouble(arguments[3]),
                Double.parseDouble(arguments[4]),
                Integer.parseInt(arguments[1])));
        long start = System.nanoTime();
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(folder.resolve("film.pdf")), 1 << 16)) {
            FilmPdf.write(document, out, 2, Progress.NONE);
        }
        System.out.printf("pdf %.0f ms%n", (System.nanoTime() - start) / 1e6);
        start = System.nanoTime();
        try (FileChannel out = FileChannel.open(
                folder.resolve("film.tif"),
                StandardOpenOption.CREATE,
                StandardOpenOption.TRUNCATE_EXISTING,
                StandardOpenOption.WRITE)) {
            FilmTiff.write(document, out, 2, Progress.NONE);
        }
        System.out.printf("tiff %.0f ms%n", (System.nanoTime() - start) / 1e6);
    }
}
