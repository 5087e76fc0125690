package greyground.app.chart;

import greyground.app.files.SafeFile;
import greyground.app.kept.GrainStore;
import greyground.app.live.LiveGreys;
import greyground.app.recipe.FilmFile;
import greyground.app.recipe.FilmWords;
import greyground.app.recipe.JobPlate;
import greyground.app.recipe.JobTones;
import greyground.app.recipe.JobWords;
import greyground.app.recipe.SourceArt;
import greyground.app.sight.LivePicture;
import greyground.chart.CheckPlate;
import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.film.compose.FilmComposer;
import greyground.film.compose.TestPlateSheet;
import greyground.film.job.FilmFields;
import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.film.job.Kind;
import greyground.film.sheet.ChartFile;
import greyground.film.sheet.FilmLegends;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.SheetShares;
import greyground.finding.Findings;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.output.FilmDocument;
import greyground.output.FilmPdf;
import greyground.plan.ExposurePlan;
import greyground.plan.TestStrip;
import greyground.plate.PlateProcess;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.Crew;
import greyground.raster.Progress;
import greyground.tone.ToneCurve;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Makes the film of a test plate and writes it. */
public final class WedgeWork {
    /** Along the longer side: sharper than most windows show it (assumed). */
    private static final int MOST_PIXELS = 1600;

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
        if (kind == Recipe.Kind.EXPOSURE && job.process() instanceof PlateProcess.Photogravure) {
            throw Refusal.use(
                    "an exposure test tries one exposure, but photogravure has two: choose full, strip or check,"
                            + " and search the two with 'plan --search-exposure'");
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
            case INKS -> throw new IllegalArgumentException("plates of inks are made by themselves");
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

    public Look look(Progress progress) throws IOException {
        Laid laid = laid();
        progress.done(0.5);
        LivePicture sheet = picture(laid.rows(), progress.part(0.5, 1));
        return new Look(sheet, findings(job, laid, Optional.empty()));
    }

    /** Makes the film and writes it as a PDF, replaced whole or not at all. */
    public Findings make(Path film, Progress progress) throws IOException {
        Laid laid = laid();
        String chart = laid.check().map(ChartFile::text).orElseGet(() -> ChartFile.text(laid.plate()));
        List<FilmDocument.Film> films = Stream.concat(Stream.of(laid.rows()), laid.screen().stream())
                .map(rows -> new FilmDocument.Film(rows.sheet(), rows))
                .toList();
        FilmDocument document = FilmFile.ofTestPlate(job, workshop, laid.plan(), films, chart);
        int threads = Crew.allCores();
        SafeFile.write(
                "film", film, channel -> FilmPdf.write(document, Channels.newOutputStream(channel), threads, progress));
        return findings(job, laid, Optional.of(FilmDocument.paper(films.size())));
    }

    /**
     * @param rows of the positive
     * @param screen of photogravure
     */
    private record Laid(
            TestPlate plate,
            Optional<CheckPlate> check,
            ExposurePlan plan,
            FilmComposer rows,
            Optional<FilmComposer> screen) {
        int films() {
            return screen.isPresent() ? 2 : 1;
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
        JobTones tones = virtual.tones();
        double turningPoint = tones.turningPoint();
        int dark = Math.max(
                Recipe.LEAST_CODE, Math.min(CODE_PERCENT, (int) Math.floor(turningPoint * 100) - BELOW_TURNING_POINT));
        Optional<CheckPlate> check = kind == Recipe.Kind.CHECK
                ? Optional.of(CheckPlate.of(checkedRecipe(dark), stated(tones)))
                : Optional.empty();
        TestPlate plate = check.map(CheckPlate::plate).orElseGet(() -> TestPlate.of(checkedRecipe(dark)));
        ExposurePlan plan =
                WedgePlan.of(job, workshop, plate, check, virtual.loss(tones.predicted(), plate.plateByCoverage()));
        FilmComposer rows =
                composed(plate, plan, virtual.grain(), check.map(each -> WedgePlan.stated(each, tones.name())));
        return new Laid(plate, check, plan, rows, screen(plate, plan));
    }

    private Optional<FilmComposer> screen(TestPlate plate, ExposurePlan plan) {
        if (!(job.process() instanceof PlateProcess.Photogravure process)) {
            return Optional.empty();
        }
        FilmPixels pixels = workshop.filmPrinter().pixels(job.resolution());
        return Optional.of(TestPlateSheet.screen(
                plate,
                pixels,
                GrainStore.screen(process, job.resolution()),
                job.placing().sheet(),
                job.placing().readingSide().mirrored(),
                FilmLegends.screen(
                        job, pixels, process.screenBlack(), process.screenSpacingMicrometres(), plan.summary()),
                FilmPdf.legendWidth()));
    }

    private static List<CheckPlate.Tone> stated(JobTones tones) {
        return CheckPlate.tones(
                tones.response(), tones.isMeasured() ? Optional.of(tones.predicted()) : Optional.empty());
    }

    private Recipe checkedRecipe(int codePercent) {
        Refusal.checkRange("test plate's seed", (double) seed, 0, Recipe.MOST_SEED, "", "1 is usual");
        return Recipe.of(
                kind,
                job.plate(),
                job.placing().bevelMillimetres(),
                (int) seed,
                codePercent,
                JobPlate.spacingMicrometres(job));
    }

    private FilmComposer composed(
            TestPlate plate, ExposurePlan plan, Optional<ThresholdTile> tile, Optional<String> stated) {
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
                job.grain() instanceof Grain.Continuous continuous ? continuous.bits() : 1,
                job.placing().sheet(),
                job.placing().readingSide().mirrored(),
                FilmLegends.testPlate(
                        job, pixels, "test plate " + kind.word() + " " + plate.id(), contents, plan.summary()),
                strips.map(WedgePlan::stripWords).orElse(List.of()),
                FilmPdf.legendWidth());
    }

    /** A film of bits, to be looked at whole: every pixel the mean light of those of the film that it stands for. */
    private static LivePicture picture(FilmRows film, Progress progress) throws IOException {
        int factor = Math.max(1, (int) Math.ceil(Math.max(film.width(), film.height()) / (double) MOST_PIXELS));
        int across = film.width() / factor;
        int down = film.height() / factor;
        SheetShares.Window whole = new SheetShares.Window(0, 0, factor, factor, across, down);
        float[] black = SheetShares.ofFilm(film, 0, down * factor, whole, progress);
        int[] table = LiveGreys.ofLuminance();
        int[] pixels = new int[black.length];
        for (int i = 0; i < pixels.length; i++) {
            float light = Math.max(0, Math.min(1, 1 - black[i]));
            pixels[i] = table[Math.round((ToneCurve.CODES - 1) * light)];
        }
        return new LivePicture(across, down, pixels);
    }

    private static Findings findings(Job job, Laid laid, Optional<String> paper) {
        TestPlate plate = laid.plate();
        String kind = plate.recipe().kind().word();
        Findings findings = FilmWords.findings(job, laid.rows().sheet(), laid.films())
                .put("kind", kind)
                .put("id", plate.id())
                .say("chart", kind + " " + plate.id() + ", " + wedgeWords(plate))
                .put("fields", plate.patches().size())
                .put("fewestRepeats", plate.fewestRepeats())
                .put("strips", plate.strips().size());
        laid.check()
                .ifPresent(tones -> findings.rows(
                        "printsAtLightness",
                        List.of(printsWords(tones.tones())),
                        tones.tones().stream()
                                .map(tone -> new Findings()
                                        .put("coveragePercent", tone.coveragePerMille() / 10.0)
                                        .put("lightness", tone.lightness()))
                                .toList()));
        return findings.say(
                        "code",
                        plate.codes().size() + ", each "
                                + Refusal.plain(plate.codes().get(0).area().width() / 1000.0) + " mm, dark parts "
                                + plate.recipe().codePercent() + " % "
                                + (laid.screen().isPresent() ? "black" : "grain") + "; they say " + plate.codeText(),
                        plate.codeText())
                .put("codePercent", plate.recipe().codePercent())
                .say("plan", laid.plan().summary())
                .say("print", paper)
                .list("leftOut", plate.leftOut())
                .list(
                        "notes",
                        Stream.concat(WedgePlan.notes(job).stream(), laid.plan().warnings().stream())
                                .toList());
    }

    private static String printsWords(List<CheckPlate.Tone> tones) {
        return String.format(
                Locale.ROOT,
                "L* %.1f (bare paper), then %.1f to %.1f in %d steps",
                tones.get(0).lightness(),
                tones.get(1).lightness(),
                tones.get(tones.size() - 1).lightness(),
                tones.size() - 1);
    }

    private static String wedgeWords(TestPlate plate) {
        if (!plate.strips().isEmpty()) {
            return plate.strips().size() + " strips";
        }
        long levels = plate.patches().stream()
                .map(patch -> patch.coveragePerMille())
                .distinct()
                .count();
        return plate.patches().size() + " fields of " + levels + " levels, each at least " + plate.fewestRepeats()
                + " times";
    }
}
