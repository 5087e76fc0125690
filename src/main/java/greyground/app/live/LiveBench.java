package greyground.app.live;

import greyground.app.kept.GrainTiles;
import greyground.app.recipe.JobPlate;
import greyground.app.recipe.JobTones;
import greyground.app.recipe.SourceArt;
import greyground.app.sight.StageTones;
import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.plate.FilmPatches;
import greyground.plate.VirtualPlate;
import greyground.quantity.Resolution;
import greyground.raster.HalvedPlanes;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.Compensation;
import greyground.tone.RangeMapping;
import greyground.workshop.Workshop;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Art that lies on the bench, open while job and workshop change: what a change does not touch is kept, so that most changes show
 * at once. A new grain or another plate takes seconds the first time, and is kept on disk like a film's.
 *
 * <p>The thread that opens it uses it and closes it, and no other may; the work itself runs on all cores.
 */
public final class LiveBench implements Closeable {
    private static final int KEPT_TONES = 8;

    private final LiveArt art;
    private final LiveGreys greys = new LiveGreys();
    private final LiveAssumed assumed = new LiveAssumed();
    private final Map<String, StageTones> tones = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, StageTones> eldest) {
            return size() > KEPT_TONES;
        }
    };

    private @Nullable Tile tile;

    private LiveBench(LiveArt art) {
        this.art = art;
    }

    /** The grain used last. */
    private record Tile(Grain grain, Resolution resolution, Optional<ThresholdTile> made) {}

    /** Looks into the art, without decoding it. */
    public static LiveBench open(Path file) {
        return new LiveBench(new LiveArt(file));
    }

    /** The art's file. */
    public Path file() {
        return art.file();
    }

    /** What is known of the art's page, from 1. */
    public SourceArt source(int page) {
        return art.look(page);
    }

    /** The plate that a job gives in a workshop. Any plate made before is no longer of use. */
    public LivePlate plate(Job wanted, Workshop workshop, Progress progress) throws IOException {
        art.own();
        RangeMapping mapping = RangeMapping.named(wanted.rangeMapping());
        HalvedPlanes planes = art.planes(wanted.art(), progress.part(0, 0.5));
        ArtRange range = art.range(wanted.art(), progress.part(0.5, 0.6));
        ArtChoice settled = wanted.art()
                .read(art.decoded(wanted.art(), Progress.NONE).sha256())
                .settled(range.white(), range.black());
        Job job = wanted.settled(settled);
        Optional<ThresholdTile> grain = grain(job);
        progress.done(0.7);
        JobPlate plate = JobPlate.of(workshop, job, grain);
        VirtualPlate virtual = plate.plate();
        FilmPatches patches = plate.patches();
        JobTones known = plate.tones();
        progress.done(0.9);
        Compensation compensation = Compensation.of(known.name(), range, mapping, known.response());
        StageTones looks = tones.computeIfAbsent(
                known.name() + known.foretold().digest(), digest -> new StageTones(virtual, patches, known));
        progress.done(1);
        return new LivePlate(
                new LivePlate.Made(job, workshop, range, grain, plate, known, compensation, looks, assumed),
                art,
                planes,
                greys);
    }

    private Optional<ThresholdTile> grain(Job job) {
        Tile present = tile;
        if (present == null
                || !present.grain().equals(job.grain())
                || !present.resolution().equals(job.resolution())) {
            present = new Tile(job.grain(), job.resolution(), GrainTiles.positive(job));
            tile = present;
        }
        return present.made();
    }

    @Override
    public void close() {
        art.close();
    }
}
