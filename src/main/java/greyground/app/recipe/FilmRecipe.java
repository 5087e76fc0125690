package greyground.app.recipe;

import greyground.app.kept.GrainStore;
import greyground.art.touch.Crispness;
import greyground.film.compose.FilmComposer;
import greyground.film.compose.FilmContent;
import greyground.film.compose.Mend;
import greyground.film.compose.Outlined;
import greyground.film.job.ArtChoice;
import greyground.film.job.ArtOnPlate;
import greyground.film.job.ArtScale;
import greyground.film.job.Job;
import greyground.film.job.Placing;
import greyground.film.sheet.FilmLegends;
import greyground.film.sheet.SheetLayout;
import greyground.film.sheet.WedgeStrip;
import greyground.grain.AquatintScreen;
import greyground.grain.Grain;
import greyground.grain.HalftoneGeometry;
import greyground.output.FilmDocument;
import greyground.plan.BenchConditions;
import greyground.plan.BenchOrder;
import greyground.plan.ExposurePlan;
import greyground.plan.PlanRequest;
import greyground.plate.PlateProcess;
import greyground.plate.inspect.FilmLimits;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.Crew;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.Compensation;
import greyground.tone.ToneCurve;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a job, a workshop and an art come to: range, curve, plan, layout and films, art → tone → grain → film. Command, window, proof and
 * tests ask this one object, so that what the one shows is what the other writes.
 *
 * <p>Settled when it is made; plan and films are composed when they are first wanted. One thread uses it, while its art is open; the work
 * itself runs on all cores.
 */
public final class FilmRecipe {
    private final Settled made;
    private final ArtSource art;
    private final Job job;
    private @Nullable ExposurePlan plan;
    private @Nullable ComposedFilm positive;
    private @Nullable List<FilmDocument.Film> films;

    private FilmRecipe(Settled made, ArtSource art, Job job) {
        this.made = made;
        this.art = art;
        this.job = job;
    }

    /** What no sheet changes. */
    private record Settled(
            Workshop workshop,
            GreyPlane plane,
            ArtRange range,
            JobPlate plate,
            JobTones tones,
            JobReserve reserve,
            Compensation compensation,
            Optional<Crispness> crispness,
            Optional<LineOnPlate> line) {}

    /**
     * Decodes the art, unless it is at hand, and settles all else. Grain and the plate's response are made on spare threads meanwhile, since
     * neither needs the art; the file's digest is waited for last: only the job that goes with the film names it.
     */
    public static FilmRecipe of(ArtSource art, Job wanted, Workshop workshop, Progress progress) throws IOException {
        CompletableFuture<JobPlate> grain = CompletableFuture.supplyAsync(() -> JobPlate.of(workshop, wanted));
        CompletableFuture<JobTones> known = grain.thenApplyAsync(JobPlate::tones);
        CompletableFuture<JobReserve> kept = grain.thenCombineAsync(known, JobReserve::of);
        GreyPlane plane = art.turned(wanted.art(), progress.part(0, 0.9));
        ArtRange range = art.range(wanted.art(), progress);
        JobTones tones = Crew.joined(known);
        JobReserve reserve = Crew.joined(kept);
        Compensation compensation = Compensation.of(
                tones.name(),
                range,
                wanted.art().hand().wish(),
                wanted.rangeMapping(),
                reserve.within(tones.response()));
        Optional<LineOnPlate> line =
                LineOnPlate.of(art, wanted, workshop, range, HandOnPlate.pixelMicrometres(wanted, plane));
        Optional<Crispness> crispness = line.isPresent()
                ? Optional.empty()
                : HandOnPlate.crispness(
                        Crew.joined(grain), tones.response().usable(), plane, range, compensation.curve());
        plane = HandOnPlate.touched(art, wanted, plane, range, crispness, line, progress.part(0.9, 1));
        Job job = wanted.settled(art.read(wanted.art()).settled(range.white(), range.black()));
        progress.done(1);
        return new FilmRecipe(
                new Settled(workshop, plane, range, Crew.joined(grain), tones, reserve, compensation, crispness, line),
                art,
                job);
    }

    /** With everything settled: digest, white and black as numbers. */
    public Job job() {
        return job;
    }

    public Workshop workshop() {
        return made.workshop();
    }

    public ArtRange range() {
        return made.range();
    }

    /** The art as the job turns it; the source closes it. */
    public GreyPlane art() {
        return made.plane();
    }

    public JobPlate plate() {
        return made.plate();
    }

    public JobTones tones() {
        return made.tones();
    }

    /** How far its blacks stop short of the turning point. */
    public JobReserve reserve() {
        return made.reserve();
    }

    /** The tone curve and what it could not keep. */
    public Compensation compensation() {
        return made.compensation();
    }

    /** How much crisper fine detail was to be made; empty where nothing was asked for. */
    Optional<Crispness> crispness() {
        return made.crispness();
    }

