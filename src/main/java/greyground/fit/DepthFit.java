package greyground.fit;

import greyground.quantity.Refusal;
import greyground.tone.MonotoneCubic;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How deep a plate is, from the tones of a proof: the depth at which the virtual plate, all else as in the workshop, prints nearest to
 * them in weighted least squares. Its variance is {@code (J' J)^-1 max(1, chi^2 / v)}, as for a test plate, so readings that no
 * depth explains make the depth less sure.
 *
 * @param depthMicrometres most likely
 * @param standardError of it, micrometres
 * @param misfit root mean square of measured less predicted, L*
 */
public record DepthFit(double depthMicrometres, double standardError, double misfit) {
    /** A tone read on a proof, ink and wiping varying from pull to pull (assumed). */
    public static final double READING_ERROR = 1;

    /**
     * What the virtual plate's own pixels, which make tones go down in small steps, leave unsure of a depth: fits to its own tones
     * without any error came within 1 % (measured at 13 and 20 um).
     */
    private static final double PIXELS = 0.015;

    private static final int TRIALS = 24;
    private static final int BEST = 3;
    private static final double PRECISION = 1e-9;
    private static final int MOST_STEPS = 100;
    private static final double STEP = 1e-3;
    private static final double FEWEST = 2;

    /**
     * A tone of the proof.
     *
     * @param coverage of the film, 0 to 1
     * @param lightness measured L*, absolute, 0 to 100
     * @param standardError of it, above 0
     */
    public record Reading(double coverage, double lightness, double standardError) {
        public Reading {
            Refusal.checkRange("proof tone's coverage", coverage * 100, 0, 100, "%", "give the film's coverage there");
            Refusal.checkRange("proof tone's lightness", lightness, 0, 100, "L*", "measure it again");
            Refusal.checkRange("proof tone's error", standardError, 1e-3, 50, "L*", "1 is usual");
        }
    }

    /** Predicts the plate bitten to any depth of a range. */
    public interface Predicted {
        /** Depths at which it was computed, rising; between them it is interpolated. */
        double[] depths();

        /** L* of a coverage at one of these depths. */
        double lightness(int depth, double coverage);
    }

    /**
     * Fits.
     *
     * @param readings two or more, not all of bare paper
     */
    public static DepthFit of(List<Reading> readings, Predicted predicted) {
        if (readings.stream().filter(reading -> reading.coverage() > 0).count() < FEWEST) {
            throw Refusal.use("a proof gives " + readings.size()
                    + " tones; at least 2 beside bare paper must be measured: add darker tones");
        }
        // Depth counts by its ratio, so the curves run over its logarithm.
        double[] places = Arrays.stream(predicted.depths()).map(StrictMath::log).toArray();
        List<MonotoneCubic> curves = new ArrayList<>();
        for (Reading reading : readings) {
            double[] lightness = new double[places.length];
            for (int i = 0; i < places.length; i++) {
                lightness[i] = predicted.lightness(i, reading.coverage());
            }
            curves.add(MonotoneCubic.fritschCarlson(places, lightness));
        }
        double least = places[0];
        double most = places[places.length - 1];
        FitLeastSquares problem = new FitLeastSquares(
                numbers -> {
                    double place = Math.max(least, Math.min(most, numbers[0]));
                    return curves.stream()
                            .mapToDouble(curve -> curve.value(place))
                            .toArray();
                },
                readings.stream().mapToDouble(Reading::lightness).toArray(),
                readings.stream().mapToDouble(Reading::standardError).toArray(),
                new double[] {least},
                new double[] {most},
                new double[] {STEP},
                PRECISION,
                MOST_STEPS);
        FitLeastSquares.Solution found = problem.solveFromMany(new double[] {(least + most) / 2}, TRIALS, BEST);
        double place = found.values().getEntry(0);
        double depth = StrictMath.exp(place);
        if (place < least + 2 * STEP || place > most - 2 * STEP) {
            throw Refusal.use("the proof's tones fit best at a depth of " + Refusal.plain(Math.rint(depth))
                    + " µm or beyond; a depth must lie between "
                    + Refusal.plain(Math.rint(predicted.depths()[0]))
                    + " and "
                    + Refusal.plain(Math.rint(predicted.depths()[places.length - 1]))
                    + " µm: check the readings, or teach the workshop with a test plate first");
        }
        double variance = found.covariance(new double[] {1}).getEntry(0, 0) * Math.max(1, found.varianceOfUnit());
        double squares = 0;
        for (int i = 0; i < readings.size(); i++) {
            double off = readings.get(i).lightness() - curves.get(i).value(place);
            squares += off * off;
        }
        return new DepthFit(depth, depth * Math.sqrt(variance + PIXELS * PIXELS), Math.sqrt(squares / readings.size()));
    }
}
