package greyground.app.chart;

import greyground.app.files.SafeFile;
import greyground.app.recipe.FilmFile;
import greyground.app.recipe.JobPlate;
import greyground.app.recipe.JobTones;
import greyground.app.recipe.JobWords;
import greyground.app.recipe.SourceArt;
import greyground.app.sight.LivePicture;
import greyground.chart.CheckPlate;
import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.film.compose.FilmComposer;
import greyground.film.compose.GrainPatches;
import greyground.film.compose.TestPlateSheet;
import greyground.film.job.FilmFields;
import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.film.job.Kind;
import greyground.film.sheet.ChartFile;
import greyground.film.sheet.FilmLegends;
import greyground.finding.Findings;
import greyground.grain.ThresholdTile;
import greyground.output.FilmDocument;
import greyground.output.FilmPdf;
import greyground.output.LegendFace;
import greyground.plan.ExposurePlan;
import greyground.plan.TestStrip;
import greyground.plate.PlateProcess;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.Crew;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Makes the film of a test plate and writes it. */
public final class WedgeWork {
    /** The codes' grain: no darker than this, so that it holds in a shop that bites deeper than assumed (assumed). */
    private static final int CODE_PERCENT = 75;

    /** And this far below the predicted turning point (assumed). */
    private static final int BELOW_TURNING_POINT = 10;

    /** Stand for a check plate's tones while its size is judged. */
    private static final List<CheckPlate.Tone> PLACEHOLDERS = IntStream.rangeClosed(0, CheckPlate.TONES)
            .mapToObj(tone -> new CheckPlate.Tone(10 * tone, 50, Optional.empty()))
            .toList();

    private final Job job;
    private final Workshop workshop;
    private final Recipe.Kind kind;
    private final long seed;

    private WedgeWork(Job job, Workshop workshop, Recipe.Kind kind, long seed) {
        this.job = job;
        this.workshop = workshop;
        this.kind = kind;
        this.seed = seed;
    }

    /**
     * A test plate from words as a person types them.
     *
     * @param given by option name without dashes: kind, and those of {@link JobFields} that concern a film
     * @param like a job whose process, grain and reading side it shares where nothing is given
     * @param today for a job without a date
     */
    public static WedgeWork of(Map<String, String> given, Optional<Job> like, Workshop workshop, String today) {
        Recipe.Kind kind = Recipe.Kind.named(given.getOrDefault("kind", "full"));
        Job usual = FilmFields.PLATE.with(
                JobWords.fresh(new SourceArt("", "test plate, " + kind.word(), "", 1, 1), workshop, today),
                usualPlate(kind));
        Job base = like.map(job -> JobFields.sharing(usual, job)).orElse(usual);
        Job job = JobFields.told(base, given, Kind.Art.UNKNOWN);
        if (job.process() instanceof PlateProcess.Photogravure) {
            throw Refusal.use(
                    "a test plate is screened, but the process photogravure has a continuous-tone film: choose"
                            + " etched-film, sprayed-aquatint or unetched-film");
        }
        // No picture runs past the platemark, and true size is what a test plate is for.
        Job square = job.placed(
                        job.placing().trueSize().onOneSheet(job.placing().sheet()))
                .unmended();
        return new WedgeWork(
                square,
                workshop,
                kind,
                given.containsKey(FilmFields.SEED.name())
                        ? FilmFields.SEED.parse(given.get(FilmFields.SEED.name()), Kind.Art.UNKNOWN)
                        : FilmFields.SEED.of(base));
    }

    private static Size usualPlate(Recipe.Kind kind) {
        return switch (kind) {
            case FULL -> new Size(150, 200);
            case STRIP -> new Size(150, 40);
            case EXPOSURE -> new Size(100, 150);
            case CHECK -> new Size(80, 100);
        };
    }

    /** The plate that a kind takes where none is told, such as "150x200mm". */
    public static String usualPlate(String kind) {
        return FilmFields.PLATE.kind().print(usualPlate(Recipe.Kind.named(kind)));
    }

    /**
     * A test film to be looked at.
     *
     * @param sheet the whole sheet, ink side towards the eye
     */
    public record Look(LivePicture sheet, Findings findings) {}

