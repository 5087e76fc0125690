package greyground.app;

import greyground.film.ArtScale;
import greyground.film.FilmComposer;
import greyground.film.Job;
import greyground.film.Mend;
import greyground.film.Placing;
import greyground.grain.ThresholdTile;
import greyground.picture.Colouring;
import greyground.plan.BenchConditions;
import greyground.plan.ExposurePlan;
import greyground.plate.Bath;
import greyground.plate.Film;
import greyground.plate.FilmLimits;
import greyground.plate.PlateConditions;
import greyground.plate.PlateFilm;
import greyground.plate.PlateMap;
import greyground.plate.PlateProcess;
import greyground.plate.PlateWindow;
import greyground.plate.WholePlate;
import greyground.quantity.FilmPixels;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import greyground.raster.HalvedPlanes;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.Compensation;
import greyground.tone.ToneCurve;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * One job in one workshop, to be looked at from all sides while it is worked on. Seen from afar each place shows its even tone,
 * through the very curve and response that make the film; seen closely the film's own pixels go through the virtual plate.
 *
 * <p>Used by the one thread that works the {@link LiveBench} it comes from, and only until that makes another; a window's own thread,
 * which must never wait for it, is refused.
 */
public final class LivePlate {
    /** How much of the sheet round the plate is shown, in millimetres. */
    public static final double MARGIN_MILLIMETRES = 12;

    /** Less of the art than this is not worth a word. */
    private static final double LEAST_SHARE_SAID = 0.001;

    /** Fields along the plate's longer side, and pixels along a field, in which lost tones are counted. */
    private static final int LOST_FIELDS = 16;

    private static final int LOST_PIXELS = 16;

    private final Job job;
    private final Workshop workshop;
    private final ArtRange range;
    private final Optional<ThresholdTile> tile;
    private final JobPlate plate;
    private final JobTones known;
    private final Compensation compensation;
    private final StageTones tones;
    private final LiveArt art;
    private final HalvedPlanes planes;
    private final LiveGreys greys;
    private final ToneCurves curves;
    private @Nullable ExposurePlan plan;
    private FilmPreparation.@Nullable Picture picture;
    private long @Nullable [] counts;

    LivePlate(Made made, LiveArt art, HalvedPlanes planes, LiveGreys greys) {
        this.job = made.job();
        this.workshop = made.workshop();
        this.range = made.range();
        this.tile = made.tile();
        this.plate = made.plate();
        this.known = made.known();
        this.compensation = made.compensation();
        this.tones = made.tones();
        this.art = art;
        this.planes = planes;
        this.greys = greys;
        this.curves = ToneCurves.of(compensation, known);
    }

    /** What a bench has made for one state of job and workshop. */
    record Made(
            Job job,
            Workshop workshop,
            ArtRange range,
            Optional<ThresholdTile> tile,
            JobPlate plate,
            JobTones known,
            Compensation compensation,
            StageTones tones) {}

    /** The job, settled: digest, white and black as numbers. */
    public Job job() {
        return job;
    }

    /** Linear luminance of the art that prints as bare paper. */
    public double artWhite() {
        return range.white();
    }

    /** Linear luminance of the art that prints darkest. */
    public double artBlack() {
        return range.black();
    }

    /** The curves that its tones go through. */
    public ToneCurves curves() {
        return curves;
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
        art.own();
        short[] seen = greys.of(planes, view.left(), view.top(), view.perPixel(), view.perPixel(), view);
        int[] pixels = new int[seen.length];
        int[] table = LiveGreys.ofLuminance();
        for (int y = 0; y < view.height(); y++) {
            double down = view.top() + (y + 0.5) * view.perPixel();
            for (int x = 0; x < view.width() && down >= 0 && down < artHeight(); x++) {
                double across = view.left() + (x + 0.5) * view.perPixel();
                if (across >= 0 && across < artWidth()) {
                    pixels[y * view.width() + x] = table[seen[y * view.width() + x] & 0xFFFF];
                }
            }
        }
        return new LivePicture(view.width(), view.height(), pixels);
    }

