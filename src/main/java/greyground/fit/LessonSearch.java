package greyground.fit;

import greyground.plate.Bath;
import greyground.tone.Confidence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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

    /** Where a pixel puts an edge, in pixels (assumed). */
    private static final double EDGE_PIXELS = 0.25;

    /**
     * Least error of a predicted tone, in L*: one varies by 0.1 to 0.4 from piece to piece of a grain where it is steady (measured,
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
    private final SharedErrors shared;
    private final double bare;
    private final double[] coverages;
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
            List<FitReading> readings,
            SharedErrors shared) {
        this.numbers = numbers;
        this.model = model;
        this.shared = shared;
        this.bare = levels.get(0).lightness();
        this.coverages = levels.stream().mapToDouble(MeasuredLevel::coverage).toArray();
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
        return new FitLeastSquares(this::predicted, read, errors, least, most, each(i -> STEP * spreads[i]), 1e-6, 40)
                .solve(each(i -> Math.max(least[i], Math.min(most[i], from[i]))));
    }

    private double[] predicted(double[] coordinates) {
        return joined(
                DoubleStream.of(model.lightness(coordinates)),
                readings.stream()
                        .mapToDouble(one -> coordinates[numbers.parameters().indexOf(one.parameter())]),
                DoubleStream.of(coordinates));
    }

    /** Of the readings, and of the model where it predicts tones. */
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

    /** What one fit makes of one number, in its coordinate. */
    private record Estimate(double value, double error, double half) {}

    /** @param form whether the number is meant as it is, and not as this model has it */
    private List<Estimate> estimates(FitLeastSquares.Solution solution, double[] scales, boolean form) {
        // As many beliefs as numbers: readings are the degrees of freedom.
        RealMatrix covariance = solution.covariance(scales).scalarMultiply(Math.max(1, solution.varianceOfUnit()));
        double[] at = solution.values().toArray();
        double quantile = Confidence.quantile(SHARE, Math.max(1, solution.degrees()));
        List<Estimate> all = new ArrayList<>();
        for (int i = 0; i < numbers.parameters().size(); i++) {
            double pixel = pixelError(i, at);
            double own = form && !readItself(i) ? numbers.form(i) : 0;
            double error = Math.sqrt(covariance.getEntry(i, i) + pixel * pixel + own * own);
            all.add(new Estimate(at[i], error, quantile * error));
        }
        return all;
    }

    /** What the model's own pixels leave unsure of edges. */
    private double pixelError(int number, double[] at) {
        double edge = EDGE_PIXELS * model.pixelMicrometres();
        return switch (numbers.parameters().get(number)) {
            case EDGE_SHIFT -> edge;
            case ETCH_FACTOR -> numbers.with(at).wells() instanceof Bath bath ? edge / bath.undercutMicrometres() : 0;
            default -> 0;
        };
    }

    private boolean told(int i, Estimate found) {
        double margin = AT_BOUND * numbers.parameters().get(i).range();
        return !isHeld(i)
                && found.error() <= TOLD * spreads[i]
                && found.half() <= DETERMINED * numbers.parameters().get(i).range()
                && found.value() >= numbers.least(i) + margin
                && found.value() <= numbers.most(i) - margin;
    }

    private PlateLesson result(FitLeastSquares.Solution alone, double[] at) {
        List<Way> ways = ways(alone, at);
        FitLeastSquares.Solution among = among(ways, at);
        List<Estimate> asSeen = estimates(alone, spreads, false);
        List<Estimate> claims = estimates(
                among,
                DoubleStream.concat(
                                DoubleStream.of(spreads),
                                DoubleStream.generate(() -> 1).limit(ways.size()))
                        .toArray(),
                true);
        RealMatrix covariance = alone.covariance(spreads);
        List<FittedFigure> figures = new ArrayList<>();
        for (int i = 0; i < numbers.parameters().size(); i++) {
            FitParameter number = numbers.parameters().get(i);
            double before = number.value(numbers.believed(i));
            Estimate claim = claims.get(i);
            Estimate seen = asSeen.get(i);
            double value = number.value(claim.value());
            figures.add(
                    told(i, claim) && canClaim(i)
                            ? new FittedFigure.Determined(
                                    number,
                                    before,
                                    value,
                                    claim.error() * number.slope(value),
                                    low(i, claim),
                                    high(i, claim))
                            : told(i, seen)
                                    ? new FittedFigure.AsSeen(
                                            number, before, number.value(seen.value()), low(i, seen), high(i, seen))
                                    : new FittedFigure.Undetermined(number, before, reason(i, covariance)));
        }
        return new PlateLesson(figures, Math.sqrt(alone.varianceOfUnit()), power(ways, among));
    }

    /** What shapes wells and edges is claimed only where it was read itself, beside the tones. */
    private boolean canClaim(int number) {
        return !numbers.shapes(number) || readItself(number);
    }

    private boolean readItself(int number) {
        return readings.stream()
                .anyMatch(one -> one.parameter() == numbers.parameters().get(number));
    }

    /** What the likeliest models make of the codes' power: read with too great a one by b of its errors, it is 1 / (1 + b error). */
    private Optional<CodePower> power(List<Way> ways, FitLeastSquares.Solution among) {
        double[] scales = DoubleStream.concat(
                        DoubleStream.of(spreads), DoubleStream.generate(() -> 1).limit(ways.size()))
                .toArray();
        return IntStream.range(0, ways.size())
                .filter(i -> ways.get(i).part().equals(Optional.of(SharedErrors.Part.POWER)))
                .mapToObj(i -> {
                    int at = numbers.size() + i;
                    double error = shared.toneScale().powerError();
                    double share = 1 / Math.max(0.1, 1 + error * among.values().getEntry(at));
                    double own =
                            Math.sqrt(among.covariance(scales).getEntry(at, at) * Math.max(1, among.varianceOfUnit()));
                    return CodePower.of(share, error * own * share * share);
                })
                .findFirst();
    }

    private double low(int i, Estimate found) {
        FitParameter number = numbers.parameters().get(i);
        return Math.max(number.allowed().least(), number.value(found.value() - found.half()));
    }

    private double high(int i, Estimate found) {
        FitParameter number = numbers.parameters().get(i);
        return Math.min(number.allowed().most(), number.value(found.value() + found.half()));
    }

    /** Ink strength stays as believed, and what it would do to the others if that is wrong widens their errors. */
    private boolean isHeld(int number) {
        return number == numbers.parameters().indexOf(FitParameter.INK_STRENGTH);
    }

    /** @param part of the scanner's, if it is one */
    private record Way(Optional<SharedErrors.Part> part, RealVector onTones) {}

    /**
     * Ways in which plate and scanner may differ from the model, each as what one standard error of it does to the tones: every number
     * may be another in dark tones than in light ones, or another on lines than on grain ({@link LessonNumbers#drift}), and all that
     * readings share ({@link SharedErrors}) may be off.
     */
    private List<Way> ways(FitLeastSquares.Solution solution, double[] at) {
        RealMatrix slopes = solution.jacobian();
        List<Way> ways = new ArrayList<>();
        for (int number = 0; number < numbers.size(); number++) {
            RealVector byTone = new ArrayRealVector(tones);
            RealVector onLines = new ArrayRealVector(tones);
            for (int i = 0; i < tones; i++) {
                double moved = slopes.getEntry(i, number) * errors[i] * numbers.drift(number, at);
                byTone.setEntry(i, i < levels ? moved * (2 * coverages[i] - 1) : 0);
                onLines.setEntry(i, i < levels ? 0 : moved);
            }
            ways.add(new Way(Optional.empty(), byTone));
            ways.add(new Way(Optional.empty(), onLines));
        }
        int held = numbers.parameters().indexOf(FitParameter.INK_STRENGTH);
        RealVector strength = slopes.getColumnVector(held).getSubVector(0, tones);
        ways.add(new Way(
                Optional.empty(),
                strength.ebeMultiply(new ArrayRealVector(errors).getSubVector(0, tones))
                        .mapMultiply(spreads[held])));
        double[] lightness = predicted(at);
        for (SharedErrors.Part part : SharedErrors.Part.values()) {
            RealVector way = new ArrayRealVector(tones);
            for (int i = 0; i < tones; i++) {
                way.setEntry(i, shared.part(part, lightness[i], bare));
            }
            ways.add(new Way(Optional.of(part), way));
        }
        ways.removeIf(way -> way.onTones().getNorm() == 0);
        return ways;
    }

    /** The most likely numbers with each of these ways as far from none as the readings make likely. */
    private FitLeastSquares.Solution among(List<Way> ways, double[] from) {
        int size = numbers.size();
        double[] none = new double[ways.size()];
        double[] free = DoubleStream.generate(() -> Double.POSITIVE_INFINITY)
                .limit(ways.size())
                .toArray();
        double[] one = DoubleStream.generate(() -> 1).limit(ways.size()).toArray();
        double[] least = each(numbers::least);
        double[] most = each(numbers::most);
        return new FitLeastSquares(
                        all -> {
                            double[] predicted = predicted(Arrays.copyOf(all, size));
                            for (int way = 0; way < ways.size(); way++) {
                                for (int i = 0; i < tones; i++) {
                                    predicted[i] += all[size + way]
                                            * ways.get(way).onTones().getEntry(i);
                                }
                            }
                            return joined(
                                    DoubleStream.of(predicted),
                                    Arrays.stream(all).skip(size));
                        },
                        joined(DoubleStream.of(read), DoubleStream.of(none)),
                        joined(DoubleStream.of(errors), DoubleStream.of(one)),
                        joined(DoubleStream.of(least), DoubleStream.of(free).map(bound -> -bound)),
                        joined(DoubleStream.of(most), DoubleStream.of(free)),
                        joined(
                                DoubleStream.of(each(i -> STEP * spreads[i])),
                                DoubleStream.of(one).map(step -> STEP * step)),
                        1e-6,
                        40)
                .solve(joined(
                        DoubleStream.of(each(i -> Math.max(least[i], Math.min(most[i], from[i])))),
                        DoubleStream.of(none)));
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
