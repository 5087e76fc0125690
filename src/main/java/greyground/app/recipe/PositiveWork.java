package greyground.app.recipe;

import greyground.app.files.SafeFile;
import greyground.film.compose.Mend;
import greyground.film.compose.MendReport;
import greyground.film.job.Job;
import greyground.output.FilmDocument;
import greyground.output.FilmPdf;
import greyground.output.FilmTiff;
import greyground.raster.Crew;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.Optional;

/** Prepares a positive and writes it, each file whole or not at all: film PDF, TIFF or both. */
public final class PositiveWork {
    private static final double DECODING_SHARE = 0.3;

    /** Done when a mended film is written and what changed is still to be counted. */
    private static final double MENDED_SHARE = 0.65;

    private PositiveWork() {}

    /**
     * Makes a job's films and writes what is wanted of them; art is closed by it.
     *
     * @param pdf the films with all they carry
     * @param tiff their bits alone
     */
    public static PositiveOutcome prepare(
            ArtSource art, Job wanted, Workshop workshop, Optional<Path> pdf, Optional<Path> tiff, Progress progress)
            throws IOException {
        try (art) {
            FilmRecipe recipe = FilmRecipe.of(art, wanted, workshop, progress.part(0, DECODING_SHARE));
            Optional<Mend> mend = recipe.mend();
            double written = mend.isPresent() ? MENDED_SHARE : 1;
            FilmDocument document = FilmFile.of(recipe, recipe.plan(), recipe.films());
            write(document, pdf, tiff, progress.part(DECODING_SHARE, written));
            Optional<MendReport> mended = mend.isPresent()
                    ? Optional.of(MendReport.of(mend.get(), Crew.allCores(), progress.part(written, 1)))
                    : Optional.empty();
            return PositiveOutcome.of(recipe, mended, pdf.isPresent());
        }
    }

    private static void write(FilmDocument document, Optional<Path> film, Optional<Path> tiff, Progress progress)
            throws IOException {
        double share = film.isEmpty() ? 0 : tiff.isPresent() ? 0.5 : 1;
        if (film.isPresent()) {
            SafeFile.write(
                    "film",
                    film.get(),
                    channel -> FilmPdf.write(
                            document, Channels.newOutputStream(channel), Crew.allCores(), progress.part(0, share)));
        }
        if (tiff.isPresent()) {
            SafeFile.write(
                    "TIFF",
                    tiff.get(),
                    channel -> FilmTiff.write(document, channel, Crew.allCores(), progress.part(share, 1)));
        }
    }
}