    /** How it becomes strokes; empty where it doesn't. */
    Optional<LineOnPlate> line() {
        return made.line();
    }

    /** What is said of dust, hairs and scratches. */
    public HealedSpots spots() throws IOException {
        return HealedSpots.of(art, job.art());
    }

    /** Pixels of the art's fragment by grey code, 65 536 counts; nobody may change them. */
    public long[] greys() throws IOException {
        return art.greysOfCrop(art(), job.art(), Progress.NONE);
    }

    /** What was odd about the art, about how it lies on plate and sheet, and about the words of job and workshop. */
    public List<String> warnings() throws IOException {
        List<String> warnings = FilmWords.warnings(this, art.remarks(job.art()));
        LineOnPlate.refused(job).ifPresent(warnings::add);
        line().flatMap(line -> LineOnPlate.idle(job)).ifPresent(warnings::add);
        unprinted().ifPresent(warnings::add);
        PictureOutline.gap(job, reserve().limit(), tones().response()).ifPresent(warnings::add);
        if (!job.art().hand().retouching().touches().isEmpty()) {
            GreyPlane turned = art.turned(job.art(), Progress.NONE);
            TouchedPlaces.steep(job, turned, HandOnPlate.lie(job, turned), range())
                    .ifPresent(warnings::add);
        }
        if (job.grain() instanceof Grain.Halftone halftone) {
            art.print(job.art())
                    .beat(
                            HalftoneGeometry.fit(halftone, job.resolution()),
                            job.art().turnedDegrees(),
                            lies().across() * job.resolution().pitchMicrometres() / 1000)
                    .ifPresent(warnings::add);
        }
        job.kept().forEach(field -> field.question("job").ifPresent(warnings::add));
        workshop().kept().forEach(field -> field.question("workshop").ifPresent(warnings::add));
        return warnings;
    }

    public ExposurePlan plan() throws IOException {
        ExposurePlan present = plan;
        if (present == null) {
            Map<Double, Double> plateByCoverage = plateByCoverage();
            double black = plateByCoverage.entrySet().stream()
                    .mapToDouble(part -> part.getKey() * part.getValue())
                    .sum();
            present = BenchOrder.plan(
                    workshop(),
                    new PlanRequest(
                            job,
                            Math.min(1, black),
                            curve().name(),
                            reserve().brief(),
                            plate().loss(tones().predicted(), plateByCoverage)));
            plan = present;
        }
        return present;
    }

    /** Share of the plate that has each film coverage; the rest is clear film. */
    private Map<Double, Double> plateByCoverage() throws IOException {
        long[] greys = greys();
        double[] outlined = Outlined.means(job.placing().outlines(), job.plate());
        double share = covered() * outlined[0] / LongStream.of(greys).sum();
        Map<Double, Double> shares = new TreeMap<>();
        if (job.placing().outlines().black()) {
            shares.put(reserve().limit(), covered() * outlined[1]);
        }
        for (int grey = 0; grey < greys.length; grey++) {
            if (greys[grey] > 0) {
                shares.merge((double) curve().coverage(grey) / ToneCurve.SOLID, greys[grey] * share, Double::sum);
            }
        }
        return shares;
    }

    /** Share of the plate that the art lies on, 0 to 1. */
    private double covered() {
        ArtScale lies = lies();
        ArtChoice.Crop crop = job.art().crop();
        double width = pixels().across(job.plate().widthMillimetres());
        double height = pixels().down(job.plate().heightMillimetres());
        return Math.min(1, crop.width() * art().width() * lies.across() / width)
                * Math.min(1, crop.height() * art().height() * lies.down() / height);
    }

    /** How the art lies on the plate, in film pixels. */
    private ArtScale lies() {
        return ArtScale.of(
                art().width(),
                art().height(),
                job.art().crop(),
                job.placing().fit(),
                job.placing().shrink(),
                new ArtScale.Plate(
                        pixels().across(job.plate().widthMillimetres()),
                        pixels().down(job.plate().heightMillimetres()),
                        pixels().scaleX(),
                        pixels().scaleY()));
    }

    private ToneCurve curve() {
        return compensation().curve();
    }

    private FilmPixels pixels() {
        return workshop().filmPrinter().pixels(job.resolution());
    }

    public ComposedFilm positive() throws IOException {
        ComposedFilm present = positive;
        if (present == null) {
            present = composed();
            positive = present;
        }
        return present;
    }

