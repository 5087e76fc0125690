package greyground.fit;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hipparchus.exception.MathIllegalArgumentException;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DiagonalMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposition;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.random.HaltonSequenceGenerator;
import org.hipparchus.util.Pair;

/**
 * Bounded nonlinear least squares: Levenberg-Marquardt (More 1978, as MINPACK has it) on an angle in place of each bounded number,
 * {@code c = middle + half sin u}, so that no step leaves the bounds (James and Roos 1975, from memory). A number without bounds
 * is taken as it is.
 *
 * <p>Derivatives are central differences of a stated step. The covariance is that of the linearised problem at the solution,
 * {@code (J' J)^-1} with J the derivatives of readings in units of their errors; the textbook formula, which ignores
 * curvature. Multiply by {@link Solution#varianceOfUnit} when the errors are known only up to a factor.
 */
final class FitLeastSquares {
    /** A start on a bound has no slope; it is moved in by this share of the range. */
    private static final double OFF_BOUND = 0.01;

    private static final int[] PRIMES = {2, 3, 5, 7, 11, 13, 17, 19};
    private static final int MOST_TRIALS = 4000;

    private final UnaryOperator<double[]> model;
    private final double[] readings;
    private final double[] errors;
    private final double[] least;
    private final double[] most;
    private final double[] steps;
    private final double precision;
    private final int mostSteps;

    /**
     * States a problem.
     *
     * @param model from numbers to predicted readings
     * @param errors standard error of each reading, above 0
     * @param least of each number, negative infinity for none
     * @param most of each number, infinity for none
     * @param steps for differences, above 0; the model must bear numbers two steps beyond their bounds
     * @param precision relative change at which the search ends
     * @param mostSteps after which it ends anyhow, so that a model with fine jumps can't keep it going
     */
    FitLeastSquares(
            UnaryOperator<double[]> model,
            double[] readings,
            double[] errors,
            double[] least,
            double[] most,
            double[] steps,
            double precision,
            int mostSteps) {
        this.model = model;
        this.readings = readings.clone();
        this.errors = errors.clone();
        this.least = least.clone();
        this.most = most.clone();
        this.steps = steps.clone();
        this.precision = precision;
        this.mostSteps = mostSteps;
    }

    /**
     * What was found.
     *
     * @param values the numbers
     * @param jacobian derivatives of the readings, in units of their errors, by each number
     * @param sum of squared residuals in units of their errors
     * @param degrees readings less numbers
     */
    record Solution(RealVector values, RealMatrix jacobian, double sum, int degrees) {
        /** Sum of squares over degrees of freedom; 1 if model and errors are right. */
        double varianceOfUnit() {
            return degrees > 0 ? sum / degrees : 1;
        }

        /**
         * Covariance {@code (J' J)^-1} by singular values of the scaled J; a number that no reading depends on, or that others
         * wholly replace, gets an infinite variance.
         *
         * @param scales size of each number, so that a small singular value means the same for all
         */
        RealMatrix covariance(double[] scales) {
            DiagonalMatrix scale = new DiagonalMatrix(scales);
            SingularValueDecomposition parts = new SingularValueDecomposition(jacobian.multiply(scale));
            double[] singular = parts.getSingularValues();
            double least = 1e-9 * Math.max(singular[0], 1e-300);
            RealMatrix spread = scale.multiply(parts.getV())
                    .multiply(new DiagonalMatrix(Arrays.stream(singular)
                            .map(value -> 1 / Math.max(value, least))
                            .toArray()));
            return spread.multiplyTransposed(spread);
        }
    }

    /** Searches from a start, which must lie within the bounds. */
    Solution solve(double[] start) {
        if (start.length > readings.length) {
            throw Refusal.use("a fit has " + readings.length + " readings for " + start.length
                    + " numbers; it needs at least as many readings: measure more patches");
        }
        double[] angles = IntStream.range(0, start.length)
                .mapToDouble(i -> angle(start[i], i))
                .toArray();
        try {
            Optimum optimum = new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(precision)
                    .withParameterRelativeTolerance(precision)
                    .withOrthoTolerance(precision)
                    .optimize(new LeastSquaresBuilder()
                            .start(angles)
                            .target(new double[readings.length])
                            .model(this::valueAndSlopes)
                            .lazyEvaluation(false)
                            .checker((step, before, now) -> step >= mostSteps
                                    || Math.abs(before.getCost() - now.getCost()) <= precision * now.getCost())
                            .maxEvaluations(MOST_TRIALS)
                            .maxIterations(MOST_TRIALS)
                            .build());
            double[] values = values(optimum.getPoint().toArray());
            RealVector rest = new ArrayRealVector(scaled(values), false);
            return new Solution(
                    new ArrayRealVector(values, false),
                    closeSlopes(values),
                    rest.dotProduct(rest),
                    readings.length - start.length);
        } catch (MathIllegalStateException | MathIllegalArgumentException failed) {
            throw Refusal.failure(
                    "the fit found no end within " + MOST_TRIALS
                            + " trials; at most that many are taken: check the readings, or fit fewer numbers",
                    failed);
        }
    }

