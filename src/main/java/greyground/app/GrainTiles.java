package greyground.app;

import greyground.film.Job;
import greyground.grain.Grain;
import greyground.grain.HalftoneScreen;
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
        if (job.grain() instanceof Grain.Stochastic stochastic) {
            return Optional.of(StochasticGrain.tile(stochastic, job.resolution()));
        }
        if (job.grain() instanceof Grain.Halftone halftone) {
            return Optional.of(HalftoneScreen.of(halftone, job.resolution()).tile());
        }
        return Optional.empty();
    }

    /** The aquatint screen of photogravure. */
    static ThresholdTile screen(PlateProcess.Photogravure process, Resolution resolution) {
        return StochasticGrain.tile(new Grain.Stochastic(process.screenSpacingMicrometres(), SCREEN_SEED), resolution);
    }
}