    /** A stage from afar: every place as its even tone looks. */
    public LivePicture tones(Stage stage, LiveView view) {
        art.own();
        short[] seen = platedGreys(view);
        double width = job.plate().widthMillimetres();
        double height = job.plate().heightMillimetres();
        double margin = stage == Stage.FILM || stage == Stage.PRINT ? MARGIN_MILLIMETRES : 0;
        double image = stage == Stage.FILM ? job.placing().bleedMillimetres() : 0;
        double[] shown = shown(image);
        int[] colours = new int[ToneCurve.CODES];
        for (int grey = 0; grey < colours.length; grey++) {
            colours[grey] = LivePicture.OPAQUE
                    | tones.colour(stage, compensation.curve().coverage(grey));
        }
        int bare = LivePicture.OPAQUE | tones.colour(stage, 0);
        int[] pixels = new int[seen.length];
        for (int y = 0; y < view.height(); y++) {
            double down = view.top() + (y + 0.5) * view.perPixel();
            if (down < -margin || down >= height + margin) {
                continue;
            }
            for (int x = 0; x < view.width(); x++) {
                double across = view.left() + (x + 0.5) * view.perPixel();
                if (across >= -margin && across < width + margin) {
                    boolean art = across >= shown[0] && across < shown[1] && down >= shown[2] && down < shown[3];
                    int at = y * view.width() + x;
                    pixels[at] = art ? colours[seen[at] & 0xFFFF] : bare;
                }
            }
        }
        return new LivePicture(view.width(), view.height(), pixels);
    }

    /** Left, right, top and bottom of what the art covers, in millimetres of plate. */
    private double[] shown(double bleed) {
        double width = job.plate().widthMillimetres();
        double height = job.plate().heightMillimetres();
        if (job.placing().fit() == Placing.Fit.FILL) {
            return new double[] {-bleed, width + bleed, -bleed, height + bleed};
        }
        ArtScale lies = scale();
        double halfAcross = job.art().crop().width() * artWidth() * lies.across() / 2;
        double halfDown = job.art().crop().height() * artHeight() * lies.down() / 2;
        boolean full = halfAcross >= width / 2 - 1e-6;
        boolean tall = halfDown >= height / 2 - 1e-6;
        return new double[] {
            full ? -bleed : width / 2 - halfAcross,
            full ? width + bleed : width / 2 + halfAcross,
            tall ? -bleed : height / 2 - halfDown,
            tall ? height + bleed : height / 2 + halfDown
        };
    }

    private ArtScale scale() {
        return ArtScale.of(
                artWidth(),
                artHeight(),
                job.art().crop(),
                job.placing().fit(),
                job.placing().shrink(),
                new ArtScale.Plate(job.plate().widthMillimetres(), job.plate().heightMillimetres(), 1, 1));
    }

    private short[] platedGreys(LiveView view) {
        ArtScale lies = scale();
        return greys.of(
                planes,
                lies.artX(view.left() - job.plate().widthMillimetres() / 2),
                lies.artY(view.top() - job.plate().heightMillimetres() / 2),
                view.perPixel() / lies.across(),
                view.perPixel() / lies.down(),
                view);
    }

    /** The tone at a place of the plate. */
    public ToneAt tone(Offset place) {
        double across = place.acrossMillimetres();
        double down = place.downMillimetres();
        double[] shown = shown(0);
        if (across < shown[0] || across >= shown[1] || down < shown[2] || down >= shown[3]) {
            // Clear film, whatever the art.
            return new ToneAt(100, 0, curves.plate().get(0).out(), curves.bareLightness());
        }
        ArtScale lies = scale();
        return toneOfArt(
                lies.artX(across - job.plate().widthMillimetres() / 2),
                lies.artY(down - job.plate().heightMillimetres() / 2));
    }

    /** The tone at a place of the art, in art pixels. */
    public ToneAt toneOfArt(double artX, double artY) {
        return curves.at(grey(artX, artY), compensation.curve(), known.response());
    }

    /** Linear luminance of the art about a place, over about five by five of its pixels so that a speck decides nothing. */
    public double luminance(double artX, double artY) {
        return (double) grey(artX, artY) / (ToneCurve.CODES - 1);
    }

    private int grey(double artX, double artY) {
        art.own();
        double side = 5;
        return LiveArt.greys(planes, artX - side / 2, artY - side / 2, side, side, 1, 1)[0] & 0xFFFF;
    }

