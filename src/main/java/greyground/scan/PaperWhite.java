package greyground.scan;

import greyground.chart.LevelPatch;
import greyground.chart.TestPlate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What bare paper sends back at every place of the plate: a smooth surface through the paper round the platemark, so that uneven light is
 * taken out. Where the scan shows no such paper, the clear fields stand for it.
 */
public final class PaperWhite {
    /** Past the platemark's slope and its shadow. */
    private static final double FROM = 1_500;

    private static final double CELL = 1_500;
    private static final int ROWS = 4;

    /** Samples along the side of a cell. */
    private static final int SAMPLES = 12;

    /** Paper differs from its smooth surface by less than this share (assumed). */
    private static final double UNEVEN = 0.01;

    /** Times its paper that a clear field may seem to send back: errors of the surface (assumed). */
    private static final double MOST_CLEAR = 1.04;

    private static final double ENOUGH_OF_A_SIDE = 0.4;

    private final double[] surface;
    private final double middleX;
    private final double middleY;
    private final double reach;
    private final double mean;
    private final List<Square> squares;
    private final double fall;

    private PaperWhite(TestPlate plate, double[] surface, double mean, List<Square> squares) {
        this.surface = surface;
        this.middleX = plate.recipe().widthMicrometres() / 2.0;
        this.middleY = plate.recipe().heightMicrometres() / 2.0;
        this.reach = Math.max(middleX, middleY);
        this.mean = mean;
        this.squares = List.copyOf(squares);
        double least = Double.MAX_VALUE;
        double most = 0;
        for (int j = 0; j <= 8; j++) {
            for (int i = 0; i <= 8; i++) {
                double value = at(middleX * i / 4, middleY * j / 4);
                least = Math.min(least, value);
                most = Math.max(most, value);
            }
        }
        this.fall = 1 - least / most;
    }

    /**
     * A square of paper round the plate.
     *
     * @param leftMicrometres of its corner from the plate's left, below 0 left of the plate
     * @param topMicrometres of its corner from the plate's top
     * @param sideMicrometres of the square
     * @param edge which side of the plate it lies at: 0 left, 1 right, 2 top, 3 bottom
     */
    public record Square(double leftMicrometres, double topMicrometres, double sideMicrometres, int edge) {}

    /** The squares of paper that are asked, whether or not the scan shows them. */
    public static List<Square> squares(TestPlate plate) {
        double width = plate.recipe().widthMicrometres();
        double height = plate.recipe().heightMicrometres();
        List<Square> squares = new ArrayList<>();
        for (int row = 0; row < ROWS; row++) {
            double away = FROM + row * CELL;
            for (double y = 0; y + CELL <= height; y += CELL) {
                squares.add(new Square(-away - CELL, y, CELL, 0));
                squares.add(new Square(width + away, y, CELL, 1));
            }
            for (double x = 0; x + CELL <= width; x += CELL) {
                squares.add(new Square(x, -away - CELL, CELL, 2));
                squares.add(new Square(x, height + away, CELL, 3));
            }
        }
        return squares;
    }

    /** Measures it. */
    static PaperWhite of(TestPlate plate, Projective place, StrayLight light) {
        List<Square> squares = squares(plate);
        List<Square> seen = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (Square square : squares) {
            double value = mean(square, place, light);
            if (!Double.isNaN(value)) {
                seen.add(square);
                values.add(value);
            }
        }
        double[] levels = values.stream().mapToDouble(value -> value).sorted().toArray();
        double usual = levels.length == 0 ? 0 : levels[(int) (levels.length * 0.7)];
        List<Square> paper = new ArrayList<>();
        List<Double> paperValues = new ArrayList<>();
        int[] have = new int[4];
        int[] could = new int[4];
        squares.forEach(square -> could[square.edge()]++);
        for (int i = 0; i < seen.size(); i++) {
            // A lid, a hand or another print is much darker than most of the paper; uneven light is not.
            if (values.get(i) > 0.65 * usual && values.get(i) < 1.35 * usual) {
                paper.add(seen.get(i));
                paperValues.add(values.get(i));
                have[seen.get(i).edge()]++;
            }
        }
        int sides = 0;
        for (int edge = 0; edge < 4; edge++) {
            sides += have[edge] > ENOUGH_OF_A_SIDE * could[edge] ? 1 : 0;
        }
        boolean opposite = (have[0] > ENOUGH_OF_A_SIDE * could[0] && have[1] > ENOUGH_OF_A_SIDE * could[1])
                || (have[2] > ENOUGH_OF_A_SIDE * could[2] && have[3] > ENOUGH_OF_A_SIDE * could[3]);
        if (sides == 0) {
            return clearFields(plate, place, light);
        }
        int terms = sides == 4 ? 6 : sides == 3 || (sides == 2 && !opposite) ? 3 : 1;
        double[] x = paper.stream()
                .mapToDouble(s -> s.leftMicrometres() + s.sideMicrometres() / 2)
                .toArray();
        double[] y = paper.stream()
                .mapToDouble(s -> s.topMicrometres() + s.sideMicrometres() / 2)
                .toArray();
        PaperWhite white =
                fitted(plate, x, y, paperValues.stream().mapToDouble(v -> v).toArray(), terms, paper);
        // Clear film can't print lighter than its paper: what lies round the plate then is something else.
        double[] clear = clear(plate, place, light).stream()
                .mapToDouble(field -> field[2] / white.at(field[0], field[1]))
                .sorted()
                .toArray();
        return clear.length > 0 && clear[clear.length / 2] > MOST_CLEAR ? clearFields(plate, place, light) : white;
    }

