package greyground.app.proof;

import greyground.app.check.FilmChecks;
import greyground.app.check.PlateWarning;
import greyground.app.files.KeptFiles;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.ComposedFilm;
import greyground.app.recipe.FilmFile;
import greyground.app.recipe.FilmOnPlate;
import greyground.app.recipe.FilmRecipe;
import greyground.app.recipe.HealedSpots;
import greyground.app.recipe.JobPlate;
import greyground.app.recipe.JobReserve;
import greyground.app.recipe.JobTones;
import greyground.app.sight.Stage;
import greyground.film.compose.GrainPatches;
import greyground.film.job.Job;
import greyground.output.Attachment;
import greyground.output.FilmPdfReader;
import greyground.picture.Picture;
import greyground.picture.ToneDiagram;
import greyground.plan.BenchConditions;
import greyground.plate.Film;
import greyground.plate.PlateConditions;
import greyground.plate.PlateFilm;
import greyground.plate.PlateProcess;
import greyground.plate.PlateWindow;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.tone.Compensation;
import greyground.workshop.Workshop;
import java.io.Closeable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Shows a plate before it is bitten: any window of it at any stage, from art or from a film PDF. The film's own pixels go through
 * the virtual plate; nothing is written.
 *
 * <p>Places count from the plate's top left as the print reads; so do the windows and their pictures. One thread uses it and
 * closes it; the work itself runs on all cores.
 */
public final class ProofWork implements Closeable {
    private static final double FEWEST_DOTS_PER_INCH = 10;
    private static final double MICROMETRES_PER_INCH = 25_400;

    private final Job job;
    private final Workshop workshop;
    private final JobPlate plate;
    private final JobTones tones;
    private final JobReserve reserve;
    private final List<Compensation.Node> nodes;
    private final List<String> notes;
    private final HealedSpots spots;
    private final PlateFilm positive;
    private final PlateLooks looks;
    private final Closeable source;
    private final Checking checking;

    private ProofWork(
            Job job,
            Workshop workshop,
            JobPlate plate,
            JobTones tones,
            JobReserve reserve,
            List<Compensation.Node> nodes,
            List<String> notes,
            HealedSpots spots,
            PlateFilm positive,
            @Nullable PlateFilm screen,
            Closeable source,
            Checking checking) {
        this.job = job;
        this.workshop = workshop;
        this.plate = plate;
        this.tones = tones;
        this.reserve = reserve;
        this.nodes = List.copyOf(nodes);
        List<String> all = new ArrayList<>(notes);
        tones.note().filter(note -> !all.contains(note)).ifPresent(all::add);
        this.notes = List.copyOf(all);
        this.spots = spots;
        this.positive = positive;
        this.looks = new PlateLooks(plate, tones, GrainPatches.spacingMicrometres(job.grain()), positive, screen);
        this.source = source;
        this.checking = checking;
    }

    /** Looks through the whole film for what the plate will not keep. */
    @FunctionalInterface
    private interface Checking {
        FilmChecks run(Progress progress) throws IOException;
    }

    /**
     * A plate whose film is composed now.
     *
     * @param art closed with this
     * @param wanted as for a positive; a sheet that is too small is no hindrance
     */
    public static ProofWork ofArt(ArtSource art, Job wanted, Workshop workshop, Progress progress) throws IOException {
        try {
            FilmRecipe recipe = FilmRecipe.of(art, wanted, workshop, progress).onOneSheet();
            return new ProofWork(
                    recipe.job(),
                    workshop,
                    recipe.plate(),
                    recipe.tones(),
                    recipe.reserve(),
                    recipe.compensation().nodes(),
                    recipe.warnings(),
                    recipe.spots(),
                    recipe.positive().onPlate(),
                    recipe.screen().map(ComposedFilm::onPlate).orElse(null),
                    art,
                    watch -> FilmChecks.of(recipe.job(), workshop, recipe.films(), watch));
        } catch (IOException | RuntimeException | Error failed) {
            art.close();
            throw failed;
        }
    }

    /**
     * A plate of a film that is already prepared.
     *
     * @param other workshop to expose and bite it in; empty for its own
     */
    public static ProofWork ofFilm(Path filmPdf, Optional<Workshop> other) throws IOException {
        Job job = KeptFiles.job(filmPdf);
        Workshop workshop = other.isPresent() ? other.get() : KeptFiles.workshop(filmPdf);
        FilmPdfReader reader = FilmPdfReader.open(filmPdf);
        try {
            int wanted = job.process() instanceof PlateProcess.Photogravure ? 2 : 1;
            int found = reader.films().size();
            if (found != wanted) {
                throw Refusal.use(filmPdf.getFileName() + " holds " + found + " film sheets where " + wanted
                        + " is one plate's: a film split over tiles is shown from its art, with --job "
                        + filmPdf.getFileName());
            }
            boolean mirrored = job.placing().readingSide().mirrored();
            Film printed = BenchConditions.film(workshop);
            List<Compensation.Node> nodes = reader.attachment(Attachment.CURVE)
                    .map(bytes -> FilmFile.curve(new String(bytes, StandardCharsets.UTF_8)))
                    .orElse(List.of());
            JobPlate plate = JobPlate.of(workshop, job);
            JobTones tones = plate.tones();
            return new ProofWork(
                    job,
                    workshop,
                    plate,
                    tones,
                    JobReserve.of(plate, tones),
                    nodes,
                    List.of(),
                    HealedSpots.chosen(job),
                    FilmOnPlate.read(reader, 0, mirrored, workshop.filmPrinter(), printed),
                    wanted == 2 ? FilmOnPlate.read(reader, 1, mirrored, workshop.filmPrinter(), printed) : null,
                    reader,
                    watch -> FilmChecks.of(job, workshop, reader, watch));
        } catch (RuntimeException | Error failed) {
            reader.close();
            throw failed;
        }
    }

