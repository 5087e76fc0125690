package greyground.app.recipe;

import greyground.app.kept.GrainTiles;
import greyground.film.compose.FilmComposer;
import greyground.film.compose.FilmContent;
import greyground.film.compose.Mend;
import greyground.film.compose.WishedBlack;
import greyground.film.job.ArtChoice;
import greyground.film.job.ArtChoice.TonePoint;
import greyground.film.job.ArtOnPlate;
import greyground.film.job.Job;
import greyground.film.job.Placing;
import greyground.film.sheet.FilmLegends;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Sheet;
import greyground.film.sheet.SheetLayout;
import greyground.film.sheet.SheetTiles;
import greyground.grain.AquatintScreen;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.output.FilmDocument;
import greyground.output.LegendFace;
import greyground.plan.BenchOrder;
import greyground.plan.ExposurePlan;
import greyground.plan.PlanRequest;
import greyground.plate.PlateProcess;
import greyground.plate.inspect.FilmLimits;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.GreyPlane;
import greyground.raster.Histogram;
import greyground.raster.PixelRect;
import greyground.raster.PlaneStore;
import greyground.raster.Progress;
import greyground.raster.TurnedArt;
import greyground.tone.ArtRange;
import greyground.tone.Compensation;
import greyground.tone.RangeMapping;
import greyground.tone.ToneCurve;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/**
 * Composes a job's films in memory: art → tone → grain → film. One object for one art.
 *
 * <p>Grain and the plate's response are made on spare threads while the art is decoded, since neither needs it; the
 * file's digest is waited for last: only the job that goes with the film names it.
 */
public final class FilmPreparation {
    /** Cutting off more of the art than this deserves a word (assumed). */
    private static final double MOST_LOST_UNSAID = 0.1;

    /** Intaglio blacks print L* 11 to 30 (common practice); a paler one is worth another split of light. */
    private static final double PALE_BLACK_LIGHTNESS = 30;

    private final ArtSource art;
    private final int threads = Math.max(1, Runtime.getRuntime().availableProcessors());

    private FilmPreparation(ArtSource art) {
        this.art = art;
    }

    /** Looks into the art, without decoding it. */
    public static FilmPreparation open(Path file) {
        return new FilmPreparation(ArtSource.open(file));
    }

    /** The art's file. */
    public Path file() {
        return art.file();
    }

    /** What is known of the art's page, from 1. */
    public SourceArt source(int page) {
        return art.source(page);
    }

    /** Decodes the art and composes the films. Whoever takes them closes them. */
    public PreparedFilms films(Job wanted, Workshop workshop, Progress progress) throws IOException {
        return films(wanted, workshop, false, progress);
    }

    /** The same to be looked at, each film on one sheet: a sheet that is too small, and tiles, are no hindrance. */
    public PreparedFilms wholeFilms(Job wanted, Workshop workshop, Progress progress) throws IOException {
        return films(wanted, workshop, true, progress);
    }

    private PreparedFilms films(Job wanted, Workshop workshop, boolean onOneSheet, Progress progress)
            throws IOException {
        RangeMapping mapping = RangeMapping.named(wanted.rangeMapping());
        CompletableFuture<Optional<ThresholdTile>> tile =
                CompletableFuture.supplyAsync(() -> GrainTiles.positive(wanted));
        CompletableFuture<JobTones> known =
                tile.thenApplyAsync(made -> JobPlate.of(workshop, wanted, made).tones());
        ArtSource.Decoded decoded = art.decode(wanted.art(), progress);
        GreyPlane plane = turned(decoded.plane(), wanted.art());
        try {
            CompletableFuture<ArtRange> ends = CompletableFuture.supplyAsync(() -> range(wanted.art(), plane));
            long[] greys = greysOfCrop(plane, wanted.art().crop());
            ArtRange range = joined(ends);
            JobTones tones = joined(known);
            Compensation compensation = Compensation.of(tones.name(), range, mapping, tones.response());
            ArtChoice settledArt = wanted.art().read(decoded.sha256()).settled(range.white(), range.black());
            Job settled = wanted.settled(settledArt);
            ExposurePlan plan = plan(settled, workshop, compensation.curve(), greys);
            FilmPixels pixels = workshop.filmPrinter().pixels(settled.resolution());
            Job job = onOneSheet ? onOneSheet(settled, pixels, compensation.curve(), plan.summary()) : settled;
            Picture picture = picture(job, pixels, compensation.curve(), plan.summary(), plane, joined(tile));
            Optional<Mend> mend =
                    job.mended() ? Optional.of(picture.mend(range, limits(job, workshop))) : Optional.empty();
            return new PreparedFilms(
                    job,
                    workshop,
                    compensation,
                    tones,
                    plan,
                    greys,
                    films(job, compensation.curve(), plan.summary(), picture, mend),
                    mend,
                    warnings(job, tones, decoded, plane),
                    plane);
        } catch (Exception | Error failed) {
            plane.close();
            throw failed;
        }
    }

