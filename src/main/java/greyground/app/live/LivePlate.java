package greyground.app.live;

import greyground.app.bite.BiteLogAdvice;
import greyground.app.bite.BiteTimes;
import greyground.app.bite.LoggedProof;
import greyground.app.bite.PlannedPlate;
import greyground.app.check.FilmChecks;
import greyground.app.check.PlateWarning;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.ComposedFilm;
import greyground.app.recipe.FilmRecipe;
import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.app.sight.Stage;
import greyground.app.sight.StageTones;
import greyground.film.job.Job;
import greyground.film.job.PlacingFields;
import greyground.plan.ExposurePlan;
import greyground.plate.Bath;
import greyground.plate.PlateConditions;
import greyground.plate.PlateMap;
import greyground.plate.PlateProcess;
import greyground.plate.PlateWindow;
import greyground.plate.WholePlate;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import greyground.raster.Crew;
import greyground.raster.HalvedPlanes;
import greyground.raster.Progress;
import greyground.tone.ToneCurve;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * One job in one workshop, to be looked at from all sides while it is worked on. Seen from afar each place shows its even tone,
 * through the very curve and response that make the film; seen closely the film's own pixels go through the virtual plate.
 *
 * <p>Used by the one thread that works the {@link LiveBench} it comes from, and only until that makes another; a window's own thread,
 * which must never wait for it, is refused.
 */
public final class LivePlate {
    /** How much of the sheet round the plate is shown, in millimetres (assumed). */
    public static final double MARGIN_MILLIMETRES = 12;

    private final FilmRecipe recipe;
    private final ArtSource art;
    private final HalvedPlanes planes;
    private final StageTones tones;
    private final LiveGreys greys;
    private final LiveBench bench;
    private final LivePlacing placing;
    private final ToneCurves curves;
    private final HandTones hand;
    private @Nullable FilmRecipe whole;

    LivePlate(
            LiveBench bench, FilmRecipe recipe, ArtSource art, HalvedPlanes planes, StageTones tones, LiveGreys greys) {
        this.bench = bench;
        this.recipe = recipe;
        this.art = art;
        this.planes = planes;
        this.tones = tones;
        this.greys = greys;
        this.placing = new LivePlacing(recipe.job(), planes, greys);
        this.curves = ToneCurves.of(recipe);
        this.hand = HandTones.of(recipe);
    }

    /** The same on one sheet for each film, as it lies on the plate. */
    private FilmRecipe whole() throws IOException {
        FilmRecipe present = whole;
        if (present == null) {
            present = recipe.onOneSheet();
            whole = present;
        }
        return present;
    }

    /** The job, settled: digest, white and black as numbers. */
    public Job job() {
        return recipe.job();
    }

    /** Linear luminance of the art that prints as bare paper. */
    public double artWhite() {
        return recipe.range().white();
    }

    /** Linear luminance of the art that prints darkest. */
    public double artBlack() {
        return recipe.range().black();
    }

    /** How much film black the curve stops short of the turning point. */
    public double reserve() {
        return recipe.reserve().turn() - recipe.reserve().limit();
    }

    /** The curves that its tones go through. */
    public ToneCurves curves() {
        return curves;
    }

    /** What the hand has set of the art's tones. */
    public HandTones hand() {
        return hand;
    }

    /** The tones of the art's fragment at a stage of the plate; of the art itself where that is empty. */
    public ToneCounts counts(Optional<Stage> stage) throws IOException {
        art.own();
        return ToneCounts.of(
                recipe.greys(),
                stage,
                grey -> curves.at(
                        grey, recipe.compensation().curve(), recipe.tones().response()),
                curves.plate().stream().mapToDouble(ToneCurves.Point::out).max().orElse(1));
    }

    /** Pixels of the art as the job turns it. */
    public int artWidth() {
        return planes.whole().width();
    }

    /** Pixels of the art as the job turns it. */
    public int artHeight() {
        return planes.whole().height();
    }

    /** The art by itself; the view counts art pixels. */
    public LivePicture art(LiveView view) {
        return new LiveArt(art, planes, greys).picture(view);
    }