    /** The same place on the plate, from a place of the art in art pixels. */
    public Offset onPlate(double artX, double artY) {
        ArtScale lies = scale();
        return new Offset(
                job.plate().widthMillimetres() / 2 + (artX - lies.middleX()) * lies.across(),
                job.plate().heightMillimetres() / 2 + (artY - lies.middleY()) * lies.down());
    }

    /**
     * A stage from near: the film's own dots go through the virtual plate.
     *
     * @param quick on pixels twice as wide as a tone of the response deserves, a quarter of the work; else as fine as the view shows
     */
    public LivePicture close(Stage stage, LiveView view, boolean quick, Progress progress) throws Exception {
        art.own();
        PlateWindow window = window(view);
        double fine = plate.widestPixelMicrometres();
        double widest = quick ? 2 * fine : Math.min(2 * fine, Math.max(fine, window.cellMicrometres()));
        List<PlateMap> maps = new WholePlate(positive(), screen(), widest)
                .look(
                        window,
                        List.of(new WholePlate.Look(plate.conditions(), StageLook.view(stage, false))),
                        threads(),
                        progress);
        PlateMap map = maps.get(0);
        if (stage == Stage.PRINT && widest > fine) {
            map = tones.alignment(plate.plate(plate.conditions(), widest), widest)
                    .of(map);
        }
        return LivePicture.of(StageLook.coloured(stage, map, plate.conditions()));
    }

    /** The bath's own bite; empty where nothing is bitten. */
    public OptionalDouble biteMinutes() {
        return plate.conditions().wells() instanceof Bath
                ? OptionalDouble.of(workshop.bath().biteMinutes().value())
                : OptionalDouble.empty();
    }

    /** How deep a fresh bath bites in so many minutes. */
    public double depthMicrometres(double minutes) {
        return minutes * workshop.bath().rateMicrometresPerMinute().value();
    }

