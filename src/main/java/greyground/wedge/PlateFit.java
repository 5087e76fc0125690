package greyground.wedge;

import greyground.plate.PlateConditions;
import greyground.quantity.Refusal;
import greyground.tone.Confidence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.hipparchus.linear.RealMatrix;

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
    private static final double DETERMINED = 0.25;
    private static final double STEP = 0.02;
    private static final double AT_BOUND = 0.01;
    private static final double PRECISION = 1e-4;
    private static final int MOST_STEPS = 25;
    private static final int TRIALS = 24;
    private static final int STARTS = 2;
    private static final double CONFIRMED = 0.4;
    private static final String MADE_UP =
            "within its interval other numbers make up for it, so the interval can't be trusted";
    private static final double ALIKE = 0.9;
    private static final double SHARE = 0.95;

    private final PlateConditions conditions;
    private final Map<FitParameter, FittedFigure> figures;
    private final Map<FitParameter, Map<FitParameter, Double>> correlations;
    private final List<Double> singularValues;
    private final double misfit;

    private PlateFit(
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
        return new Search(start, model, levels, readings).narrowed(asked);
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

    /** A number set back: where the plate had it, and how far that could be off. */
    private record Fixed(double centre, double halfWidth, String reason) {}

    /** One fit and its errors, in coordinates. */
    private record Round(
            FitLeastSquares.Solution solution, RealMatrix covariance, List<Double> errors, double quantile) {}

    private static final class Search {
        private final PlateConditions start;
        private final FitModel model;
        private final List<MeasuredLevel> levels;
        private final List<FitReading> readings;
        private double[] blame;
        private final Map<FitParameter, Fixed> fixed = new EnumMap<>(FitParameter.class);

        Search(PlateConditions start, FitModel model, List<MeasuredLevel> levels, List<FitReading> readings) {
            this.start = start;
            this.model = model;
            this.levels = levels;
            this.readings = readings;
            this.blame = levels.isEmpty() ? new double[0] : model.errors(start);
        }

        PlateFit narrowed(Set<FitParameter> asked) {
            List<FitParameter> free = new ArrayList<>(EnumSet.copyOf(asked));
            List<Double> singular = new ArrayList<>();
            double[] from = coordinates(free);
            while (true) {
                Round round = round(free, from);
                if (singular.isEmpty()) {
                    // The first fit weighs with the errors of the workshop's plate; its own plate's are nearer the
                    // truth.
                    reweigh(free, round);
                    round = round(free, round.solution().values().toArray(), false);
                }
                if (singular.isEmpty()) {
                    for (double value : round.solution().singularValues(ranges(free))) {
                        singular.add(value);
                    }
                }
                int worst = worst(free, round);
                if (worst >= 0) {
                    fix(free, worst, round);
                } else {
                    worst = unconfirmed(free, round);
                    if (worst < 0) {
                        return result(free, asked, round, singular);
                    }
                    double whole = free.get(worst).range();
                    fixed.put(
                            free.get(worst), new Fixed(round.solution().values().getEntry(worst), whole, MADE_UP));
                }
                reweigh(free, round);
                from = new double[free.size() - 1];
                for (int i = 0; i < from.length; i++) {
                    from[i] = round.solution().values().getEntry(i < worst ? i : i + 1);
                }
                free.remove(worst);
                if (free.isEmpty()) {
                    return result(free, asked, round, singular);
                }
            }
        }

        private void reweigh(List<FitParameter> free, Round round) {
            if (!levels.isEmpty()) {
                blame = model.errors(with(free, round.solution().values().toArray()));
            }
        }

        private Round round(List<FitParameter> free, double[] from) {
            return round(free, from, fixed.isEmpty());
        }

        private Round round(List<FitParameter> free, double[] from, boolean far) {
            FitLeastSquares.Solution solution = far
                    ? problem(free).solveFromMany(from, TRIALS, STARTS)
                    : problem(free).solve(from);
            double factor = Math.max(1, solution.varianceOfUnit());
            RealMatrix covariance = solution.covariance(ranges(free)).scalarMultiply(factor);
            double quantile = Confidence.quantile(SHARE, Math.max(1, solution.degrees()));
            double[] variance = new double[free.size()];
            for (int i = 0; i < variance.length; i++) {
                variance[i] = covariance.getEntry(i, i);
            }
            for (Map.Entry<FitParameter, Fixed> one : fixed.entrySet()) {
                double[] slope = slopes(free, solution, one.getKey());
                double wrong = wrong(one.getKey(), one.getValue());
                for (int i = 0; i < variance.length; i++) {
                    variance[i] += slope[i] * slope[i] * wrong * wrong;
                }
            }
            List<Double> errors = new ArrayList<>();
            for (double one : variance) {
                errors.add(Math.sqrt(one));
            }
            return new Round(solution, covariance, errors, quantile);
        }

        /** How the free estimates move with a fixed number: {@code -(J' J)^-1 J' j}. */
        private double[] slopes(List<FitParameter> free, FitLeastSquares.Solution solution, FitParameter number) {
            double[] at = solution.values().toArray();
            double present = number.coordinate(number.of(start));
            double step = STEP * number.range();
            double[] low = foretold(with(free, at, number, present - step), readings);
            double[] high = foretold(with(free, at, number, present + step), readings);
            double[] errors = errors();
            double[] slope = new double[low.length];
            for (int i = 0; i < slope.length; i++) {
                slope[i] = (high[i] - low[i]) / (2 * step) / errors[i];
            }
            double[] right = solution.jacobian().transpose().operate(slope);
            return solution.covariance(ranges(free)).scalarMultiply(-1).operate(right);
        }

        /** Root mean square distance of the workshop's value from anywhere that the plate leaves the number. */
        private double wrong(FitParameter number, Fixed one) {
            double low = Math.max(number.coordinate(number.least()), one.centre() - one.halfWidth());
            double high = Math.min(number.coordinate(number.most()), one.centre() + one.halfWidth());
            double from = low - number.coordinate(number.of(start));
            double to = high - number.coordinate(number.of(start));
            return Math.sqrt((from * from + from * to + to * to) / 3);
        }

        private int worst(List<FitParameter> free, Round round) {
            int worst = -1;
            double most = DETERMINED;
            for (int i = 0; i < free.size(); i++) {
                double share =
                        round.quantile() * round.errors().get(i) / free.get(i).range();
                if (!(share <= most)) {
                    worst = i;
                    most = share;
                }
            }
            for (int i = 0; worst < 0 && i < free.size(); i++) {
                worst = isAtBound(free.get(i), round.solution().values().getEntry(i)) ? i : -1;
            }
            return worst;
        }

        /**
         * The number whose interval the readings bear out least: held at an end of it and the rest fitted again, chi^2 must rise by
         * about t^2. Where kinks or jumps of the model make its slopes misleading, it does not.
         */
        private int unconfirmed(List<FitParameter> free, Round round) {
            int worst = -1;
            double least = CONFIRMED;
            double expected = round.quantile()
                    * round.quantile()
                    * Math.max(1, round.solution().varianceOfUnit());
            for (int i = 0; i < free.size(); i++) {
                double at = round.solution().values().getEntry(i);
                double half = round.quantile() * Math.sqrt(round.covariance().getEntry(i, i));
                for (double end : new double[] {at - half, at + half}) {
                    FitParameter number = free.get(i);
                    boolean within = end > number.coordinate(number.least()) && end < number.coordinate(number.most());
                    double rise = within
                            ? (held(free, i, end, round) - round.solution().sum()) / expected
                            : 1;
                    if (rise < least) {
                        least = rise;
                        worst = i;
                    }
                }
            }
            return worst;
        }

        /** Sum of squares with one number held and the rest fitted again. */
        private double held(List<FitParameter> free, int number, double coordinate, Round round) {
            List<FitParameter> rest = new ArrayList<>(free);
            FitParameter one = rest.remove(number);
            double[] from = new double[rest.size()];
            for (int i = 0; i < from.length; i++) {
                from[i] = round.solution().values().getEntry(i < number ? i : i + 1);
            }
            Search search = new Search(one.with(start, one.value(coordinate)), model, levels, readings);
            search.blame = blame;
            return search.problem(rest).solve(from).sum();
        }

        private static boolean isAtBound(FitParameter number, double coordinate) {
            double margin = AT_BOUND * number.range();
            return coordinate < number.coordinate(number.least()) + margin
                    || coordinate > number.coordinate(number.most()) - margin;
        }

        private void fix(List<FitParameter> free, int worst, Round round) {
            FitParameter number = free.get(worst);
            double half = round.quantile() * round.errors().get(worst);
            fixed.put(
                    number,
                    new Fixed(round.solution().values().getEntry(worst), half, reason(free, worst, round, half)));
        }

        private String reason(List<FitParameter> free, int worst, Round round, double half) {
            FitParameter number = free.get(worst);
            double signal = 0;
            for (int row = 0; row < round.solution().jacobian().getRowDimension(); row++) {
                signal = StrictMath.hypot(signal, round.solution().jacobian().getEntry(row, worst) * number.range());
            }
            if (signal * DETERMINED < round.quantile()) {
                return "nothing that was measured depends on it";
            }
            if (half / number.range() <= DETERMINED) {
                return "the readings would have it at the end of its range, so they can't be explained by it alone";
            }
            for (int i = 0; i < free.size(); i++) {
                double alike = round.covariance().getEntry(i, worst)
                        / Math.sqrt(round.covariance().getEntry(i, i)
                                * round.covariance().getEntry(worst, worst));
                if (i != worst && Math.abs(alike) > ALIKE) {
                    return "this plate can't tell it from the " + free.get(i).words();
                }
            }
            if (!fixed.isEmpty()) {
                return "it hangs on numbers that this plate could not determine";
            }
            return "the readings leave more than half of its range open";
        }

        private PlateFit result(List<FitParameter> free, Set<FitParameter> asked, Round round, List<Double> singular) {
            Map<FitParameter, FittedFigure> figures = new EnumMap<>(FitParameter.class);
            for (FitParameter number : asked) {
                Fixed one = fixed.get(number);
                if (one != null) {
                    figures.put(number, new FittedFigure.Undetermined(number, number.of(start), one.reason()));
                }
            }
            Map<FitParameter, Map<FitParameter, Double>> correlations = new EnumMap<>(FitParameter.class);
            PlateConditions conditions = start;
            for (int i = 0; i < free.size(); i++) {
                FitParameter number = free.get(i);
                double at = round.solution().values().getEntry(i);
                double half = round.quantile() * round.errors().get(i);
                figures.put(
                        number,
                        new FittedFigure.Determined(
                                number,
                                number.of(start),
                                number.value(at),
                                round.errors().get(i) * number.slope(number.value(at)),
                                Math.max(number.least(), number.value(at - half)),
                                Math.min(number.most(), number.value(at + half))));
                conditions = number.with(conditions, number.value(at));
                Map<FitParameter, Double> row = new EnumMap<>(FitParameter.class);
                for (int k = 0; k < free.size(); k++) {
                    row.put(
                            free.get(k),
                            round.covariance().getEntry(i, k)
                                    / Math.sqrt(round.covariance().getEntry(i, i)
                                            * round.covariance().getEntry(k, k)));
                }
                correlations.put(number, row);
            }
            return new PlateFit(
                    conditions,
                    figures,
                    correlations,
                    List.copyOf(singular),
                    Math.sqrt(round.solution().varianceOfUnit()));
        }

        private FitLeastSquares problem(List<FitParameter> free) {
            double[] least = new double[free.size()];
            double[] most = new double[free.size()];
            double[] steps = new double[free.size()];
            for (int i = 0; i < free.size(); i++) {
                least[i] = free.get(i).coordinate(free.get(i).least());
                most[i] = free.get(i).coordinate(free.get(i).most());
                steps[i] = STEP * free.get(i).range();
            }
            return new FitLeastSquares(
                    values -> foretold(with(free, values), readings),
                    read(),
                    errors(),
                    least,
                    most,
                    steps,
                    PRECISION,
                    MOST_STEPS);
        }

        private double[] coordinates(List<FitParameter> free) {
            return free.stream()
                    .mapToDouble(number -> number.coordinate(number.of(start)))
                    .toArray();
        }

        private static double[] ranges(List<FitParameter> free) {
            return free.stream().mapToDouble(FitParameter::range).toArray();
        }

        private PlateConditions with(List<FitParameter> free, double[] coordinates) {
            PlateConditions conditions = start;
            for (int i = 0; i < free.size(); i++) {
                conditions = free.get(i).with(conditions, free.get(i).value(coordinates[i]));
            }
            return conditions;
        }

        private PlateConditions with(
                List<FitParameter> free, double[] coordinates, FitParameter number, double coordinate) {
            return number.with(with(free, coordinates), number.value(coordinate));
        }

        private double[] foretold(PlateConditions conditions, List<FitReading> direct) {
            double[] tones = levels.isEmpty() ? new double[0] : model.lightness(conditions);
            double[] all = Arrays.copyOf(tones, levels.size() + direct.size());
            for (int i = 0; i < direct.size(); i++) {
                FitParameter number = direct.get(i).parameter();
                all[levels.size() + i] = number.coordinate(number.of(conditions));
            }
            return all;
        }

        private double[] read() {
            double[] read = new double[levels.size() + readings.size()];
            for (int i = 0; i < levels.size(); i++) {
                read[i] = levels.get(i).lightness();
            }
            for (int i = 0; i < readings.size(); i++) {
                FitReading one = readings.get(i);
                read[levels.size() + i] = one.parameter().coordinate(one.value());
            }
            return read;
        }

        private double[] errors() {
            double[] errors = new double[levels.size() + readings.size()];
            for (int i = 0; i < levels.size(); i++) {
                errors[i] = StrictMath.hypot(levels.get(i).standardError(), blame[i]);
            }
            for (int i = 0; i < readings.size(); i++) {
                FitReading one = readings.get(i);
                errors[levels.size() + i] =
                        one.standardError() / one.parameter().slope(one.value());
            }
            return errors;
        }
    }
}
