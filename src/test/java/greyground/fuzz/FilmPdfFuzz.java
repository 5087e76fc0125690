package greyground.fuzz;

import greyground.app.files.KeptFiles;
import greyground.output.Attachment;
import greyground.output.FilmPdfReader;
import java.nio.file.Path;

/** A film PDF reopened: its films row by row, and what it carries. */
public final class FilmPdfFuzz {
    private static final int BAND_ROWS = 64;

    private FilmPdfFuzz() {}

    /** Called by the fuzzer before it looks at the clock. */
    public static void fuzzerInitialize() {
        Hostile.warm("film", FilmPdfFuzz::fuzzerTestOneInput);
    }

    /** Called by the fuzzer, again and again in one process. */
    public static void fuzzerTestOneInput(byte[] bytes) {
        Path file = Hostile.file("film.pdf", bytes);
        Hostile.answered(() -> {
            try (FilmPdfReader reader = FilmPdfReader.open(file)) {
                int films = reader.films().size();
                for (int film = 0; film < Math.min(2, films); film++) {
                    reader.readRows(film, BAND_ROWS, (first, count, band) -> {});
                }
            }
        });
        Hostile.answered(() -> {
            try (FilmPdfReader reader = FilmPdfReader.open(file)) {
                reader.attachment(Attachment.CURVE);
            }
        });
        if (KeptFiles.isPdf(file)) {
            Hostile.answered(() -> KeptFiles.job(file));
            Hostile.answered(() -> KeptFiles.workshop(file));
            Hostile.answered(() -> KeptFiles.plan(file));
            Hostile.answered(() -> KeptFiles.chart(file));
        }
    }
}
