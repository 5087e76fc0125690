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
import java.util.concurrent.CompletableFuture;

/** Prepares a positive and writes it: film PDF and, if wanted, TIFF. One object for one art. */
public final class PositiveWork {
    private static final double DECODING_SHARE = 0.3;

    /** Done when a mended film is written and what changed is still to be counted. */
    private static final double MENDED_SHARE = 0.65;

    private final ArtSource art;
    private final int threads = Crew.allCores();

    /** Of art that is closed once its film is made. */
    public PositiveWork(ArtSource art) {
        this.art = art;
    }

    /** Looks into the art, without decoding it. */
    public static PositiveWork open(Path file) {
        return new PositiveWork(ArtSource.open(file));
    }

    /** What is known of the art's page, from 1. */
    public SourceArt source(int page) {
        return art.source(page);
    }

    /**
     * Makes the film and writes it.
     *
     * @param film the PDF to write, replaced whole or not at all
     * @param tiff the same bits as a TIFF, if wanted
     */
    public PositiveOutcome prepare(Job wanted, Workshop workshop, Path film, Optional<Path> tiff, Progress progress)
            throws IOException {
        return prepare(wanted, workshop, Optional.of(film), tiff, progress);
    }

    /**
     * Makes the film and writes it as a TIFF alone, without the plan and the job that only a PDF carries.
     *
     * @param tiff to write, replaced whole or not at all
     */
    public PositiveOutcome prepareTiff(Job wanted, Workshop workshop, Path tiff, Progress progress) throws IOException {
        return prepare(wanted, workshop, Optional.empty(), Optional.of(tiff), progress);
    }

    private PositiveOutcome prepare(
            Job wanted, Workshop workshop, Optional<Path> film, Optional<Path> tiff, Progress progress)
            throws IOException {
        CompletableFuture<Void> typeface = CompletableFuture.runAsync(FilmPdf::prepare);
        try (art) {
            FilmRecipe recipe = FilmRecipe.of(art, wanted, workshop, progress.part(0, DECODING_SHARE));
            Crew.joined(typeface);
            Optional<Mend> mend = recipe.mend();
            double written = mend.isPresent() ? MENDED_SHARE : 1;
            FilmDocument document = FilmFile.of(recipe, recipe.plan(), recipe.films());
            write(document, film, tiff, progress.part(DECODING_SHARE, written));
            Optional<MendReport> mended = mend.isPresent()
                    ? Optional.of(MendReport.of(mend.get(), threads, progress.part(written, 1)))
                    : Optional.empty();
            return PositiveOutcome.of(recipe, mended);
        }
    }

    private void write(FilmDocument document, Optional<Path> film, Optional<Path> tiff, Progress progress)
            throws IOException {
        double share = film.isEmpty() ? 0 : tiff.isPresent() ? 0.5 : 1;
        if (film.isPresent()) {
            SafeFile.write(
                    "film",
                    film.get(),
                    channel -> FilmPdf.write(
                            document, Channels.newOutputStream(channel), threads, progress.part(0, share)));
        }
        if (tiff.isPresent()) {
            SafeFile.write(
                    "TIFF",
                    tiff.get(),
                    channel -> FilmTiff.write(
                            document, channel, FilmTiff.Packing.DEFLATE, threads, progress.part(share, 1)));
        }
    }
}