    private static PaperWhite clearFields(TestPlate plate, Projective place, StrayLight light) {
        List<double[]> fields = clear(plate, place, light);
        double[] x = fields.stream().mapToDouble(f -> f[0]).toArray();
        double[] y = fields.stream().mapToDouble(f -> f[1]).toArray();
        double[] v = fields.stream().mapToDouble(f -> f[2]).toArray();
        return v.length == 0
                ? new PaperWhite(plate, new double[] {1}, 1, List.of())
                : fitted(plate, x, y, v, v.length >= 4 ? 3 : 1, List.of());
    }

    /** Least squares, again and again with less weight for what is far off (Tukey's biweight). */
    private static PaperWhite fitted(
            TestPlate plate, double[] x, double[] y, double[] values, int terms, List<Square> squares) {
        double middleX = plate.recipe().widthMicrometres() / 2.0;
        double middleY = plate.recipe().heightMicrometres() / 2.0;
        double reach = Math.max(middleX, middleY);
        double[] weights = new double[x.length];
        Arrays.fill(weights, 1);
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double usual = sorted[sorted.length / 2];
        double[] surface = {usual};
        for (int round = 0; round < 12; round++) {
            LeastSquares problem = new LeastSquares(terms);
            for (int i = 0; i < x.length; i++) {
                problem.add(row((x[i] - middleX) / reach, (y[i] - middleY) / reach, terms), values[i], weights[i]);
            }
            double[] solved = problem.solved();
            if (solved.length == 0) {
                break;
            }
            surface = solved;
            double[] rest = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                rest[i] = Math.abs(values[i] - value(surface, (x[i] - middleX) / reach, (y[i] - middleY) / reach));
            }
            double[] order = rest.clone();
            Arrays.sort(order);
            // Loose at first, so that light that falls off is not taken for a stain.
            double far = Math.max(UNEVEN * usual, (round < 3 ? 8 : 4) * order[order.length / 2]);
            for (int i = 0; i < x.length; i++) {
                double share = rest[i] / far;
                weights[i] = share < 1 ? (1 - share * share) * (1 - share * share) : 0;
            }
        }
        double sum = 0;
        double all = 0;
        for (int i = 0; i < x.length; i++) {
            sum += weights[i] * values[i];
            all += weights[i];
        }
        List<Square> kept = new ArrayList<>();
        for (int i = 0; i < squares.size(); i++) {
            if (weights[i] > 0) {
                kept.add(squares.get(i));
            }
        }
        return new PaperWhite(plate, surface, all > 0 ? sum / all : usual, kept);
    }

    private static double mean(Square square, Projective place, StrayLight light) {
        double sum = 0;
        double half = square.sideMicrometres() / SAMPLES / 2;
        for (int j = 0; j < SAMPLES; j++) {
            for (int i = 0; i < SAMPLES; i++) {
                double x = square.leftMicrometres() + half * (2 * i + 1);
                double y = square.topMicrometres() + half * (2 * j + 1);
                sum += light.raw(place.x(x, y), place.y(x, y));
            }
        }
        double x = square.leftMicrometres() + square.sideMicrometres() / 2;
        double y = square.topMicrometres() + square.sideMicrometres() / 2;
        return light.cleared(sum / SAMPLES / SAMPLES, place.x(x, y), place.y(x, y));
    }

    /** The clear fields: place of each and its light. */
    private static List<double[]> clear(TestPlate plate, Projective place, StrayLight light) {
        List<double[]> fields = new ArrayList<>();
        for (LevelPatch patch : plate.patches()) {
            if (patch.coveragePerMille() == 0) {
                double side = 0.5 * Math.min(patch.area().width(), patch.area().height());
                double x = patch.area().left() + patch.area().width() / 2.0;
                double y = patch.area().top() + patch.area().height() / 2.0;
                double value = mean(new Square(x - side / 2, y - side / 2, side, 0), place, light);
                if (!Double.isNaN(value)) {
                    fields.add(new double[] {x, y, value});
                }
            }
        }
        return fields;
    }

    private static double[] row(double u, double v, int terms) {
        double[] row = {1, u, v, u * u, u * v, v * v};
        return Arrays.copyOf(row, terms);
    }

    private static double value(double[] surface, double u, double v) {
        double[] row = row(u, v, surface.length);
        double value = 0;
        for (int i = 0; i < row.length; i++) {
            value += surface[i] * row[i];
        }
        return value;
    }

    /** Paper's light at a place of the plate, as the scan has it. */
    double at(double xMicrometres, double yMicrometres) {
        return value(surface, (xMicrometres - middleX) / reach, (yMicrometres - middleY) / reach);
    }

    /** Its middling light. */
    double mean() {
        return mean;
    }

    /** The squares of paper it rests on. */
    List<Square> squares() {
        return squares;
    }

    /** Whether bare paper was seen, and not only clear fields. */
    boolean bare() {
        return !squares.isEmpty();
    }

    /** How much darker the darkest place of the plate is lit than the lightest, 0 to 1. */
    double fall() {
        return fall;
    }
}
