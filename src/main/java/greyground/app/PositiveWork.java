package greyground.app;

import greyground.film.ArtChoice;
import greyground.film.ArtChoice.TonePoint;
import greyground.film.ArtOnPlate;
import greyground.film.FilmComposer;
import greyground.film.FilmContent;
import greyground.film.FilmLegends;
import greyground.film.FilmRows;
import greyground.film.Job;
import greyground.film.JobFile;
import greyground.film.Placing;
import greyground.film.Sheet;
import greyground.film.SheetLayout;
import greyground.film.SheetTiles;
import greyground.grain.AquatintScreen;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.output.Attachment;
import greyground.output.FilmDocument;
import greyground.output.FilmPdf;
import greyground.output.FilmTiff;
import greyground.output.LegendFace;
import greyground.plan.BenchOrder;
import greyground.plan.ExposurePlan;
import greyground.plan.PlanJson;
import greyground.plan.PlanRequest;
import greyground.plan.PlanText;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.GreyPlane;
import greyground.raster.Histogram;
import greyground.raster.PlaneStore;
import greyground.raster.Progress;
import greyground.raster.TurnedArt;
import greyground.tone.ArtRange;
import greyground.tone.Compensation;
import greyground.tone.PlateResponse;
import greyground.tone.RangeMapping;
import greyground.tone.ToneCurve;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/**
 * Prepares a positive: art → tone → grain → film → files. One object for one art.
 *
 * <p>Grain and typeface are made on spare threads while the art is decoded, since neither needs it.
 */
public final class PositiveWork {
    private static final double DECODING_SHARE = 0.3;

    /** Cutting off more of the art than this deserves a word (assumed). */
    private static final double MOST_LOST_UNSAID = 0.1;

    private final ArtSource art;
    private final int threads = Math.max(1, Runtime.getRuntime().availableProcessors());