    /** The job, settled. */
    public Job job() {
        return job;
    }

    /** Where it is exposed, bitten and printed. */
    public Workshop workshop() {
        return workshop;
    }

    /** How uniform tones of this job print, measured or predicted. */
    public JobTones tones() {
        return tones;
    }

    /** How far the film's blacks stop short of the turning point. */
    JobReserve reserve() {
        return reserve;
    }

    /** What was odd about the art. */
    public List<String> notes() {
        return notes;
    }

    /** What is said of dust and scratches. */
    HealedSpots spots() {
        return spots;
    }

    /** What the plate will not keep, from a look at every bit of the film; most pressing first. */
    public List<PlateWarning> warnings(Progress progress) throws IOException {
        return checking.run(progress).warnings();
    }

    JobPlate plate() {
        return plate;
    }

    /** The plate's own measures, in micrometres of film. */
    double widthMicrometres() {
        return positive.width() * positive.pitchMicrometres();
    }

    double heightMicrometres() {
        return positive.height() * positive.pitchMicrometres();
    }

    int filmWidth() {
        return positive.width();
    }

    int filmHeight() {
        return positive.height();
    }

    /** How it was and would be looked at. */
    PlateLooks looks() {
        return looks;
    }

    /** The whole plate in a picture's pixels. */
    public PlateWindow whole(double dotsPerInch) {
        double finest = job.resolution().dotsPerInch();
        Refusal.checkRange(
                "picture's resolution",
                dotsPerInch,
                FEWEST_DOTS_PER_INCH,
                finest,
                "dpi",
                "150 dpi suits a screen; the film itself carries no more than its own");
        double cell = MICROMETRES_PER_INCH / dotsPerInch;
        return new PlateWindow(0, 0, cell, Math.max(1, (int) Math.round(widthMicrometres() / cell)), Math.max(1, (int)
                Math.round(heightMicrometres() / cell)));
    }

    /**
     * A square about a place, cut short by nothing: past the plate lies what the film has there.
     *
     * @param place from the plate's top left, as the print reads
     * @param pixels of its picture, across and down
     */
    public PlateWindow about(Offset place, double widthMillimetres, int pixels) {
        Refusal.checkRange(
                "loupe's place across",
                place.acrossMillimetres(),
                0,
                widthMicrometres() / 1000,
                "mm",
                "stay on the plate");
        Refusal.checkRange(
                "loupe's place down",
                place.downMillimetres(),
                0,
                heightMicrometres() / 1000,
                "mm",
                "stay on the plate");
        Refusal.checkRange("loupe's width", widthMillimetres, 0.2, 20, "mm", "2 mm shows the grain");
        return new PlateWindow(
                (place.acrossMillimetres() - widthMillimetres / 2) * 1000,
                (place.downMillimetres() - widthMillimetres / 2) * 1000,
                widthMillimetres * 1000 / pixels,
                pixels,
                pixels);
    }

    /** Which way a picture of the plate is held. */
    public enum Held {
        /** Like the print, so that stages can be compared. */
        AS_PRINTED,
        /** The plate lying face up: the mirror of its print, unless an even number of transfers turns it back. */
        FACE_UP
    }

    /** Whether the plate lying face up is the mirror of the final print. */
    public boolean plateMirrorsPrint() {
        return job.placing().readingSide().transfers() % 2 == 1;
    }

    /** A window as planned, once for each stage asked for. */
    public List<Picture> pictures(PlateWindow window, List<Stage> stages, Held held, Progress progress)
            throws IOException {
        boolean turned = held == Held.FACE_UP && plateMirrorsPrint();
        return asPlanned(
                window,
                stages.stream()
                        .map(stage -> new PlateLooks.Shown(stage, turned))
                        .toList(),
                progress);
    }

    /** The plate as planned, its even tones as they were measured where they were. */
    List<Picture> asPlanned(PlateWindow window, List<PlateLooks.Shown> stages, Progress progress) throws IOException {
        return looks.of(window, List.of(plate.conditions()), stages, true, progress)
                .get(0);
    }

    /** The plate as it is predicted under several conditions, all in one reading of the film. */
    List<List<Picture>> predicted(
            PlateWindow window, List<PlateConditions> conditions, List<PlateLooks.Shown> stages, Progress progress)
            throws IOException {
        return looks.of(window, conditions, stages, false, progress);
    }

    /** The four-quadrant diagram of the job's tones. */
    public ToneDiagram diagram() {
        if (nodes.isEmpty()) {
            throw Refusal.failure("the film carries no tone curve, so its diagram can't be drawn: prepare it again");
        }
        return ToneDiagram.of(
                job.title() + ": " + job.process().words() + ", " + job.grain().name() + ", "
                        + plate.conditions().wellsName()
                        + (tones.isMeasured() ? "; print " + tones.name() : ""),
                nodes,
                tones.predicted(),
                tones.measured(),
                reserve.limit());
    }

    @Override
    public void close() throws IOException {
        source.close();
    }
}