    private ComposedFilm composed() throws IOException {
        SheetLayout layout = sheets().layout(
                        FilmLegends.positive(job, pixels(), curve().name(), plan().summary()), WedgeStrip.of(job));
        ArtOnPlate placed = ArtOnPlate.of(
                art().width(),
                art().height(),
                job.art().crop(),
                job.placing().fit(),
                job.placing().shrink(),
                pixels(),
                layout.plate(),
                layout.bleed());
        WedgeStrip.of(job).clearOf(layout, placed.image());
        FilmContent.Picture picture = new FilmContent.Picture(art(), placed, outlined(PictureOutline.lie(job, layout)));
        FilmContent content = line().<FilmContent>map(line ->
                        new FilmContent.Lines(picture, curve().coverage(0), line.threshold(), line.growth(), false))
                .orElse(picture);
        FilmComposer composer = job.grain() instanceof Grain.Continuous continuous
                ? FilmComposer.continuous(layout, content, curve(), continuous.bits(), mirrored())
                : FilmComposer.screened(
                        layout, content, curve(), plate().grain().orElseThrow(), mirrored());
        ComposedFilm.Mending mending = job.mended() || line().isPresent()
                ? new ComposedFilm.Mending(
                        picture,
                        curve(),
                        range(),
                        FilmLimits.of(
                                JobPlate.conditions(workshop(), job, workshop().usualDepthMicrometres())))
                : null;
        return film(composer, mending);
    }

    /** The aquatint screen film of photogravure; no other process has one. */
    public Optional<ComposedFilm> screen() throws IOException {
        if (!(job.process() instanceof PlateProcess.Photogravure process)) {
            return Optional.empty();
        }
        SheetLayout layout = sheets().layout(screenLegends(process), screenStrip());
        AquatintScreen aquatint = GrainStore.screen(process, job.resolution());
        FilmContent.Screen dots = new FilmContent.Screen(layout.bleed(), aquatint.coverage());
        return Optional.of(film(FilmComposer.screened(layout, dots, curve(), aquatint.tile(), mirrored()), null));
    }

    private ComposedFilm film(FilmComposer composer, ComposedFilm.@Nullable Mending mending) {
        return new ComposedFilm(composer, mending, mirrored(), BenchConditions.film(workshop()));
    }

    /** How much of the picture is left where, on pixels that lie on the plate in a way; empty where there is no outline. */
    public Optional<Outlined> outlined(Outlined.Lie lie) {
        return PictureOutline.of(job, lie, reserve().limit(), tones().response());
    }

    private boolean mirrored() {
        return job.placing().readingSide().mirrored();
    }

    private List<String> screenLegends(PlateProcess.Photogravure process) throws IOException {
        return FilmLegends.screen(
                job, pixels(), process.screenBlack(), process.screenSpacingMicrometres(), plan().summary());
    }

    public FilmSheets sheets() {
        return new FilmSheets(job, pixels(), workshop().filmPrinter().marginMillimetres());
    }

    /** A screen covers the plate's margin as it covers the picture. */
    private WedgeStrip screenStrip() {
        return job.placing().strip() == Placing.Strip.MARGIN ? WedgeStrip.none() : WedgeStrip.of(job);
    }

    /** The films to be written, the positive first, then the screen film if there is one; each may be several tiles. */
    public List<FilmDocument.Film> films() throws IOException {
        List<FilmDocument.Film> present = films;
        if (present == null) {
            present = Stream.concat(Stream.of(positive()), screen().stream())
                    .flatMap(film -> sheets().printed(film.sheet(), film.rows()))
                    .toList();
            films = present;
        }
        return present;
    }

    public Optional<Mend> mend() throws IOException {
        return positive().mend();
    }

    /** Why a job's sheet can't hold its plate and marks; empty where it can, or where none is given. */
    public Optional<String> sheetFault() throws IOException {
        if (job.placing().sheet().isEmpty() || job.placing().tiled()) {
            return Optional.empty();
        }
        try {
            sheets().layout(FilmLegends.positive(job, pixels(), curve().name(), plan().summary()), WedgeStrip.of(job));
            if (job.process() instanceof PlateProcess.Photogravure process) {
                sheets().layout(screenLegends(process), screenStrip());
            }
            return Optional.empty();
        } catch (Refusal tooSmall) {
            return Optional.of(String.valueOf(tooSmall.getMessage()));
        }
    }

    /** Says that the film printer does not reach all that lies on the job's own sheet; tiles keep clear of its edges by themselves. */
    private Optional<String> unprinted() throws IOException {
        Optional<Size> sheet = job.placing().sheet();
        if (sheet.isEmpty() || job.placing().tiled() || sheetFault().isPresent()) {
            return Optional.empty();
        }
        return sheets().unprinted(FilmLegends.positive(job, pixels(), curve().name(), plan().summary()));
    }

    /**
     * The same to be looked at, one sheet for each film: the job's own where that is large enough, so that the grain lies on the plate as the
     * film has it; else, and in place of tiles, a sheet as large as it takes.
     */
    public FilmRecipe onOneSheet() throws IOException {
        boolean own = !job.placing().tiled() && sheetFault().isEmpty();
        Optional<Size> sheet = own ? job.placing().sheet() : Optional.empty();
        Job whole = job.placed(job.placing().onOneSheet(sheet));
        if (whole.equals(job)) {
            return this;
        }
        FilmRecipe shown = new FilmRecipe(made, art, whole);
        shown.plan = plan();
        return shown;
    }
}
