package greyground.fit;

import greyground.plate.Bath;
import greyground.plate.PlateConditions;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;

/**
 * The numbers of a lesson in coordinates, each with what the workshop believes of it before: its own value and how far that may be
 * off. The bitten depth is one of them and the last, where the plate is bitten.
 */
final class LessonNumbers {
    private static final double DEPTH_DRIFT = 0.08;

    private final PlateConditions start;
    private final List<FitParameter> parameters;
    private final boolean bitten;
    private final double depthError;

    /** @param depthError standard error of the start's bitten depth, in micrometres */
    LessonNumbers(PlateConditions start, double depthError) {
        this.start = start;
        this.bitten = start.wells() instanceof Bath;
        this.depthError = depthError;
        this.parameters = new ArrayList<>(EnumSet.allOf(FitParameter.class));
        // Openings and lands have targets of their own, which say more than any tone.
        parameters.remove(FitParameter.SMALLEST_OPENING);
        parameters.remove(FitParameter.SMALLEST_LAND);
        if (!bitten) {
            parameters.remove(FitParameter.ETCH_FACTOR);
        }
    }

    /**
     * Standard error of a workshop's number that nobody has measured, in its coordinate (assumed): so wide that two of it either way
     * span what the workshop's own notes call usual.
     */
    static double belief(FitParameter number) {
        return switch (number) {
            case EDGE_SHIFT -> 5;
            case ETCH_FACTOR -> 0.25;
            case PAD_RADIUS -> 0.6;
            case PLATE_TONE, INK_SATURATION -> 0.2;
            case INK_STRENGTH -> 0.35;
            case OPTICAL_GAIN -> 0.3;
            case SMALLEST_OPENING, SMALLEST_LAND -> 0.4;
        };
    }

    /**
     * How far a number may differ between the lightest and the darkest tones, either way of the middle, or between grain and lines, on a
     * plate that is not quite the model's (assumed): walls that are no ellipse, a bath or a pad that works otherwise on open places, ink and
     * light by other laws.
     */
    double drift(int number, double[] at) {
        return number >= parameters.size()
                ? DEPTH_DRIFT * at[number]
                : switch (parameters.get(number)) {
                    case EDGE_SHIFT -> 2;
                    case ETCH_FACTOR, INK_STRENGTH -> 0.2;
                    case PAD_RADIUS -> 0.3;
                    case PLATE_TONE -> 0.05;
                    case INK_SATURATION -> 0.1;
                    case OPTICAL_GAIN -> 0.2;
                    case SMALLEST_OPENING, SMALLEST_LAND -> 0;
                };
    }

    /**
     * How far the number that makes this model print likest may lie from the thing that it is called after, where only tones tell it: one
     * standard error (assumed), for laws of wiping, ink and light of another form. Numbers that shape wells and edges are not claimed from tones.
     */
    double form(int number) {
        return switch (parameters.get(number)) {
            case PLATE_TONE -> 0.04;
            case INK_SATURATION -> 0.08;
            case OPTICAL_GAIN -> 0.1;
            case EDGE_SHIFT, ETCH_FACTOR, PAD_RADIUS, INK_STRENGTH, SMALLEST_OPENING, SMALLEST_LAND -> 0;
        };
    }

    int size() {
        return parameters.size() + (bitten ? 1 : 0);
    }

    /** Numbers that a printmaker knows by name. */
    List<FitParameter> parameters() {
        return parameters;
    }

    double believed(int number) {
        return number < parameters.size()
                ? parameters.get(number).coordinate(parameters.get(number).of(start))
                : ((Bath) start.wells()).depthMicrometres();
    }

    double spread(int number) {
        return number < parameters.size() ? belief(parameters.get(number)) : Math.max(0.1, depthError);
    }

    double least(int number) {
        return number < parameters.size()
                ? parameters
                        .get(number)
                        .coordinate(parameters.get(number).allowed().least())
                : Math.max(1, believed(number) - 5 * spread(number));
    }

    double most(int number) {
        return number < parameters.size()
                ? parameters
                        .get(number)
                        .coordinate(parameters.get(number).allowed().most())
                : believed(number) + 5 * spread(number);
    }

    /** Whether the number moves edges or wells, so that another value needs the plate computed again. */
    boolean shapes(int number) {
        return number >= parameters.size()
                || switch (parameters.get(number)) {
                    case EDGE_SHIFT, ETCH_FACTOR, PAD_RADIUS, SMALLEST_OPENING, SMALLEST_LAND -> true;
                    case PLATE_TONE, INK_STRENGTH, INK_SATURATION, OPTICAL_GAIN -> false;
                };
    }

    /** The plate with numbers in place; those out of range are taken at its end. */
    PlateConditions with(double[] coordinates) {
        PlateConditions conditions = start;
        if (bitten) {
            double factor = ((Bath) start.wells()).etchFactor();
            conditions = conditions.withWells(new Bath(Math.max(1, coordinates[parameters.size()]), factor));
        }
        for (int i = 0; i < parameters.size(); i++) {
            FitParameter one = parameters.get(i);
            double value = one.value(coordinates[i]);
            conditions = one.with(
                    conditions,
                    Math.max(one.allowed().least(), Math.min(one.allowed().most(), value)));
        }
        return conditions;
    }
}