    /** The art as it lies on the plate; the plane it came from is closed once it is no longer needed. */
    private GreyPlane turned(GreyPlane upright, ArtChoice choice) throws IOException {
        TurnedArt turned = new TurnedArt(upright, choice.quarterTurns(), choice.straightenDegrees());
        if (turned.unchanged()) {
            return upright;
        }
        try (upright;
                PlaneStore store = PlaneStore.open(
                        turned.width(), turned.height(), art.planeBudgetBytes() / 2, art.spillFolder())) {
            turned.rows(threads, store::putRows, Progress.NONE);
            return store.finish();
        }
    }

    /** The ends the job gives; what it leaves open is found on the whole page, since a fragment may show no bare paper. */
    public static ArtRange range(ArtChoice choice, GreyPlane plane) {
        boolean bothGiven = choice.white() instanceof TonePoint.Given && choice.black() instanceof TonePoint.Given;
        greyground.art.colour.ArtRange found =
                bothGiven ? greyground.art.colour.ArtRange.FULL : greyground.art.colour.ArtRange.find(plane);
        double white = choice.white() instanceof TonePoint.Given given ? given.luminance() : found.white();
        double black = choice.black() instanceof TonePoint.Given given ? given.luminance() : found.black();
        return new ArtRange(white, black);
    }

    private long[] greysOfCrop(GreyPlane plane, ArtChoice.Crop crop) throws IOException {
        return Histogram.of(plane, cropped(plane, crop), threads);
    }

    /** The pixels of a fragment. */
    public static PixelRect cropped(GreyPlane plane, ArtChoice.Crop crop) {
        int left = Math.min(plane.width() - 1, (int) (crop.left() * plane.width()));
        int top = Math.min(plane.height() - 1, (int) (crop.top() * plane.height()));
        int width = Math.max(1, Math.min(plane.width() - left, (int) Math.round(crop.width() * plane.width())));
        int height = Math.max(1, Math.min(plane.height() - top, (int) Math.round(crop.height() * plane.height())));
        return new PixelRect(left, top, width, height);
    }

    public static ExposurePlan plan(Job job, Workshop workshop, ToneCurve curve, long[] greys) {
        double black = 0;
        double pixels = 0;
        for (int grey = 0; grey < greys.length; grey++) {
            pixels += greys[grey];
            black += (double) greys[grey] * curve.coverage(grey) / ToneCurve.SOLID;
        }
        return BenchOrder.plan(
                workshop,
                new PlanRequest(
                        job.process(),
                        job.plate(),
                        job.process() instanceof PlateProcess.Photogravure,
                        black / pixels,
                        job.title(),
                        job.date(),
                        job.resolution(),
                        job.grain().name(),
                        curve.name()));
    }

    public static FilmLimits limits(Job job, Workshop workshop) {
        return FilmLimits.of(JobPlate.conditions(workshop, job, workshop.usualDepthMicrometres()));
    }

