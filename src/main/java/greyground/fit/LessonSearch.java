package greyground.fit;

import greyground.plate.Bath;
import greyground.tone.Confidence;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The search of one {@link PlateLesson}, whose rules stand there: plates spread over the beliefs, the most likely numbers, plates near
 * those, and the numbers again with their errors.
 */
final class LessonSearch {
    // Plates computed at first and near the answer, how far from it, and how narrowly they weigh, in beliefs; assumed.
    private static final int FIRST = 10;
    private static final int NEAR = 10;
    private static final double FIRST_REACH = 2;
    private static final double NEAR_REACH = 0.9;
    private static final double FIRST_BANDWIDTH = 2;
    private static final double NEAR_BANDWIDTH = 0.9;

    // Errors that all tones share, assumed: where a pixel puts an edge, in pixels; light that strays into every dark,
    // over
    // white; and what was taken for paper, over itself.
    private static final double EDGE_PIXELS = 0.25;
    private static final double STRAY = 0.001;
    private static final double PAPER = 0.005;

    /**
     * Least error of a foretold tone, in L*: one varies by 0.1 to 0.4 from piece to piece of a grain where it is steady (measured,
     * docs/virtual-plate.md).
     */
    private static final double LEAST_ERROR = 0.3;

    /** A number that is held has this share of its belief left. */
    private static final double HELD = 1e-3;

    private static final double STEP = 0.05;
    private static final double TOLD = 0.5;
    private static final double DETERMINED = 0.25;
    private static final double AT_BOUND = 0.01;
    private static final double SHARE = 0.95;
    private static final double ALIKE = 0.7;

    private final LessonNumbers numbers;
    private final LessonModel model;
    private final List<FitReading> readings;
    private final int levels;
    private final int tones;

    // Of tones, lines, direct readings and beliefs, in this order: what was read, and how unsure the reading itself is.
    private final double[] read;
    private final double[] own;
    private final double[] spreads;
    private double[] errors = new double[0];

    LessonSearch(
            LessonNumbers numbers,
            LessonModel model,
            List<MeasuredLevel> levels,
            List<MeasuredLines> lines,
            List<FitReading> readings) {
        this.numbers = numbers;
        this.model = model;
        this.readings = readings.stream()
                .filter(one -> numbers.parameters().contains(one.parameter()))
                .toList();
        this.levels = levels.size();
        this.tones = levels.size() + lines.size();
        this.spreads = each(numbers::spread);
        this.read = joined(
                levels.stream().mapToDouble(MeasuredLevel::lightness),
                lines.stream().mapToDouble(MeasuredLines::lightness),
                this.readings.stream().mapToDouble(one -> one.parameter().coordinate(one.value())),
                DoubleStream.of(each(numbers::believed)));
        this.own = joined(
                levels.stream().mapToDouble(MeasuredLevel::standardError),
                lines.stream().mapToDouble(MeasuredLines::standardError),
                this.readings.stream()
                        .mapToDouble(
                                one -> one.standardError() / one.parameter().slope(one.value())),
                DoubleStream.of(each(i -> isHeld(i) ? HELD * spreads[i] : spreads[i])));
    }

    private static double[] joined(DoubleStream... parts) {
        return Stream.of(parts).flatMapToDouble(part -> part).toArray();
    }

    private double[] each(IntToDoubleFunction number) {
        return IntStream.range(0, numbers.size()).mapToDouble(number).toArray();
    }

    PlateLesson found() {
        double[] start = each(numbers::believed);
        model.spread(start, FIRST_REACH, FIRST, true);
        model.centre(start, FIRST_BANDWIDTH);
        double[] near = solve(start).values().toArray();
        model.spread(near, NEAR_REACH, NEAR, false);
        model.centre(near, NEAR_BANDWIDTH);
        FitLeastSquares.Solution solution = solve(near);
        return result(solution, solution.values().toArray());
    }

    private FitLeastSquares.Solution solve(double[] from) {
        errors = errors(from);
        double[] least = each(numbers::least);
        double[] most = each(numbers::most);
        return new FitLeastSquares(this::foretold, read, errors, least, most, each(i -> STEP * spreads[i]), 1e-6, 40)
                .solve(each(i -> Math.max(least[i], Math.min(most[i], from[i]))));
    }

    private double[] foretold(double[] coordinates) {
        return joined(
                DoubleStream.of(model.lightness(coordinates)),
                readings.stream()
                        .mapToDouble(one -> coordinates[numbers.parameters().indexOf(one.parameter())]),
                DoubleStream.of(coordinates));
    }

