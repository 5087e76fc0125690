package greyground.app.kept;

import greyground.film.job.Job;
import greyground.grain.AquatintScreen;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.plate.PlateProcess;
import greyground.quantity.Resolution;
import greyground.tone.ToneCurve;
import java.util.Optional;

/** The threshold tiles that a job's films need. */
public final class GrainTiles {
    public static final long SCREEN_SEED = 1;

    private static final GrainStore USUAL = new GrainStore(CacheFolder.usual().folder());

    private GrainTiles() {}

    /** The positive's grain; empty for continuous tone. */
    public static Optional<ThresholdTile> positive(Job job) {
        return job.grain() instanceof Grain.Continuous
                ? Optional.empty()
                : Optional.of(USUAL.tile(job.grain(), job.resolution()));
    }

    /** The aquatint screen of photogravure. */
    public static AquatintScreen screen(PlateProcess.Photogravure process, Resolution resolution) {
        Grain grain = new Grain.Stochastic(process.screenSpacingMicrometres(), SCREEN_SEED);
        ThresholdTile tile = USUAL.tile(grain, resolution);
        return new AquatintScreen(tile, (int) Math.round(process.screenBlack() * ToneCurve.SOLID));
    }
}