    /** Shows the film without writing it. */
    public Look look(Progress progress) throws IOException {
        Laid laid = laid();
        progress.done(0.5);
        LivePicture sheet = WedgePicture.of(laid.rows(), progress.part(0.5, 1));
        return new Look(sheet, laid.findings(job));
    }

    /**
     * Makes the film and writes it.
     *
     * @param film the PDF to write, replaced whole or not at all
     */
    public Findings make(Path film, Progress progress) throws IOException {
        Laid laid = laid();
        String chart = laid.check().map(ChartFile::text).orElseGet(() -> ChartFile.text(laid.plate()));
        FilmDocument document = FilmFile.ofTestPlate(
                job, workshop, laid.plan(), new FilmDocument.Film(laid.rows().sheet(), laid.rows()), chart);
        int threads = Crew.allCores();
        SafeFile.write(
                "film", film, channel -> FilmPdf.write(document, Channels.newOutputStream(channel), threads, progress));
        return laid.findings(job);
    }

    /** What lies where, before it is written. */
    private record Laid(TestPlate plate, Optional<CheckPlate> check, ExposurePlan plan, FilmComposer rows) {
        Findings findings(Job job) {
            return WedgeFindings.of(job, plate, check, plan, rows.sheet());
        }
    }

    private Laid laid() {
        // Refuses what doesn't fit before the long work.
        if (kind == Recipe.Kind.CHECK) {
            CheckPlate.of(checkedRecipe(CODE_PERCENT), PLACEHOLDERS);
        } else {
            TestPlate.of(checkedRecipe(CODE_PERCENT));
        }
        JobPlate virtual = JobPlate.of(workshop, job);
        ThresholdTile tile = virtual.grain().orElseThrow();
        JobTones tones = virtual.tones();
        double turningPoint = tones.turningPoint();
        int dark = Math.max(
                Recipe.LEAST_CODE, Math.min(CODE_PERCENT, (int) Math.floor(turningPoint * 100) - BELOW_TURNING_POINT));
        Optional<CheckPlate> check = kind == Recipe.Kind.CHECK
                ? Optional.of(CheckPlate.of(checkedRecipe(dark), stated(tones)))
                : Optional.empty();
        TestPlate plate = check.map(CheckPlate::plate).orElseGet(() -> TestPlate.of(checkedRecipe(dark)));
        ExposurePlan plan = WedgePlan.of(job, workshop, plate, check);
        FilmComposer rows = composed(plate, plan, tile, check.map(each -> WedgePlan.stated(each, tones.name())));
        return new Laid(plate, check, plan, rows);
    }

    private static List<CheckPlate.Tone> stated(JobTones tones) {
        return CheckPlate.tones(
                tones.response(), tones.isMeasured() ? Optional.of(tones.foretold()) : Optional.empty());
    }

    private Recipe checkedRecipe(int codePercent) {
        Refusal.checkRange("test plate's seed", (double) seed, 0, Recipe.MOST_SEED, "", "1 is usual");
        return Recipe.of(
                kind,
                job.plate(),
                job.placing().bevelMillimetres(),
                (int) seed,
                codePercent,
                GrainPatches.spacingMicrometres(job.grain()));
    }

    private FilmComposer composed(TestPlate plate, ExposurePlan plan, ThresholdTile tile, Optional<String> stated) {
        FilmPixels pixels = workshop.filmPrinter().pixels(job.resolution());
        Optional<TestStrip> strips = WedgePlan.strips(plate, workshop);
        List<String> contents = new ArrayList<>();
        strips.ifPresent(times -> contents.add(WedgePlan.timetable(times)));
        contents.addAll(plate.legend());
        stated.ifPresent(contents::add);
        return TestPlateSheet.film(
                plate,
                pixels,
                tile,
                job.placing().sheet(),
                job.placing().readingSide().mirrored(),
                FilmLegends.testPlate(
                        job, pixels, "test plate " + kind.word() + " " + plate.id(), contents, plan.summary()),
                strips.map(WedgePlan::stripWords).orElse(List.of()),
                LegendFace.load());
    }
}