    /** A stage from afar: every place as its even tone looks. */
    public LivePicture tones(Stage stage, LiveView view) {
        art.own();
        short[] seen = placing.greys(view);
        double margin = stage == Stage.FILM || stage == Stage.PRINT ? MARGIN_MILLIMETRES : 0;
        LivePlacing.Cover sheet = placing.plate(margin);
        double image = stage == Stage.FILM ? job().placing().bleedMillimetres() : 0;
        LivePlacing.Cover covered = placing.cover(image);
        int[] colours = new int[ToneCurve.CODES];
        for (int grey = 0; grey < colours.length; grey++) {
            colours[grey] = LivePicture.OPAQUE
                    | tones.colour(stage, recipe.compensation().curve().coverage(grey));
        }
        int bare = LivePicture.OPAQUE | tones.colour(stage, 0);
        Shares shares = Shares.of(recipe, view);
        return LiveGreys.coloured(view, (at, across, down) -> {
            if (!sheet.has(across, down) || !covered.has(across, down)) {
                return sheet.has(across, down) ? bare : 0;
            }
            int grey = seen[at] & 0xFFFF;
            return shares.whole(at)
                    ? colours[grey]
                    : LivePicture.OPAQUE
                            | tones.colour(
                                    stage,
                                    shares.coverage(
                                            recipe.compensation().curve().coverage(grey), at));
        });
    }

    /** The art where it lies on the plate, to be held against a stage of it. */
    public LivePicture artOnPlate(LiveView view) {
        art.own();
        short[] seen = placing.greys(view);
        LivePlacing.Cover covered = placing.cover(0);
        int[] table = LiveGreys.ofLuminance();
        int paper = table[ToneCurve.CODES - 1];
        LivePlacing.Cover sheet = placing.plate(MARGIN_MILLIMETRES);
        return LiveGreys.coloured(
                view,
                (at, across, down) ->
                        !sheet.has(across, down) ? 0 : covered.has(across, down) ? table[seen[at] & 0xFFFF] : paper);
    }

    /**
     * What becomes bare paper or full black, and what the plate can't print as wished: tinted, all else clear. To be laid over the picture of
     * a stage, or of the art where that is empty.
     */
    public LivePicture lost(Optional<Stage> stage, LiveView view) {
        art.own();
        int[] tints = LostTones.tints(recipe.compensation(), artWhite(), artBlack());
        if (stage.isEmpty()) {
            return new LiveArt(art, planes, greys).coloured(view, tints);
        }
        short[] seen = placing.greys(view);
        LivePlacing.Cover covered = placing.cover(0);
        return LiveGreys.coloured(view, (at, across, down) -> covered.has(across, down) ? tints[seen[at] & 0xFFFF] : 0);
    }

    /** The tone at a place of the plate. */
    public ToneAt tone(Offset place) {
        double across = place.acrossMillimetres();
        double down = place.downMillimetres();
        if (!placing.cover(0).has(across, down)) {
            // Clear film, whatever the art.
            return new ToneAt(100, 0, curves.plate().get(0).out(), curves.bareLightness());
        }
        return toneOfArt(placing.artX(across), placing.artY(down));
    }

    /** The tone at a place of the art, in art pixels. */
    public ToneAt toneOfArt(double artX, double artY) {
        return curves.at(
                grey(artX, artY), recipe.compensation().curve(), recipe.tones().response());
    }

    /** Linear luminance of the art about a place, over about five by five of its pixels (assumed) so that a speck decides nothing. */
    public double luminance(double artX, double artY) {
        return (double) grey(artX, artY) / (ToneCurve.CODES - 1);
    }

    private int grey(double artX, double artY) {
        art.own();
        double side = 5;
        return LiveGreys.drawn(new LiveGreys.Window(planes, artX - side / 2, artY - side / 2, side, side, 1, 1))[0]
                & 0xFFFF;
    }

    /**
     * A stage from near: the film's own dots go through the virtual plate.
     *
     * @param quick on pixels twice as wide as a tone of the response deserves, a quarter of the work; else as fine as the view shows
     */
    public LivePicture close(Stage stage, LiveView view, boolean quick, Progress progress) throws IOException {
        art.own();
        PlateWindow window = window(view);
        double fine = recipe.plate().widestPixelMicrometres();
        double widest = quick ? 2 * fine : Math.min(2 * fine, Math.max(fine, window.cellMicrometres()));
        List<PlateMap> maps = film(widest)
                .look(
                        window,
                        List.of(new WholePlate.Look(recipe.plate().conditions(), stage.view(false))),
                        Crew.allCores(),
                        progress);
        PlateMap map = maps.get(0);
        if (stage == Stage.PRINT && widest > fine) {
            map = tones.alignment(recipe.plate().plate(recipe.plate().conditions(), widest), widest)
                    .of(map);
        }
        return LivePicture.of(stage.coloured(map, recipe.plate().conditions()));
    }

    /** The bath's own bite; empty where nothing is bitten. */
    public OptionalDouble biteMinutes() {
        return recipe.plate().conditions().wells() instanceof Bath
                ? OptionalDouble.of(recipe.workshop().bath().biteMinutes().value())
                : OptionalDouble.empty();
    }

