package greyground.app.live;

import greyground.app.check.AssumedFigures;
import greyground.app.check.PlateWarning;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmRecipe;
import greyground.app.recipe.JobTones;
import greyground.app.recipe.SourceArt;
import greyground.app.sight.StageTones;
import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.raster.Crew;
import greyground.raster.GreyPlane;
import greyground.raster.HalvedPlanes;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Art that lies on the bench, open while job and workshop change: what a change does not touch is kept, so that most changes show
 * at once. A new grain or another plate takes seconds the first time, and is kept on disk like a film's.
 *
 * <p>The thread that opens it uses it and closes it, and no other may; the work itself runs on all cores.
 */
public final class LiveBench implements Closeable {
    private static final int KEPT_TONES = 8;

    private final ArtSource art;
    private final LiveGreys greys = new LiveGreys();
    private final Map<String, StageTones> tones = LiveGreys.latest(KEPT_TONES);
    private @Nullable HalvedPlanes planes;
    private @Nullable Assumed said;

    /** Which assumed figures move the print; a change of tone does not touch it. */
    private record Assumed(Workshop workshop, String plate, List<PlateWarning> words) {}

    private LiveBench(ArtSource art) {
        this.art = art;
    }

    /** Looks into the art, without decoding it. */
    public static LiveBench open(Path file) {
        return new LiveBench(ArtSource.toStay(file));
    }

    /** The art's file. */
    public Path file() {
        return art.file();
    }

    /** What is known of the art's page, from 1. */
    public SourceArt source(int page) {
        return art.source(page);
    }

    /** The art as a job turns it, read where it was not yet; no plate is computed for it. */
    public LiveArt art(ArtChoice choice, Progress progress) throws IOException {
        GreyPlane turned = art.turned(choice, progress.part(0, 0.85));
        return new LiveArt(art, halved(turned, progress.part(0.85, 1)), greys);
    }

    private HalvedPlanes halved(GreyPlane plane, Progress progress) throws IOException {
        HalvedPlanes present = planes;
        if (present == null || present.whole() != plane) {
            present = HalvedPlanes.of(plane, Crew.allCores(), progress);
            planes = present;
        }
        return present;
    }

    /** The plate that a job gives in a workshop. Any plate made before is no longer of use. */
    public LivePlate plate(Job wanted, Workshop workshop, Progress progress) throws IOException {
        FilmRecipe recipe = FilmRecipe.of(art, wanted, workshop, progress.part(0, 0.7));
        HalvedPlanes present = halved(recipe.art(), progress.part(0.7, 0.9));
        JobTones known = recipe.tones();
        StageTones looks = tones.computeIfAbsent(
                known.name() + known.predicted().digest(),
                digest -> new StageTones(recipe.plate().plate(), recipe.plate().patches(), known));
        progress.done(1);
        return new LivePlate(this, recipe, art, present, looks, greys);
    }

    /** What {@link AssumedFigures} says, kept while workshop and plate stay what they are. */
    List<PlateWarning> assumed(FilmRecipe recipe, Progress progress) throws IOException {
        Assumed present = said;
        String plate = recipe.tones().predicted().digest();
        if (present == null
                || !present.plate().equals(plate)
                || !present.workshop().equals(recipe.workshop())) {
            present =
                    new Assumed(recipe.workshop(), plate, AssumedFigures.of(recipe.workshop(), recipe.job(), progress));
            said = present;
        }
        return present.words();
    }

    @Override
    public void close() {
        planes = null;
        art.close();
    }
}