    /** The positive on its whole sheet, and what it was made of. */
    public record Picture(
            Job job, SheetLayout layout, FilmContent.Picture content, ToneCurve curve, FilmComposer composer) {
        /** A mend of what lies within a rectangle of the sheet as the film is; within its own reach of the edges it is unsure. */
        public Mend mendWithin(PixelRect part, ArtRange range, FilmLimits limits) {
            PixelRect plain = mirrored(job) ? part.mirrored(layout.width()) : part;
            FilmContent.Picture seen = (FilmContent.Picture) content.within(plain);
            FilmComposer composed = composer.within(part);
            WishedBlack wished = WishedBlack.of(layout, seen, curve, range, mirrored(job));
            return new Mend(composed.sheet(), composed, wished, limits);
        }

        public Mend mend(ArtRange range, FilmLimits limits) {
            WishedBlack wished = WishedBlack.of(layout, content, curve, range, mirrored(job));
            return new Mend(composer.sheet(), composer, wished, limits);
        }
    }

    public static boolean mirrored(Job job) {
        return job.placing().readingSide().mirrored();
    }

    public static Picture picture(
            Job job,
            FilmPixels pixels,
            ToneCurve curve,
            String planSummary,
            GreyPlane plane,
            Optional<ThresholdTile> tile) {
        SheetLayout layout = layout(job, pixels, FilmLegends.positive(job, pixels, curve.name(), planSummary));
        ArtOnPlate placed = ArtOnPlate.of(
                plane.width(),
                plane.height(),
                job.art().crop(),
                job.placing().fit(),
                job.placing().shrink(),
                pixels,
                layout.plate(),
                layout.bleed());
        FilmContent.Picture content = new FilmContent.Picture(plane, placed);
        FilmComposer positive = job.grain() instanceof Grain.Continuous continuous
                ? FilmComposer.continuous(layout, content, curve, continuous.bits(), mirrored(job))
                : FilmComposer.screened(layout, content, curve, tile.orElseThrow(), mirrored(job));
        return new Picture(job, layout, content, curve, positive);
    }

    public static List<FilmDocument.Film> films(
            Job job, ToneCurve curve, String planSummary, Picture picture, Optional<Mend> mend) {
        List<FilmDocument.Film> films = new ArrayList<>();
        FilmRows positive = mend.isPresent() ? mend.get().rows() : picture.composer();
        add(films, job, picture.composer().sheet(), positive);
        if (job.process() instanceof PlateProcess.Photogravure screen) {
            FilmComposer screenFilm = screen(job, picture.layout().pixels(), screen, curve, planSummary);
            add(films, job, screenFilm.sheet(), screenFilm);
        }
        return films;
    }

    /** The aquatint screen film of photogravure. */
    public static FilmComposer screen(
            Job job, FilmPixels pixels, PlateProcess.Photogravure screen, ToneCurve curve, String planSummary) {
        SheetLayout layout = layout(job, pixels, screenLegends(job, pixels, screen, planSummary));
        AquatintScreen aquatint = GrainTiles.screen(screen, job.resolution());
        FilmContent.Screen dots = new FilmContent.Screen(layout.bleed(), aquatint.coverage());
        return FilmComposer.screened(layout, dots, curve, aquatint.tile(), mirrored(job));
    }

    /**
     * A job on one sheet for each film: its own where that is large enough, so that the grain lies on the plate as the film has it;
     * else, and in place of tiles, a sheet as large as it takes.
     */
    public static Job onOneSheet(Job job, FilmPixels pixels, ToneCurve curve, String planSummary) {
        Job grown = onSheet(job, Optional.empty());
        if (job.placing().sheet().isEmpty() || job.placing().tiled()) {
            return grown;
        }
        return sheetFault(job, pixels, curve, planSummary).isEmpty()
                ? onSheet(job, job.placing().sheet())
                : grown;
    }

    /** Why a job's sheet can't hold its plate and marks; empty where it can, or where none is given. */
    public static Optional<String> sheetFault(Job job, FilmPixels pixels, ToneCurve curve, String planSummary) {
        if (job.placing().sheet().isEmpty() || job.placing().tiled()) {
            return Optional.empty();
        }
        try {
            layout(job, pixels, FilmLegends.positive(job, pixels, curve.name(), planSummary));
            if (job.process() instanceof PlateProcess.Photogravure screen) {
                layout(job, pixels, screenLegends(job, pixels, screen, planSummary));
            }
            return Optional.empty();
        } catch (Refusal tooSmall) {
            return Optional.of(String.valueOf(tooSmall.getMessage()));
        }
    }

