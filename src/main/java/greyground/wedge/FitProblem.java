package greyground.wedge;

import greyground.plate.PlateConditions;
import java.util.Arrays;
import java.util.List;

/**
 * What was measured on one test plate, set against what the model foretells, in the coordinates that numbers are fitted in.
 * Immutable.
 */
final class FitProblem {
    /** Step of a number for a slope, in allowed ranges; assumed, wide enough to pass over the model's own kinks. */
    static final double STEP = 0.02;

    /** Fits end when they move less, in allowed ranges, or after so many steps; assumed. */
    private static final double PRECISION = 1e-4;

    private static final int MOST_STEPS = 25;

    private final PlateConditions start;
    private final FitModel model;
    private final List<MeasuredLevel> levels;
    private final List<FitReading> readings;
    private final double[] blame;

    /** @param start the workshop's plate, whose own model errors weigh the tones at first */
    FitProblem(PlateConditions start, FitModel model, List<MeasuredLevel> levels, List<FitReading> readings) {
        this(start, model, levels, readings, levels.isEmpty() ? new double[0] : model.errors(start));
    }

    private FitProblem(
            PlateConditions start,
            FitModel model,
            List<MeasuredLevel> levels,
            List<FitReading> readings,
            double[] blame) {
        this.start = start;
        this.model = model;
        this.levels = levels;
        this.readings = readings;
        this.blame = blame;
    }

    /** The workshop's plate. */
    PlateConditions start() {
        return start;
    }

    /** The same weighed with the model's errors for another plate. */
    FitProblem reweighed(PlateConditions plate) {
        return levels.isEmpty() ? this : new FitProblem(start, model, levels, readings, model.errors(plate));
    }

    /** The same with one number held elsewhere. */
    FitProblem holding(FitParameter number, double coordinate) {
        return new FitProblem(number.with(start, number.value(coordinate)), model, levels, readings, blame);
    }

    /** The least squares over some of the numbers. */
    FitLeastSquares on(List<FitParameter> free) {
        double[] least = new double[free.size()];
        double[] most = new double[free.size()];
        double[] steps = new double[free.size()];
        for (int i = 0; i < free.size(); i++) {
            least[i] = free.get(i).coordinate(free.get(i).least());
            most[i] = free.get(i).coordinate(free.get(i).most());
            steps[i] = STEP * free.get(i).range();
        }
        return new FitLeastSquares(
                values -> foretold(with(free, values)), read(), errors(), least, most, steps, PRECISION, MOST_STEPS);
    }

    /** The workshop's own values. */
    double[] coordinates(List<FitParameter> free) {
        return free.stream()
                .mapToDouble(number -> number.coordinate(number.of(start)))
                .toArray();
    }

    /** Allowed ranges. */
    static double[] ranges(List<FitParameter> free) {
        return free.stream().mapToDouble(FitParameter::range).toArray();
    }

    /** The plate with numbers in place. */
    PlateConditions with(List<FitParameter> free, double[] coordinates) {
        PlateConditions conditions = start;
        for (int i = 0; i < free.size(); i++) {
            conditions = free.get(i).with(conditions, free.get(i).value(coordinates[i]));
        }
        return conditions;
    }

    /** The same with one number more. */
    PlateConditions with(List<FitParameter> free, double[] coordinates, FitParameter number, double coordinate) {
        return number.with(with(free, coordinates), number.value(coordinate));
    }

    /** What the model gives for every reading, tones first. */
    double[] foretold(PlateConditions conditions) {
        double[] tones = levels.isEmpty() ? new double[0] : model.lightness(conditions);
        double[] all = Arrays.copyOf(tones, levels.size() + readings.size());
        for (int i = 0; i < readings.size(); i++) {
            FitParameter number = readings.get(i).parameter();
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

    /** Standard error of every reading, the model's own included. */
    double[] errors() {
        double[] errors = new double[levels.size() + readings.size()];
        for (int i = 0; i < levels.size(); i++) {
            errors[i] = StrictMath.hypot(levels.get(i).standardError(), blame[i]);
        }
        for (int i = 0; i < readings.size(); i++) {
            FitReading one = readings.get(i);
            errors[levels.size() + i] = one.standardError() / one.parameter().slope(one.value());
        }
        return errors;
    }
}