    /** Of the readings, and of the model where it foretells tones. */
    private double[] errors(double[] coordinates) {
        double[] sampling = model.sampling(coordinates);
        double[] rough = model.roughness(coordinates);
        double[] all = own.clone();
        for (int i = 0; i < tones; i++) {
            double sample = i < levels ? sampling[i] : 0;
            all[i] = StrictMath.hypot(all[i], StrictMath.hypot(Math.max(LEAST_ERROR, sample), rough[i]));
        }
        return all;
    }

    private PlateLesson result(FitLeastSquares.Solution solution, double[] at) {
        // As many beliefs as numbers: readings are the degrees of freedom.
        double unit = solution.varianceOfUnit();
        RealMatrix covariance =
                shared(solution, at, solution.covariance(spreads).scalarMultiply(Math.max(1, unit)));
        double quantile = Confidence.quantile(SHARE, Math.max(1, solution.degrees()));
        List<FittedFigure> figures = new ArrayList<>();
        for (int i = 0; i < numbers.parameters().size(); i++) {
            FitParameter number = numbers.parameters().get(i);
            double error = Math.sqrt(covariance.getEntry(i, i));
            double half = quantile * error;
            double margin = AT_BOUND * number.range();
            boolean told = !isHeld(i)
                    && error <= TOLD * spreads[i]
                    && half <= DETERMINED * number.range()
                    && at[i] >= numbers.least(i) + margin
                    && at[i] <= numbers.most(i) - margin;
            double before = number.value(numbers.believed(i));
            double value = number.value(at[i]);
            figures.add(
                    told
                            ? new FittedFigure.Determined(
                                    number,
                                    before,
                                    value,
                                    error * number.slope(value),
                                    Math.max(number.allowed().least(), number.value(at[i] - half)),
                                    Math.min(number.allowed().most(), number.value(at[i] + half)))
                            : new FittedFigure.Undetermined(number, before, reason(i, covariance)));
        }
        return new PlateLesson(figures, Math.sqrt(unit));
    }

    /** Ink strength stays as believed, and what it would do to the others if that is wrong widens their errors. */
    private boolean isHeld(int number) {
        return number == numbers.parameters().indexOf(FitParameter.INK_STRENGTH);
    }

    /** Adds what errors that all tones share, and a wrong ink strength, do to the numbers. */
    private RealMatrix shared(FitLeastSquares.Solution solution, double[] at, RealMatrix covariance) {
        RealMatrix slopes = solution.jacobian();
        double[] lightness = foretold(at);
        RealVector stray = new ArrayRealVector(lightness.length);
        RealVector paper = new ArrayRealVector(lightness.length);
        RealVector strength = new ArrayRealVector(lightness.length);
        int held = numbers.parameters().indexOf(FitParameter.INK_STRENGTH);
        for (int i = 0; i < tones; i++) {
            // CIE 15: dY/dL = 3 (L + 16)^2 / 116^3.
            double root = lightness[i] + 16;
            stray.setEntry(i, STRAY * 116 * 116 * 116 / (3 * root * root) / errors[i]);
            paper.setEntry(i, PAPER * root / 3 / errors[i]);
            strength.setEntry(i, slopes.getEntry(i, held) * spreads[held]);
        }
        RealMatrix wider = covariance;
        for (RealVector mode : List.of(stray, paper, strength)) {
            RealVector moved = covariance.operate(slopes.preMultiply(mode));
            wider = wider.add(moved.outerProduct(moved));
        }
        double edge = EDGE_PIXELS * model.pixelMicrometres();
        int shift = numbers.parameters().indexOf(FitParameter.EDGE_SHIFT);
        wider.addToEntry(shift, shift, edge * edge);
        int factor = numbers.parameters().indexOf(FitParameter.ETCH_FACTOR);
        if (factor >= 0 && numbers.with(at).wells() instanceof Bath bath) {
            double share = edge / bath.undercutMicrometres();
            wider.addToEntry(factor, factor, share * share);
        }
        return wider;
    }

    private String reason(int number, RealMatrix covariance) {
        if (isHeld(number)) {
            return "tones tell it from the greatest density too weakly to be trusted";
        }
        return IntStream.range(0, numbers.parameters().size())
                .filter(other -> other != number)
                .boxed()
                .max(Comparator.comparingDouble(other -> correlation(covariance, number, other)))
                .filter(other -> correlation(covariance, number, other) > ALIKE)
                .map(other -> "this plate can't tell it from the "
                        + numbers.parameters().get(other).words())
                .orElse("this plate says little more of it than the workshop has");
    }

    /** Its size, 0 to 1. */
    private static double correlation(RealMatrix covariance, int one, int other) {
        return Math.abs(covariance.getEntry(one, other))
                / Math.sqrt(covariance.getEntry(one, one) * covariance.getEntry(other, other));
    }
}