    private static List<String> screenLegends(
            Job job, FilmPixels pixels, PlateProcess.Photogravure screen, String planSummary) {
        return FilmLegends.screen(job, pixels, screen.screenBlack(), screen.screenSpacingMicrometres(), planSummary);
    }

    private static Job onSheet(Job job, Optional<Size> sheet) {
        return job.placed(job.placing().onOneSheet(sheet));
    }

    private static SheetLayout layout(Job job, FilmPixels pixels, List<String> words) {
        Optional<Size> sheet =
                job.placing().tiled() ? Optional.empty() : job.placing().sheet();
        return SheetLayout.of(
                pixels,
                job.plate(),
                job.placing().bleedMillimetres(),
                job.placing().bevelMillimetres(),
                sheet,
                words,
                LegendFace.load());
    }

    /** One film, or its tiles. */
    private static void add(List<FilmDocument.Film> films, Job job, Sheet sheet, FilmRows rows) {
        List<SheetTiles.Tile> tiles = tiles(job, sheet, rows);
        if (tiles.isEmpty()) {
            films.add(new FilmDocument.Film(sheet, rows));
        }
        tiles.forEach(tile -> films.add(new FilmDocument.Film(tile.sheet(), tile.rows())));
    }

    /** The tiles of a film where the job asks for them and its sheet is too small; none where one film holds it. */
    public static List<SheetTiles.Tile> tiles(Job job, Sheet sheet, FilmRows rows) {
        Optional<Size> film = job.placing().tile();
        boolean fits = film.isEmpty()
                || (sheet.pixels().across(film.get().widthMillimetres()) >= sheet.widthPixels()
                        && sheet.pixels().down(film.get().heightMillimetres()) >= sheet.heightPixels());
        return fits ? List.of() : SheetTiles.of(sheet, rows, film.get());
    }

    public static List<String> warnings(Job job, JobTones tones, ArtSource.Decoded decoded, GreyPlane plane) {
        List<String> warnings = new ArrayList<>(decoded.warnings());
        tones.note().ifPresent(warnings::add);
        double darkest = tones.printableRange().darkest();
        if (job.process() instanceof PlateProcess.Photogravure && darkest > PALE_BLACK_LIGHTNESS) {
            warnings.add("these two exposures leave the darkest tone at L* " + Refusal.plain(Math.rint(darkest))
                    + ": greyground plan with --search-exposure looks for better ones");
        }
        ArtChoice.Crop crop = job.art().crop();
        double across = plane.width() * crop.width() / job.plate().widthMillimetres();
        double down = plane.height() * crop.height() / job.plate().heightMillimetres();
        boolean fill = job.placing().fit() == Placing.Fit.FILL;
        double perInch = (fill ? Math.min(across, down) : Math.max(across, down)) * 25.4;
        double lost = 1 - Math.min(across, down) / Math.max(across, down);
        if (fill && lost > MOST_LOST_UNSAID) {
            warnings.add(Refusal.plain(Math.rint(lost * 100))
                    + " % of the art does not fit the plate's proportions and is cut off "
                    + (across > down ? "left and right" : "above and below")
                    + ": turn the plate or the art, crop, or use --fit whole");
        }
        double grainPerInch = FilmWords.dotsPerInch(job);
        if (perInch < grainPerInch) {
            warnings.add("the art has " + Refusal.plain(Math.rint(perInch))
                    + " pixels per inch of plate, fewer than the film's " + Refusal.plain(Math.rint(grainPerInch))
                    + " dots per inch: fine detail will be soft");
        }
        return warnings;
    }

    static <T> T joined(CompletableFuture<T> part) {
        try {
            return part.join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw failed;
        }
    }
}