    /**
     * The same film bitten for several times in a fresh bath, each through the virtual plate; all as foretold, since none but the usual
     * bite can have been measured.
     *
     * @param view of a place; its middle's tone is told
     */
    public List<LiveBite> bites(Stage stage, LiveView view, BiteTimes times, Progress progress) throws Exception {
        art.own();
        if (biteMinutes().isEmpty()) {
            throw Refusal.use(job.process().word()
                    + " is not bitten, so it has no bite times to compare: choose another process");
        }
        List<WholePlate.Look> looks = new ArrayList<>();
        for (double minutes : times.minutes()) {
            looks.add(new WholePlate.Look(plate.conditions(depthMicrometres(minutes)), StageLook.view(stage, false)));
        }
        List<PlateMap> maps = new WholePlate(positive(), screen(), plate.widestPixelMicrometres())
                .look(window(view), looks, threads(), progress.part(0, 0.5));
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
                    plate.response(conditions).lightness(coverage),
                    LivePicture.of(StageLook.coloured(stage, maps.get(i), conditions))));
        }
        return bites;
    }

    private static PlateWindow window(LiveView view) {
        return new PlateWindow(
                view.left() * 1000, view.top() * 1000, view.perPixel() * 1000, view.width(), view.height());
    }

    private static int threads() {
        return Math.max(1, Runtime.getRuntime().availableProcessors());
    }

    private PlateFilm positive() throws Exception {
        FilmPreparation.Picture film = picture();
        FilmOnPlate.Parts parts = film.composer()::within;
        if (job.mended()) {
            FilmLimits limits = FilmPreparation.limits(job, workshop);
            parts = part -> mended(film, part, limits);
        }
        return FilmOnPlate.inParts(film.composer().sheet(), film.composer(), parts, mirrored(), printed());
    }

    private greyground.film.FilmRows mended(FilmPreparation.Picture film, PixelRect part, FilmLimits limits) {
        Mend narrow = film.mendWithin(part, range, limits);
        int reach = narrow.reachPixels();
        int left = Math.max(0, part.left() - reach);
        int top = Math.max(0, part.top() - reach);
        PixelRect wide = new PixelRect(left, top, part.right() + reach - left, part.bottom() + reach - top);
        return film.mendWithin(wide, range, limits).rows();
    }

    /**
     * The whole film sheet as it will come out, with its marks and words.
     *
     * @param screen whether the aquatint screen film of a photogravure is meant, which other processes do not have
     */
    public LiveSheet sheet(boolean screen, Progress progress) throws Exception {
        String summary = plan(progress).summary();
        if (screen && job.process() instanceof PlateProcess.Photogravure process) {
            FilmComposer dots = FilmPreparation.screen(job, pixels(), process, compensation.curve(), summary);
            int coverage = (int) Math.round(ToneCurve.SOLID * process.screenBlack());
            return new LiveSheet(job, dots, dots::within, new SheetTones(grey -> coverage));
        }
        FilmPreparation.Picture film =
                FilmPreparation.picture(job, pixels(), compensation.curve(), summary, planes.whole(), tile);
        FilmLimits limits = FilmPreparation.limits(job, workshop);
        FilmOnPlate.Parts parts = job.mended() ? part -> mended(film, part, limits) : film.composer()::within;
        ToneCurve curve = compensation.curve();
        return new LiveSheet(job, film.composer(), parts, new SheetTones(curve::coverage));
    }

    /** How a sheet looks from afar: {@code coverage} turns a grey of the art to a coverage. */
    private final class SheetTones implements LiveSheet.Tones {
        private final IntUnaryOperator coverage;
        private final int[] onCopper = new int[(ToneCurve.SOLID >> 4) + 2];

        SheetTones(IntUnaryOperator coverage) {
            this.coverage = coverage;
            for (int step = 0; step < onCopper.length; step++) {
                onCopper[step] = Colouring.onCopper(tones.colour(Stage.FILM, Math.min(ToneCurve.SOLID, step << 4)));
            }
        }

        @Override
        public char[] coverages(LiveView ofPlate) {
            short[] seen = platedGreys(ofPlate);
            char[] coverages = new char[seen.length];
            for (int i = 0; i < seen.length; i++) {
                coverages[i] = (char) coverage.applyAsInt(seen[i] & 0xFFFF);
            }
            return coverages;
        }

        @Override
        public ToneCurve curve() {
            return compensation.curve();
        }

        @Override
        public int colour(int share, boolean copper) {
            return copper ? onCopper[(share + 8) >> 4] : tones.colour(Stage.FILM, share);
        }
    }

    private @Nullable PlateFilm screen() throws Exception {
        if (!(job.process() instanceof PlateProcess.Photogravure process)) {
            return null;
        }
        FilmComposer dots = FilmPreparation.screen(onOneSheet(), pixels(), process, compensation.curve(), summary());
        return FilmOnPlate.inParts(dots.sheet(), dots, dots::within, mirrored(), printed());
    }

    private Job onOneSheet() throws Exception {
        return FilmPreparation.onOneSheet(job, pixels(), compensation.curve(), summary());
    }

    /** The plan's words on the film, where they decide how the plate lies on a sheet of a given size. */
    private String summary() throws Exception {
        return job.placing().sheet().isPresent() ? plan(Progress.NONE).summary() : "";
    }

    private FilmPreparation.Picture picture() throws Exception {
        FilmPreparation.Picture present = picture;
        if (present == null) {
            present = FilmPreparation.picture(
                    onOneSheet(), pixels(), compensation.curve(), summary(), planes.whole(), tile);
            picture = present;
        }
        return present;
    }

    private boolean mirrored() {
        return FilmPreparation.mirrored(job);
    }

    private FilmPixels pixels() {
        return workshop.filmPrinter().pixels(job.resolution());
    }

    private Film printed() {
        return BenchConditions.film(workshop);
    }

    /** What to do at the bench, as the film would carry it. */
    public ExposurePlan plan(Progress progress) throws Exception {
        art.own();
        ExposurePlan present = plan;
        if (present == null) {
            present = FilmPreparation.plan(job, workshop, compensation.curve(), counts(progress));
            plan = present;
        }
        return present;
    }

    /** What this plate's proofs tell: how fast the bath bites it, and what further minutes would do. Takes seconds. */
    public BiteLogAdvice biteLog(List<LoggedProof> proofs, Progress progress) throws Exception {
        double most = compensation.nodes().stream()
                .mapToDouble(Compensation.Node::coverage)
                .max()
                .orElse(1);
        PlannedPlate planned = new PlannedPlate(job, workshop, plan(progress.part(0, 0.1)));
        return BiteLogAdvice.of(planned, proofs, most, progress.part(0.1, 1));
    }

    private long[] counts(Progress progress) throws Exception {
        long[] present = counts;
        if (present == null) {
            present = art.greysOfCrop(job.art(), progress);
            counts = present;
        }
        return present;
    }

    /** What deserves a second look and can be told at once, most pressing first. */
    public List<PlateWarning> remarks(Progress progress) throws Exception {
        art.own();
        List<PlateWarning> remarks = new ArrayList<>();
        FilmPreparation.sheetFault(job, pixels(), compensation.curve(), summary())
                .ifPresent(words -> remarks.add(PlateWarning.of("small-sheet", words, "sheet")));
        double pixels = 0;
        for (long count : counts(progress)) {
            pixels += count;
        }
        lost(remarks, "lost-light", "lighter than the lightest tone that holds", compensation.light(), pixels);
        lost(remarks, "lost-dark", "darker than the plate can print", compensation.dark(), pixels);
        plan(progress).warnings().forEach(words -> remarks.add(PlateWarning.of("film", words, "")));
        FilmPreparation.warnings(job, known, art.decoded(job.art(), progress), planes.whole())
                .forEach(words -> remarks.add(PlateWarning.of("film", words, "")));
        if (known.measured().isEmpty()) {
            remarks.addAll(AssumedFigures.of(workshop, job, tile, progress));
        }
        return remarks;
    }

    private void lost(
            List<PlateWarning> remarks, String kind, String what, Compensation.Unattained tones, double pixels)
            throws Exception {
        double share = tones.pixels(counts(Progress.NONE)) / pixels;
        if (share >= LEAST_SHARE_SAID) {
            Optional<Offset> most = mostOf(tones);
            remarks.add(new PlateWarning(
                    kind,
                    String.format(Locale.ROOT, "%.1f %% of the art is %s", share * 100, what)
                            + (most.isPresent() ? "; most" : ""),
                    most,
                    most.isPresent() ? plateSize() / LOST_FIELDS : 0,
                    share * job.plate().widthMillimetres() * job.plate().heightMillimetres(),
                    ""));
        }
    }

    private double plateSize() {
        return Math.max(job.plate().widthMillimetres(), job.plate().heightMillimetres());
    }

    /** The middle of the field of the plate that holds most of some tones; empty where a coarse look meets none. */
    private Optional<Offset> mostOf(Compensation.Unattained tones) {
        double perPixel = plateSize() / (LOST_FIELDS * LOST_PIXELS);
        int width = Math.max(1, (int) (job.plate().widthMillimetres() / perPixel));
        int height = Math.max(1, (int) (job.plate().heightMillimetres() / perPixel));
        short[] greys = platedGreys(new LiveView(0, 0, perPixel, width, height));
        double[] shown = shown(0);
        int across = (width + LOST_PIXELS - 1) / LOST_PIXELS;
        int[] counts = new int[across * ((height + LOST_PIXELS - 1) / LOST_PIXELS)];
        int most = 0;
        for (int i = 0; i < greys.length; i++) {
            double x = (i % width + 0.5) * perPixel;
            int row = i / width;
            double y = (row + 0.5) * perPixel;
            int grey = greys[i] & 0xFFFF;
            boolean art = x >= shown[0] && x < shown[1] && y >= shown[2] && y < shown[3];
            int field = row / LOST_PIXELS * across + i % width / LOST_PIXELS;
            if (art && grey >= tones.firstGrey() && grey <= tones.lastGrey() && ++counts[field] > counts[most]) {
                most = field;
            }
        }
        double side = LOST_PIXELS * perPixel;
        int fieldsDown = most / across;
        return counts[most] == 0
                ? Optional.empty()
                : Optional.of(new Offset(
                        Math.min(job.plate().widthMillimetres(), (most % across + 0.5) * side),
                        Math.min(job.plate().heightMillimetres(), (fieldsDown + 0.5) * side)));
    }

    /** Looks through every dot of the film for what the plate will not keep; most pressing first. Takes seconds. */
    public List<PlateWarning> check(Progress progress) throws Exception {
        art.own();
        Job whole = onOneSheet();
        FilmPreparation.Picture film = picture();
        Optional<Mend> mend =
                job.mended() ? Optional.of(film.mend(range, FilmPreparation.limits(job, workshop))) : Optional.empty();
        FilmChecks checks = FilmChecks.of(
                whole, workshop, FilmPreparation.films(whole, compensation.curve(), summary(), film, mend), progress);
        return PlateWarning.of(checks, mirrored(), job.plate().widthMillimetres());
    }
}