    private PositiveWork(ArtSource art) {
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
            throws Exception {
        SafeFile.checkWritable("film", film);
        SafeFile.checkDistinct("film", film, "art", art.file());
        if (tiff.isPresent()) {
            SafeFile.checkWritable("TIFF", tiff.get());
            SafeFile.checkDistinct("TIFF", tiff.get(), "art", art.file());
            SafeFile.checkDistinct("TIFF", tiff.get(), "film", film);
        }
        RangeMapping mapping = RangeMapping.named(wanted.rangeMapping());
        PlateResponse response = PlateCurve.response(workshop, wanted);
        CompletableFuture<Optional<ThresholdTile>> tile =
                CompletableFuture.supplyAsync(() -> GrainTiles.positive(wanted));
        CompletableFuture<Void> typeface = CompletableFuture.runAsync(FilmPdf::prepare);
        ArtSource.Decoded decoded = art.decode(wanted.art(), progress.part(0, DECODING_SHARE));
        try (GreyPlane plane = turned(decoded.plane(), wanted.art())) {
            long[] greys = greysOfCrop(plane, wanted.art().crop());
            ArtRange range = range(wanted.art(), plane);
            ArtChoice settledArt = wanted.art().read(decoded.sha256()).settled(range.white(), range.black());
            Job job = wanted.settled(settledArt);
            Compensation compensation = Compensation.of(response.name(), range, mapping, response);
            ExposurePlan plan = plan(job, workshop, compensation.curve(), greys);
            List<FilmDocument.Film> films = films(job, compensation.curve(), plan.summary(), plane, joined(tile));
            joined(typeface);
            FilmDocument document = document(job, workshop, compensation, response, plan, films);
            write(document, film, tiff, progress.part(DECODING_SHARE, 1));
            return new PositiveOutcome(
                    job,
                    workshop,
                    compensation,
                    response,
                    greys,
                    plan,
                    films.get(0).sheet(),
                    films.size(),
                    warnings(job, decoded, plane));
        }
    }

    /** The art as it lies on the plate; the plane it came from is closed once it is no longer needed. */
    private GreyPlane turned(GreyPlane upright, ArtChoice choice) throws Exception {
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

    private void write(FilmDocument document, Path film, Optional<Path> tiff, Progress progress) throws Exception {
        double share = tiff.isPresent() ? 0.5 : 1;
        SafeFile.write(
                "film",
                film,
                channel ->
                        FilmPdf.write(document, Channels.newOutputStream(channel), threads, progress.part(0, share)));
        if (tiff.isPresent()) {
            SafeFile.write(
                    "TIFF",
                    tiff.get(),
                    channel -> FilmTiff.write(
                            document, channel, FilmTiff.Packing.DEFLATE, threads, progress.part(share, 1)));
        }
    }

    /** The ends the job gives; what it leaves open is found on the whole page, since a fragment may show no bare paper. */
    private static ArtRange range(ArtChoice choice, GreyPlane plane) {
        boolean bothGiven = choice.white() instanceof TonePoint.Given && choice.black() instanceof TonePoint.Given;
        greyground.art.ArtRange found = bothGiven ? greyground.art.ArtRange.FULL : greyground.art.ArtRange.find(plane);
        double white = choice.white() instanceof TonePoint.Given given ? given.luminance() : found.white();
        double black = choice.black() instanceof TonePoint.Given given ? given.luminance() : found.black();
        return new ArtRange(white, black);
    }

    private long[] greysOfCrop(GreyPlane plane, ArtChoice.Crop crop) throws Exception {
        int left = Math.min(plane.width() - 1, (int) (crop.left() * plane.width()));
        int top = Math.min(plane.height() - 1, (int) (crop.top() * plane.height()));
        int width = Math.max(1, Math.min(plane.width() - left, (int) Math.round(crop.width() * plane.width())));
        int height = Math.max(1, Math.min(plane.height() - top, (int) Math.round(crop.height() * plane.height())));
        return Histogram.of(plane, left, top, width, height, threads);
    }

    private static ExposurePlan plan(Job job, Workshop workshop, ToneCurve curve, long[] greys) {
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

    private static List<FilmDocument.Film> films(
            Job job, ToneCurve curve, String planSummary, GreyPlane plane, Optional<ThresholdTile> tile) {
        boolean mirrored = job.placing().readingSide().mirrored();
        List<FilmDocument.Film> films = new ArrayList<>();
        SheetLayout layout = layout(job, FilmLegends.positive(job, curve.name(), planSummary));
        ArtOnPlate placed = ArtOnPlate.of(
                plane.width(),
                plane.height(),
                job.art().crop(),
                job.placing().fit(),
                job.placing().shrink(),
                layout.plate(),
                layout.bleed());
        FilmContent.Picture picture = new FilmContent.Picture(plane, placed);
        FilmComposer positive = job.grain() instanceof Grain.Continuous continuous
                ? FilmComposer.continuous(layout, picture, curve, continuous.bits(), mirrored)
                : FilmComposer.screened(layout, picture, curve, tile.orElseThrow(), mirrored);
        add(films, job, positive.sheet(), positive);
        if (job.process() instanceof PlateProcess.Photogravure screen) {
            SheetLayout screenLayout = layout(
                    job, FilmLegends.screen(job, screen.screenBlack(), screen.screenSpacingMicrometres(), planSummary));
            AquatintScreen aquatint = GrainTiles.screen(screen, job.resolution());
            FilmContent.Screen dots = new FilmContent.Screen(screenLayout.bleed(), aquatint.coverage());
            FilmComposer screenFilm = FilmComposer.screened(screenLayout, dots, curve, aquatint.tile(), mirrored);
            add(films, job, screenFilm.sheet(), screenFilm);
        }
        return films;
    }

    private static SheetLayout layout(Job job, List<String> words) {
        Optional<Size> sheet =
                job.placing().tiled() ? Optional.empty() : job.placing().sheet();
        return SheetLayout.of(
                job.resolution(),
                job.plate(),
                job.placing().bleedMillimetres(),
                job.placing().bevelMillimetres(),
                sheet,
                words,
                LegendFace.load());
    }

    /** One film, or its tiles where the job asks for them and its sheet is too small. */
    private static void add(List<FilmDocument.Film> films, Job job, Sheet sheet, FilmRows rows) {
        Optional<Size> film = job.placing().tiled() ? job.placing().sheet() : Optional.empty();
        boolean fits = film.isEmpty()
                || (job.resolution().pixels(film.get().widthMillimetres()) >= sheet.widthPixels()
                        && job.resolution().pixels(film.get().heightMillimetres()) >= sheet.heightPixels());
        if (fits) {
            films.add(new FilmDocument.Film(sheet, rows));
        } else {
            SheetTiles.of(sheet, rows, film.get())
                    .forEach(tile -> films.add(new FilmDocument.Film(tile.sheet(), tile.rows())));
        }
    }

    private static FilmDocument document(
            Job job,
            Workshop workshop,
            Compensation compensation,
            PlateResponse response,
            ExposurePlan plan,
            List<FilmDocument.Film> films) {
        List<FilmDocument.CurvePoint> points = compensation.nodes().stream()
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
                        WorkshopFile.text(workshop),
                        "the workshop's numbers",
                        Attachment.Relationship.SOURCE),
                attachment(
                        Attachment.CURVE,
                        "application/json",
                        CurveFile.text(compensation, response),
                        "the tone curve",
                        Attachment.Relationship.DATA),
                attachment(
                        Attachment.PLAN,
                        "application/json",
                        PlanJson.text(plan),
                        "the exposure and bite plan",
                        Attachment.Relationship.DATA),
                attachment(
                        Attachment.PLAN_TEXT,
                        "text/plain",
                        PlanText.of(plan),
                        "the exposure and bite plan, to read",
                        Attachment.Relationship.ALTERNATIVE));
        LocalDate date = job.date().isEmpty() ? LocalDate.of(2000, 1, 1) : FilmWords.date(job.date());
        return new FilmDocument(
                job.title(), date, Program.words(), films, FilmWords.particulars(job, plan), points, plan, attachments);
    }

    private static Attachment attachment(
            String name, String mediaType, String text, String description, Attachment.Relationship relationship) {
        return new Attachment(name, mediaType, text.getBytes(StandardCharsets.UTF_8), description, relationship);
    }

    private static List<String> warnings(Job job, ArtSource.Decoded decoded, GreyPlane plane) {
        List<String> warnings = new ArrayList<>(decoded.warnings());
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

    private static <T> T joined(CompletableFuture<T> part) {
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