    /** How deep a fresh bath bites in so many minutes. */
    public double depthMicrometres(double minutes) {
        return minutes * recipe.workshop().bath().rateMicrometresPerMinute().value();
    }

    /**
     * The same film bitten for several times in a fresh bath, each through the virtual plate; all as predicted, since none but the usual
     * bite can have been measured.
     *
     * @param view of a place; its middle's tone is told
     */
    public List<LiveBite> bites(Stage stage, LiveView view, BiteTimes times, Progress progress) throws IOException {
        art.own();
        if (biteMinutes().isEmpty()) {
            throw Refusal.use(job().process().words()
                    + " is not bitten, so it has no bite times to compare: choose another process");
        }
        List<WholePlate.Look> looks = new ArrayList<>();
        for (double minutes : times.minutes()) {
            looks.add(new WholePlate.Look(recipe.plate().conditions(depthMicrometres(minutes)), stage.view(false)));
        }
        List<PlateMap> maps = film(recipe.plate().widestPixelMicrometres())
                .look(window(view), looks, Crew.allCores(), progress.part(0, 0.5));
        double coverage = tone(new Offset(
                        view.left() + view.width() * view.perPixel() / 2,
                        view.top() + view.height() * view.perPixel() / 2))
                .coverage();
        List<LiveBite> bites = new ArrayList<>();
        for (int i = 0; i < looks.size(); i++) {
            progress.done(0.5 + 0.5 * i / looks.size());
            PlateConditions conditions = looks.get(i).conditions();
            double minutes = times.minutes().get(i);
            bites.add(new LiveBite(
                    minutes,
                    depthMicrometres(minutes),
                    coverage,
                    recipe.plate().response(conditions).lightness(coverage),
                    LivePicture.of(stage.coloured(maps.get(i), conditions))));
        }
        return bites;
    }

    private static PlateWindow window(LiveView view) {
        return new PlateWindow(
                view.left() * 1000, view.top() * 1000, view.perPixel() * 1000, view.width(), view.height());
    }

    /** Composed where it is looked at. */
    private WholePlate film(double widestPixelMicrometres) throws IOException {
        return new WholePlate(
                whole().positive().onPlateInParts(),
                whole().screen().map(ComposedFilm::onPlateInParts).orElse(null),
                widestPixelMicrometres);
    }

    /**
     * The whole film sheet as it will come out, with its marks and words.
     *
     * @param screen whether the aquatint screen film of a photogravure is meant, which other processes do not have
     */
    public LiveSheet sheet(boolean screen) throws IOException {
        art.own();
        ToneCurve curve = recipe.compensation().curve();
        if (screen && job().process() instanceof PlateProcess.Photogravure process) {
            int even = (int) Math.round(ToneCurve.SOLID * process.screenBlack());
            return new LiveSheet(recipe, recipe.screen().orElseThrow(), placing, tones, curve, grey -> even, false);
        }
        return new LiveSheet(recipe, recipe.positive(), placing, tones, curve, curve::coverage, true);
    }

    /** What to do at the bench, as the film would carry it. */
    public ExposurePlan plan() throws IOException {
        art.own();
        return recipe.plan();
    }

    /** What this plate's proofs tell: how fast the bath bites it, and what further minutes would do. Takes seconds. */
    public BiteLogAdvice biteLog(List<LoggedProof> proofs, Progress progress) throws IOException {
        PlannedPlate plate = new PlannedPlate(
                job(), recipe.workshop(), plan(), recipe.compensation().nodes());
        return BiteLogAdvice.of(plate, proofs, progress);
    }

    /** What deserves a second look and can be told at once, most pressing first. */
    public List<PlateWarning> remarks(Progress progress) throws IOException {
        art.own();
        List<PlateWarning> remarks = new ArrayList<>();
        recipe.sheetFault()
                .ifPresent(
                        words -> remarks.add(PlateWarning.of("small-sheet", words, PlacingFields.SHEET_WIDTH.name())));
        remarks.addAll(LostTones.of(recipe.compensation(), recipe.greys(), placing, job().plate()));
        plan().warnings().forEach(words -> remarks.add(PlateWarning.of("film", words, "")));
        recipe.warnings().forEach(words -> remarks.add(PlateWarning.of("film", words, "")));
        if (!recipe.tones().isMeasured()) {
            remarks.addAll(bench.assumed(recipe, progress));
        }
        return remarks;
    }

    /** Looks through every dot of the film for what the plate will not keep; most pressing first. Takes seconds. */
    public List<PlateWarning> check(Progress progress) throws IOException {
        art.own();
        return FilmChecks.of(whole().job(), recipe.workshop(), whole().films(), progress)
                .warnings();
    }
}
