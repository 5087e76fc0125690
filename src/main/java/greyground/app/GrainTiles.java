package greyground.app;

import greyground.film.Job;
import greyground.grain.Grain;
import greyground.grain.StochasticGrain;
import greyground.grain.ThresholdTile;
import greyground.plate.PlateProcess;
import greyground.quantity.Resolution;
import java.util.Optional;

/** The threshold tiles that a job's films need. */
final class GrainTiles {
    private static final long SCREEN_SEED = 1;

    private GrainTiles() {}

    /** The positive's grain; empty for continuous tone. */
    static Optional<ThresholdTile> positive(Job job) {
        return job.grain() instanceof Grain.Continuous
                ? Optional.empty()
                : Optional.of(ThresholdTile.of(job.grain(), job.resolution()));
    }

    /** The aquatint screen of photogravure. */
    static ThresholdTile screen(PlateProcess.Photogravure process, Resolution resolution) {
        return StochasticGrain.tile(new Grain.Stochastic(process.screenSpacingMicrometres(), SCREEN_SEED), resolution);
    }
}
