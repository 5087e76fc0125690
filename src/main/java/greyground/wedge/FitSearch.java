package greyground.wedge;

import greyground.plate.PlateConditions;
import greyground.tone.Confidence;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.hipparchus.linear.RealMatrix;

/** The rounds of one {@link PlateFit}, whose rules stand there: fit, judge each number, set the worst back, fit again. */
final class FitSearch {
    /** Half a 95 % interval over the allowed range, at most, for a number to count as determined; assumed. */
    private static final double DETERMINED = 0.25;

    /** A number this near its bound, in allowed ranges, is at it; assumed. */
    private static final double AT_BOUND = 0.01;

    /** Starts that are tried, and from how many of them a fit is made; assumed. */
    private static final int TRIALS = 24;

    private static final int STARTS = 2;

    /** Least rise of chi^2 at an interval's end, in t^2; assumed. */
    private static final double CONFIRMED = 0.4;

    /** Correlation from which two numbers can't be told apart; assumed. */
    private static final double ALIKE = 0.9;

    /** Of the intervals, as everywhere in the project. */
    private static final double SHARE = 0.95;

    private static final String MADE_UP =
            "within its interval other numbers make up for it, so the interval can't be trusted";

    private final Map<FitParameter, Fixed> fixed = new EnumMap<>(FitParameter.class);
    private FitProblem problem;

    FitSearch(FitProblem problem) {
        this.problem = problem;
    }

    /** A number set back: where the plate had it, and how far that could be off. */
    private record Fixed(double centre, double halfWidth, String reason) {}

    /** One fit and its errors, in coordinates. */
    private record Round(
            FitLeastSquares.Solution solution, RealMatrix covariance, List<Double> errors, double quantile) {}

    /** Fits, sets back what is not determined, and fits again, until all that is left is. */
    PlateFit narrowed(Set<FitParameter> asked) {
        List<FitParameter> free = new ArrayList<>(EnumSet.copyOf(asked));
        List<Double> singular = new ArrayList<>();
        double[] from = problem.coordinates(free);
        while (true) {
            Round round = round(free, from);
            if (singular.isEmpty()) {
                // The first fit weighs with the errors of the workshop's plate; its own plate's are nearer the
                // truth.
                reweigh(free, round);
                round = round(free, round.solution().values().toArray(), false);
            }
            if (singular.isEmpty()) {
                for (double value : round.solution().singularValues(FitProblem.ranges(free))) {
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
                fixed.put(free.get(worst), new Fixed(round.solution().values().getEntry(worst), whole, MADE_UP));
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
        problem = problem.reweighed(problem.with(free, round.solution().values().toArray()));
    }

    private Round round(List<FitParameter> free, double[] from) {
        return round(free, from, fixed.isEmpty());
    }

    private Round round(List<FitParameter> free, double[] from, boolean far) {
        FitLeastSquares.Solution solution = far
                ? problem.on(free).solveFromMany(from, TRIALS, STARTS)
                : problem.on(free).solve(from);
        double factor = Math.max(1, solution.varianceOfUnit());
        RealMatrix covariance = solution.covariance(FitProblem.ranges(free)).scalarMultiply(factor);
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
        double present = number.coordinate(number.of(problem.start()));
        double step = FitProblem.STEP * number.range();
        double[] low = problem.foretold(problem.with(free, at, number, present - step));
        double[] high = problem.foretold(problem.with(free, at, number, present + step));
        double[] errors = problem.errors();
        double[] slope = new double[low.length];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = (high[i] - low[i]) / (2 * step) / errors[i];
        }
        double[] right = solution.jacobian().transpose().operate(slope);
        return solution.covariance(FitProblem.ranges(free)).scalarMultiply(-1).operate(right);
    }

    /** Root mean square distance of the workshop's value from anywhere that the plate leaves the number. */
    private double wrong(FitParameter number, Fixed one) {
        double low = Math.max(number.coordinate(number.least()), one.centre() - one.halfWidth());
        double high = Math.min(number.coordinate(number.most()), one.centre() + one.halfWidth());
        double from = low - number.coordinate(number.of(problem.start()));
        double to = high - number.coordinate(number.of(problem.start()));
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
                double rise =
                        within ? (held(free, i, end, round) - round.solution().sum()) / expected : 1;
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
        return problem.holding(one, coordinate).on(rest).solve(from).sum();
    }

    private static boolean isAtBound(FitParameter number, double coordinate) {
        double margin = AT_BOUND * number.range();
        return coordinate < number.coordinate(number.least()) + margin
                || coordinate > number.coordinate(number.most()) - margin;
    }

    private void fix(List<FitParameter> free, int worst, Round round) {
        FitParameter number = free.get(worst);
        double half = round.quantile() * round.errors().get(worst);
        fixed.put(number, new Fixed(round.solution().values().getEntry(worst), half, reason(free, worst, round, half)));
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
                figures.put(number, new FittedFigure.Undetermined(number, number.of(problem.start()), one.reason()));
            }
        }
        Map<FitParameter, Map<FitParameter, Double>> correlations = new EnumMap<>(FitParameter.class);
        PlateConditions conditions = problem.start();
        for (int i = 0; i < free.size(); i++) {
            FitParameter number = free.get(i);
            double at = round.solution().values().getEntry(i);
            double half = round.quantile() * round.errors().get(i);
            figures.put(
                    number,
                    new FittedFigure.Determined(
                            number,
                            number.of(problem.start()),
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
}
