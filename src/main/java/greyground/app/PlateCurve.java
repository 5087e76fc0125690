package greyground.app;

import greyground.film.Job;
import greyground.grain.Grain;
import greyground.plate.PlateProcess;
import greyground.tone.ContinuousTone;
import greyground.tone.DotGrowth;
import greyground.tone.EdgeGrowthResponse;
import greyground.tone.Lines;
import greyground.tone.PlateResponse;
import greyground.tone.RoundDots;
import greyground.tone.WholeDots;
import greyground.workshop.Workshop;

/** Finds the response of a job's plate in its workshop: the one place that decides what sets the curve. */
final class PlateCurve {
    /** Dots and lands as narrow as this are placed whole by the grain; see {@code grain}. */
    private static final double LEAST_FEATURE_MICROMETRES = 40;

    /** Above the widest least dot that a spacing can hold, with a margin. */
    private static final double MOST_OF_SPACING = 0.6;

    private PlateCurve() {}

    /** The edge-growth law with the shop's edge shift, n and open-bite ceiling. */
    static PlateResponse response(Workshop workshop, Job job) {
        DotGrowth growth = growth(job.grain());
        double spacing = spacingMicrometres(job.grain());
        double opening = workshop.resist().smallestOpeningMicrometres().value();
        double least =
                spacing > 0 ? Math.min(0.2, DotGrowth.coverageOfDot(Math.min(opening, 0.5 * spacing), spacing)) : 0;
        if (job.grain() instanceof Grain.Stochastic) {
            // Whole dots of 40 um are wider than the opening that washes clean, so even a single one holds.
            least = opening <= LEAST_FEATURE_MICROMETRES ? 0 : least;
        }
        double paper = workshop.paper().whiteDensity().value();
        double ceiling = job.process() instanceof PlateProcess.EtchedFilm
                ? workshop.response().openBiteCoverage().value()
                : 1;
        return new EdgeGrowthResponse(
                growth,
                edgeShiftMicrometres(workshop, job),
                workshop.ink().yuleNielsenFactor().value(),
                paper,
                paper + workshop.ink().saturationDensity().value(),
                least,
                ceiling);
    }

    /**
     * The shop's edge shift belongs to a bitten plate. A continuous-tone film has no edges on it, and on an unetched film nothing
     * is bitten, so that only the ink's spread is left.
     */
    private static double edgeShiftMicrometres(Workshop workshop, Job job) {
        if (job.grain() instanceof Grain.Continuous) {
            return 0;
        }
        return job.process() instanceof PlateProcess.UnetchedFilm
                ? workshop.ink().spreadMicrometres().value()
                : workshop.response().edgeShiftMicrometres().value();
    }

    private static DotGrowth growth(Grain grain) {
        if (grain instanceof Grain.Stochastic stochastic) {
            double least = Math.min(LEAST_FEATURE_MICROMETRES, MOST_OF_SPACING * stochastic.spacingMicrometres());
            return new WholeDots(stochastic.spacingMicrometres(), least, least);
        }
        if (grain instanceof Grain.Halftone halftone) {
            double pitch = halftone.ruling().pitchMicrometres();
            return halftone.shape() == Grain.DotShape.LINE ? new Lines(pitch) : new RoundDots(pitch);
        }
        return new ContinuousTone();
    }

    private static double spacingMicrometres(Grain grain) {
        if (grain instanceof Grain.Stochastic stochastic) {
            return stochastic.spacingMicrometres();
        }
        return grain instanceof Grain.Halftone halftone ? halftone.ruling().pitchMicrometres() : 0;
    }
}
