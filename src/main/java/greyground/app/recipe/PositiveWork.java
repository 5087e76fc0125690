package greyground.app.recipe;

import greyground.app.files.Program;
import greyground.app.files.SafeFile;
import greyground.film.compose.MendReport;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.output.Attachment;
import greyground.output.FilmDocument;
import greyground.output.FilmPdf;
import greyground.output.FilmTiff;
import greyground.plan.PlanJson;
import greyground.plan.PlanText;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

/** Prepares a positive and writes it: film PDF and, if wanted, TIFF. One object for one art. */
public final class PositiveWork {
    private static final double DECODING_SHARE = 0.3;

    /** Done when a mended film is written and what changed is still to be counted. */
    private static final double MENDED_SHARE = 0.65;

    private final FilmPreparation preparation;
    private final int threads = Math.max(1, Runtime.getRuntime().availableProcessors());

    private PositiveWork(FilmPreparation preparation) {
        this.preparation = preparation;
    }

    /** Looks into the art, without decoding it. */
    public static PositiveWork open(Path file) {
        return new PositiveWork(FilmPreparation.open(file));
    }

    /** What is known of the art's page, from 1. */
    public SourceArt source(int page) {
        return preparation.source(page);
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
        try (PreparedFilms films = preparation.films(wanted, workshop, progress.part(0, DECODING_SHARE))) {
            FilmPreparation.joined(typeface);
            double written = films.mend().isPresent() ? MENDED_SHARE : 1;
            write(document(films), film, tiff, progress.part(DECODING_SHARE, written));
            Optional<MendReport> mended = films.mend().isPresent()
                    ? Optional.of(MendReport.of(films.mend().get(), threads, progress.part(written, 1)))
                    : Optional.empty();
            return PositiveOutcome.of(films, mended);
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

    private static FilmDocument document(PreparedFilms films) {
        Job job = films.job();
        List<FilmDocument.CurvePoint> points = films.compensation().nodes().stream()
                .map(node -> new FilmDocument.CurvePoint(node.artLightness(), node.coverage()))
                .toList();
        List<Attachment> attachments = List.of(
                attachment(
                        Attachment.JOB,
                        "application/json",
                        JobFile.text(job),
                        "the job",
                        Attachment.Relationship.SOURCE),
                attachment(
                        Attachment.WORKSHOP,
                        "application/json",
                        WorkshopFile.text(films.workshop()),
                        "the workshop's numbers",
                        Attachment.Relationship.SOURCE),
                attachment(
                        Attachment.CURVE,
                        "application/json",
                        CurveFile.text(films.compensation(), films.tones()),
                        "the tone curve",
                        Attachment.Relationship.DATA),
                attachment(
                        Attachment.PLAN,
                        "application/json",
                        PlanJson.text(films.plan()),
                        "the exposure and bite plan",
                        Attachment.Relationship.DATA),
                attachment(
                        Attachment.PLAN_TEXT,
                        "text/plain",
                        PlanText.of(films.plan()),
                        "the exposure and bite plan, to read",
                        Attachment.Relationship.ALTERNATIVE));
        LocalDate date = job.date().isEmpty() ? LocalDate.of(2000, 1, 1) : FilmWords.date(job.date());
        return new FilmDocument(
                job.title(),
                date,
                Program.words(),
                films.films(),
                FilmWords.particulars(job, films.plan()),
                points,
                films.plan(),
                attachments);
    }

    public static Attachment attachment(
            String name, String mediaType, String text, String description, Attachment.Relationship relationship) {
        return new Attachment(name, mediaType, text.getBytes(StandardCharsets.UTF_8), description, relationship);
    }
}
