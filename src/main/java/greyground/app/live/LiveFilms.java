package greyground.app.live;

import greyground.app.check.FilmChecks;
import greyground.app.check.PlateWarning;
import greyground.app.recipe.FilmOnPlate;
import greyground.app.recipe.FilmPreparation;
import greyground.app.sight.StageTones;
import greyground.film.compose.FilmComposer;
import greyground.film.compose.Mend;
import greyground.film.job.Job;
import greyground.film.sheet.FilmRows;
import greyground.grain.ThresholdTile;
import greyground.output.FilmDocument;
import greyground.plan.BenchConditions;
import greyground.plan.ExposurePlan;
import greyground.plate.PlateFilm;
import greyground.plate.PlateProcess;
import greyground.plate.inspect.FilmLimits;
import greyground.quantity.FilmPixels;
import greyground.raster.GreyPlane;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.ToneCurve;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The very films of one state of job and workshop, each composed when it is first wanted: whole to be looked through, or the part under
 * a loupe; and the plan whose words they carry. One thread uses it.
 */
final class LiveFilms {
    private final Job job;
    private final Workshop workshop;
    private final ArtRange range;
    private final Optional<ThresholdTile> tile;
    private final ToneCurve curve;
    private final LiveArt art;
    private final GreyPlane plane;
    private final LiveAssumed assumed;
    private final String digest;
    private @Nullable ExposurePlan plan;
    private FilmPreparation.@Nullable Picture picture;
    private long @Nullable [] greys;

    /** Nothing is composed yet; {@code plane} is the art as the job turns it. */
    LiveFilms(LivePlate.Made made, LiveArt art, GreyPlane plane) {
        this.job = made.job();
        this.workshop = made.workshop();
        this.range = made.range();
        this.tile = made.tile();
        this.curve = made.compensation().curve();
        this.art = art;
        this.plane = plane;
        this.assumed = made.assumed();
        this.digest = made.known().foretold().digest();
    }

    /** What to do at the bench, as the film would carry it. */
    ExposurePlan plan(Progress progress) throws IOException {
        ExposurePlan present = plan;
        if (present == null) {
            present = FilmPreparation.plan(job, workshop, curve, greysOfCrop(progress));
            plan = present;
        }
        return present;
    }

    /** Pixels of the art's fragment by grey code; nobody may change them. */
    long[] greysOfCrop(Progress progress) throws IOException {
        long[] present = greys;
        if (present == null) {
            present = art.greysOfCrop(job.art(), progress);
            greys = present;
        }
        return present;
    }

    /** Which assumed figures move this film's print most. */
    List<PlateWarning> assumed(Progress progress) {
        return assumed.of(workshop, job, tile, digest, progress);
    }

    /** The plan's words on the film, where they decide how the plate lies on a sheet of a given size. */
    private String summary() throws IOException {
        return job.placing().sheet().isPresent() ? plan(Progress.NONE).summary() : "";
    }

    /** Why the job's sheet can't hold its plate and marks; empty where it can. */
    Optional<String> sheetFault() throws IOException {
        return FilmPreparation.sheetFault(job, pixels(), curve, summary());
    }

    private Job onOneSheet() throws IOException {
        return FilmPreparation.onOneSheet(job, pixels(), curve, summary());
    }

    private FilmPreparation.Picture picture() throws IOException {
        FilmPreparation.Picture present = picture;
        if (present == null) {
            present = FilmPreparation.picture(onOneSheet(), pixels(), curve, summary(), plane, tile);
            picture = present;
        }
        return present;
    }

    /** The positive as it lies on the plate. */
    PlateFilm positive() throws IOException {
        FilmPreparation.Picture film = picture();
        return onPlate(film.composer(), parts(film));
    }

    /** The aquatint screen film as it lies on the plate; none but photogravure has one. */
    @Nullable
    PlateFilm screen() throws IOException {
        if (!(job.process() instanceof PlateProcess.Photogravure process)) {
            return null;
        }
        FilmComposer dots = FilmPreparation.screen(onOneSheet(), pixels(), process, curve, summary());
        return onPlate(dots, dots::within);
    }

    private PlateFilm onPlate(FilmComposer film, FilmOnPlate.Parts parts) throws IOException {
        return FilmOnPlate.inParts(
                film.sheet(), film, parts, FilmPreparation.mirrored(job), BenchConditions.film(workshop));
    }

    /** Parts of a positive, mended where the job asks for it. */
    private FilmOnPlate.Parts parts(FilmPreparation.Picture film) {
        if (!job.mended()) {
            return film.composer()::within;
        }
        FilmLimits limits = FilmPreparation.limits(job, workshop);
        return part -> mended(film, part, limits);
    }

    private FilmRows mended(FilmPreparation.Picture film, PixelRect part, FilmLimits limits) {
        Mend narrow = film.mendWithin(part, range, limits);
        int reach = narrow.reachPixels();
        int left = Math.max(0, part.left() - reach);
        int top = Math.max(0, part.top() - reach);
        PixelRect wide = new PixelRect(left, top, part.right() + reach - left, part.bottom() + reach - top);
        return film.mendWithin(wide, range, limits).rows();
    }

    /** The whole sheet of the screen film where one is meant and the process has it, else the positive's. */
    LiveSheet sheet(boolean screen, LivePlacing placing, StageTones tones, Progress progress) throws IOException {
        String summary = plan(progress).summary();
        if (screen && job.process() instanceof PlateProcess.Photogravure process) {
            FilmComposer dots = FilmPreparation.screen(job, pixels(), process, curve, summary);
            int coverage = (int) Math.round(ToneCurve.SOLID * process.screenBlack());
            return new LiveSheet(job, dots, dots::within, new LiveSheetTones(placing, tones, curve, grey -> coverage));
        }
        FilmPreparation.Picture film = FilmPreparation.picture(job, pixels(), curve, summary, plane, tile);
        return new LiveSheet(
                job, film.composer(), parts(film), new LiveSheetTones(placing, tones, curve, curve::coverage));
    }

    /** Looks through every dot for what the plate will not keep. */
    FilmChecks check(Progress progress) throws IOException {
        Job whole = onOneSheet();
        FilmPreparation.Picture film = picture();
        Optional<Mend> mend =
                job.mended() ? Optional.of(film.mend(range, FilmPreparation.limits(job, workshop))) : Optional.empty();
        List<FilmDocument.Film> films = FilmPreparation.films(whole, curve, summary(), film, mend);
        return FilmChecks.of(whole, workshop, films, progress);
    }

    private FilmPixels pixels() {
        return workshop.filmPrinter().pixels(job.resolution());
    }
}
