package greyground.wedge;

import greyground.plate.PlateConditions;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * The virtual plate's own numbers, found in a test plate: those whose foretold tones and targets lie nearest to the measured ones
 * in weighted least squares, within each number's allowed range.
 *
 * <p>A reading's error is that of its level with the model's own ({@link FitModel#errors}, taken anew for each round of the fit). The
 * covariance is {@code (J' J)^-1 max(1, chi^2 / v)}: a plate that the model fits worse than the readings' errors gets wider
 * errors, never narrower ones. A number is <em>determined</em> when half its 95 % interval is at most a quarter of its allowed
 * range (in the coordinate it is fitted in; assumed). While any is not, the worst is set back to the workshop's value and the
 * rest are fitted again. What the rest would be if that value is wrong is not hidden: their variance grows by
 * {@code (S d)^2}, S the slope of the estimate by the number left fixed and d the root mean square of how wrong it can be,
 * evenly over the part of its allowed range which the plate did not rule out. There are no other priors. Last, each interval is
 * put to the test: with the number held at either end and the rest fitted again chi^2 must rise by at least two fifths of t^2
 * (the profile of Bates and Watts 1988, from memory; the share assumed), else the number isn't determined.
 */
public final class PlateFit {
    private final PlateConditions conditions;
    private final Map<FitParameter, FittedFigure> figures;
    private final Map<FitParameter, Map<FitParameter, Double>> correlations;
    private final List<Double> singularValues;
    private final double misfit;

    PlateFit(
            PlateConditions conditions,
            Map<FitParameter, FittedFigure> figures,
            Map<FitParameter, Map<FitParameter, Double>> correlations,
            List<Double> singularValues,
            double misfit) {
        this.conditions = conditions;
        this.figures = figures;
        this.correlations = correlations;
        this.singularValues = singularValues;
        this.misfit = misfit;
    }

    /**
     * Fits.
     *
     * @param start the workshop's plate, bitten as deep as the test plate was measured to be
     * @param model made for the coverages of {@code levels}
     * @param levels measured tones; may be empty
     * @param readings of single numbers; may be empty
     * @param asked numbers to look for; the others stay out of it
     */
    public static PlateFit of(
            PlateConditions start,
            FitModel model,
            List<MeasuredLevel> levels,
            List<FitReading> readings,
            Set<FitParameter> asked) {
        if (asked.isEmpty() || (levels.isEmpty() && readings.isEmpty())) {
            throw Refusal.use("a fit has " + levels.size() + " tones, " + readings.size() + " other readings and "
                    + asked.size() + " numbers to find; it needs at least one of each: measure the plate");
        }
        return new FitSearch(new FitProblem(start, model, levels, readings)).narrowed(asked);
    }

    /** The start's conditions with all determined numbers in place. */
    public PlateConditions conditions() {
        return conditions;
    }

    /** Every number asked for, in their order. */
    public List<FittedFigure> figures() {
        return List.copyOf(figures.values());
    }

    /** What was found of one number; empty if it wasn't asked for. */
    public Optional<FittedFigure> figure(FitParameter parameter) {
        return Optional.ofNullable(figures.get(parameter));
    }

    /** Correlation of the errors of two determined numbers, -1 to 1; empty unless both are. */
    public Optional<Double> correlation(FitParameter one, FitParameter other) {
        return Optional.ofNullable(correlations.getOrDefault(one, Map.of()).get(other));
    }

    /**
     * Singular values of the first fit's J with each number in units of its allowed range, largest first: about the signal to
     * noise of the combinations of numbers that the plate tells apart. Below about 4 a combination is not told.
     */
    public List<Double> singularValues() {
        return singularValues;
    }

    /** Root of chi^2 over degrees of freedom; near 1 where the model explains the plate, 2 or more where it does not. */
    public double misfit() {
        return misfit;
    }

    /** The determined numbers as changes of the workshop. {@code provenance} tells how a path's present value is known. */
    public List<FigureChange> changes(Function<String, String> provenance) {
        List<FigureChange> changes = new ArrayList<>();
        for (FittedFigure figure : figures.values()) {
            if (figure instanceof FittedFigure.Determined found) {
                String path = found.parameter().path();
                changes.add(new FigureChange(
                        path, found.before(), provenance.apply(path), found.value(), found.standardError()));
            }
        }
        return changes;
    }

    /** One plain line for each number. */
    public List<String> words() {
        return figures.values().stream().map(FittedFigure::words).toList();
    }
}
