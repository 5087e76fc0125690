package greyground.output;

import greyground.raster.Progress;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Writes documents for tests. */
final class Written {
    private Written() {}

    static byte[] pdf(FilmDocument document, int threads) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        FilmPdf.write(document, out, threads, Progress.NONE);
        return out.toByteArray();
    }

    static Path pdf(Path folder, FilmDocument document) throws IOException {
        return Files.write(folder.resolve("film.pdf"), pdf(document, 2));
    }

    static Path tiff(Path folder, FilmDocument document, boolean big) throws IOException {
        Path file = folder.resolve("film.tif");
        try (FileChannel out = FileChannel.open(
                file, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE)) {
            FilmTiff.write(document, out, 2, Progress.NONE, big);
        }
        return file;
    }

    /** All rows of a film as one array. */
    static byte[] rows(FilmDocument.Film film) throws Exception {
        return film.rows().maker().make(0, film.rows().height());
    }
}
