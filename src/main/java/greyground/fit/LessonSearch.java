package greyground.fit;

import greyground.plate.Bath;
import greyground.tone.Confidence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
    // over white; and
    // what was taken for paper, over itself.
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
    private final List<MeasuredLevel> levels;
    private final List<MeasuredLines> lines;
    private final List<FitReading> readings;
    private final int tones;
    private double[] errors = new double[0];

    LessonSearch(
            LessonNumbers numbers,
            LessonModel model,
            List<MeasuredLevel> levels,
            List<MeasuredLines> lines,
            List<FitReading> readings) {
        this.numbers = numbers;
        this.model = model;
        this.levels = levels;
        this.lines = lines;
        this.readings = readings.stream()
                .filter(one -> numbers.parameters().contains(one.parameter()))
                .toList();
        this.tones = levels.size() + lines.size();
    }

    PlateLesson found() {
        double[] start = new double[numbers.size()];
        for (int i = 0; i < start.length; i++) {
            start[i] = numbers.believed(i);
        }
        model.spread(start, FIRST_REACH, FIRST, true);
        model.centre(start, FIRST_BANDWIDTH);
        FitLeastSquares.Solution solution = solve(start);
        double[] near = solution.values().toArray();
        model.spread(near, NEAR_REACH, NEAR, false);
        model.centre(near, NEAR_BANDWIDTH);
        solution = solve(near);
        double[] at = solution.values().toArray();
        return result(solution, at);
    }

    private FitLeastSquares.Solution solve(double[] from) {
        errors = errors(from);
        int size = numbers.size();
        double[] least = new double[size];
        double[] most = new double[size];
        double[] steps = new double[size];
        double[] start = new double[size];
        for (int i = 0; i < size; i++) {
            least[i] = numbers.least(i);
            most[i] = numbers.most(i);
            steps[i] = STEP * numbers.spread(i);
            start[i] = Math.max(least[i], Math.min(most[i], from[i]));
        }
        return new FitLeastSquares(this::foretold, read(), errors, least, most, steps, 1e-6, 40).solve(start);
    }

    /** Tones, lines, direct readings, beliefs. */
    private double[] foretold(double[] coordinates) {
        double[] all = Arrays.copyOf(model.lightness(coordinates), tones + readings.size() + numbers.size());
        for (int i = 0; i < readings.size(); i++) {
            all[tones + i] =
                    coordinates[numbers.parameters().indexOf(readings.get(i).parameter())];
        }
        System.arraycopy(coordinates, 0, all, tones + readings.size(), numbers.size());
        return all;
    }

    private double[] read() {
        double[] read = new double[tones + readings.size() + numbers.size()];
        for (int i = 0; i < tones; i++) {
            read[i] = i < levels.size()
                    ? levels.get(i).lightness()
                    : lines.get(i - levels.size()).lightness();
        }
        for (int i = 0; i < readings.size(); i++) {
            read[tones + i] =
                    readings.get(i).parameter().coordinate(readings.get(i).value());
        }
        for (int i = 0; i < numbers.size(); i++) {
            read[tones + readings.size() + i] = numbers.believed(i);
        }
        return read;
    }

    private double[] errors(double[] coordinates) {
        double[] sampling = model.sampling(coordinates);
        double[] rough = model.roughness(coordinates);
        double[] all = new double[tones + readings.size() + numbers.size()];
        for (int i = 0; i < tones; i++) {
            double own = i < levels.size()
                    ? levels.get(i).standardError()
                    : lines.get(i - levels.size()).standardError();
            double sample = i < levels.size() ? sampling[i] : 0;
            double model = StrictMath.hypot(Math.max(LEAST_ERROR, sample), rough[i]);
            all[i] = StrictMath.hypot(own, model);
        }
        for (int i = 0; i < readings.size(); i++) {
            FitReading one = readings.get(i);
            all[tones + i] = one.standardError() / one.parameter().slope(one.value());
        }
        for (int i = 0; i < numbers.size(); i++) {
            all[tones + readings.size() + i] = isHeld(i) ? HELD * numbers.spread(i) : numbers.spread(i);
        }
        return all;
    }

    private PlateLesson result(FitLeastSquares.Solution solution, double[] at) {
        int size = numbers.size();
        double[] spreads = new double[size];
        for (int i = 0; i < size; i++) {
            spreads[i] = numbers.spread(i);
        }
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
                                    Math.max(number.least(), number.value(at[i] - half)),
                                    Math.min(number.most(), number.value(at[i] + half)))
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
        double[] lightness = foretold(at);
        double[] stray = new double[lightness.length];
        double[] paper = new double[lightness.length];
        for (int i = 0; i < tones; i++) {
            // CIE 15: dY/dL = 3 (L + 16)^2 / 116^3.
            double root = lightness[i] + 16;
            stray[i] = STRAY * 116 * 116 * 116 / (3 * root * root) / errors[i];
            paper[i] = PAPER * root / 3 / errors[i];
        }
        double[] strength = new double[lightness.length];
        int held = numbers.parameters().indexOf(FitParameter.INK_STRENGTH);
        for (int i = 0; i < tones; i++) {
            strength[i] = solution.jacobian().getEntry(i, held) * numbers.spread(held);
        }
        RealMatrix wider = covariance;
        for (double[] mode : List.of(stray, paper, strength)) {
            RealVector moved =
                    covariance.operate(solution.jacobian().transpose().operate(new ArrayRealVector(mode)));
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
        int partner = -1;
        for (int k = 0; k < numbers.parameters().size(); k++) {
            boolean nearer = partner < 0
                    || Math.abs(correlation(covariance, number, k))
                            > Math.abs(correlation(covariance, number, partner));
            if (k != number && nearer) {
                partner = k;
            }
        }
        return partner >= 0 && Math.abs(correlation(covariance, number, partner)) > ALIKE
                ? "this plate can't tell it from the "
                        + numbers.parameters().get(partner).words()
                : "this plate says little more of it than the workshop has";
    }

    private static double correlation(RealMatrix covariance, int one, int other) {
        return covariance.getEntry(one, other)
                / Math.sqrt(covariance.getEntry(one, one) * covariance.getEntry(other, other));
    }
}