    /**
     * Searches from the start and from the {@code best} of {@code trials} points spread over the bounds, and keeps the lowest: a
     * model with kinks has more than one low point. All numbers must have bounds. The points are Halton's (1960), the same every
     * time.
     */
    Solution solveFromMany(double[] start, int trials, int best) {
        List<double[]> points = new ArrayList<>();
        for (double[] share : halton(start.length, 1, trials)) {
            double[] point = new double[start.length];
            for (int i = 0; i < point.length; i++) {
                point[i] = least[i] + (most[i] - least[i]) * share[i];
            }
            points.add(point);
        }
        double[] costs = points.stream()
                .mapToDouble(point -> new ArrayRealVector(scaled(point), false).getNorm())
                .toArray();
        List<Integer> order = IntStream.range(0, trials)
                .boxed()
                .sorted(Comparator.comparingDouble(trial -> costs[trial]))
                .limit(best)
                .toList();
        Solution lowest = solve(start);
        for (int trial : order) {
            Solution other = solve(points.get(trial));
            lowest = other.sum() < lowest.sum() ? other : lowest;
        }
        return lowest;
    }

    /** Points of Halton's sequence (1960), each number 0 to 1, from the one of number {@code first} on. */
    static List<double[]> halton(int numbers, int first, int count) {
        HaltonSequenceGenerator sequence = new HaltonSequenceGenerator(numbers, PRIMES, null);
        sequence.skipTo(first);
        return Stream.generate(sequence::nextVector).limit(count).toList();
    }

    private Pair<RealVector, RealMatrix> valueAndSlopes(RealVector angles) {
        double[] values = values(angles.toArray());
        RealMatrix slopes = slopes(values, 1);
        for (int column = 0; column < values.length; column++) {
            double turn = bounded(column) ? half(column) * StrictMath.cos(angles.getEntry(column)) : 1;
            for (int row = 0; row < readings.length; row++) {
                slopes.multiplyEntry(row, column, turn);
            }
        }
        return new Pair<>(new ArrayRealVector(scaled(values), false), slopes);
    }

    /** Predicted less read, in units of the errors. */
    private double[] scaled(double[] values) {
        double[] predicted = model.apply(values.clone());
        for (int i = 0; i < predicted.length; i++) {
            predicted[i] = (predicted[i] - readings[i]) / errors[i];
        }
        return predicted;
    }

    private RealMatrix slopes(double[] values, double widen) {
        RealMatrix slopes = new Array2DRowRealMatrix(readings.length, values.length);
        for (int column = 0; column < values.length; column++) {
            double step = widen * steps[column];
            double[] low = values.clone();
            double[] high = values.clone();
            low[column] -= step;
            high[column] += step;
            double[] below = scaled(low);
            double[] above = scaled(high);
            for (int row = 0; row < readings.length; row++) {
                slopes.setEntry(row, column, (above[row] - below[row]) / (2 * step));
            }
        }
        return slopes;
    }

    /** Two widths whose errors cancel in the second order (Richardson): a curved model must not seem to tell numbers apart. */
    private RealMatrix closeSlopes(double[] values) {
        return slopes(values, 1)
                .scalarMultiply(4.0 / 3)
                .subtract(slopes(values, 2).scalarMultiply(1.0 / 3));
    }

    private boolean bounded(int number) {
        return Double.isFinite(least[number]) && Double.isFinite(most[number]);
    }

    private double half(int number) {
        return (most[number] - least[number]) / 2;
    }

    private double angle(double value, int number) {
        if (!bounded(number)) {
            return value;
        }
        double middle = (most[number] + least[number]) / 2;
        double place = (value - middle) / half(number);
        return StrictMath.asin(Math.max(-1 + 2 * OFF_BOUND, Math.min(1 - 2 * OFF_BOUND, place)));
    }

    private double[] values(double[] angles) {
        double[] values = angles.clone();
        for (int i = 0; i < values.length; i++) {
            if (bounded(i)) {
                values[i] = (most[i] + least[i]) / 2 + half(i) * StrictMath.sin(angles[i]);
            }
        }
        return values;
    }
}
