package greyground.scan;

import greyground.chart.Area;
import greyground.chart.LevelPatch;
import greyground.chart.TestPlate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.DiagonalMatrix;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

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
    private static final double SINGULAR = 1e-9;

    private final Area plate;
    private final double[] surface;
    private final double mean;
    private final List<Square> squares;

    private PaperWhite(Area plate, double[] surface, double mean, List<Square> squares) {
        this.plate = plate;
        this.surface = surface;
        this.mean = mean;
        this.squares = List.copyOf(squares);
    }

    /**
     * A square of paper round the plate.
     *
     * @param leftMicrometres of its corner from the plate's left, below 0 left of the plate
     * @param topMicrometres of its corner from the plate's top
     * @param sideMicrometres of the square
     * @param edge which side of the plate it lies at: 0 left, 1 right, 2 top, 3 bottom
     */
    public record Square(double leftMicrometres, double topMicrometres, double sideMicrometres, int edge) {
        private double middleX() {
            return leftMicrometres + sideMicrometres / 2;
        }

        private double middleY() {
            return topMicrometres + sideMicrometres / 2;
        }
    }

    /** A square that lies on the scan, and its light there. */
    private record Seen(Square square, double light) {}

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
        List<Seen> seen = seen(squares, place, light);
        double[] levels = seen.stream().mapToDouble(Seen::light).sorted().toArray();
        double usual = levels.length == 0 ? 0 : levels[(int) (levels.length * 0.7)];
        // A lid, a hand or another print is much darker than most of the paper; uneven light is not.
        List<Seen> paper = seen.stream()
                .filter(one -> one.light() > 0.65 * usual && one.light() < 1.35 * usual)
                .toList();
        boolean[] enough = new boolean[4];
        int sides = 0;
        for (int edge = 0; edge < 4; edge++) {
            int side = edge;
            long could = squares.stream().filter(one -> one.edge() == side).count();
            long have =
                    paper.stream().filter(one -> one.square().edge() == side).count();
            enough[edge] = have > ENOUGH_OF_A_SIDE * could;
            sides += enough[edge] ? 1 : 0;
        }
        boolean opposite = (enough[0] && enough[1]) || (enough[2] && enough[3]);
        List<Seen> clear = seen(clearFields(plate), place, light);
        int few = clear.size() >= 4 ? 3 : 1;
        if (sides == 0) {
            return fitted(plate, clear, few, false);
        }
        PaperWhite white = fitted(plate, paper, sides == 4 ? 6 : sides == 3 || (sides == 2 && !opposite) ? 3 : 1, true);
        // Clear film can't print lighter than its paper: what lies round the plate then is something else.
        double[] shares = clear.stream()
                .mapToDouble(one -> one.light()
                        / white.at(one.square().middleX(), one.square().middleY()))
                .sorted()
                .toArray();
        return shares.length > 0 && shares[shares.length / 2] > MOST_CLEAR ? fitted(plate, clear, few, false) : white;
    }

    /** Least squares, again and again with less weight for what is far off (Tukey's biweight). */
    private static PaperWhite fitted(TestPlate plate, List<Seen> seen, int terms, boolean paper) {
        Area whole = plate.recipe().plate();
        if (seen.isEmpty()) {
            return new PaperWhite(whole, new double[] {1}, 1, List.of());
        }
        RealMatrix rows = new Array2DRowRealMatrix(seen.size(), terms);
        RealVector light = new ArrayRealVector(seen.size());
        for (int i = 0; i < seen.size(); i++) {
            Square square = seen.get(i).square();
            rows.setRow(i, row(whole, square.middleX(), square.middleY(), terms));
            light.setEntry(i, seen.get(i).light());
        }
        double usual = Arrays.stream(light.toArray()).sorted().toArray()[seen.size() / 2];
        RealVector surface = new ArrayRealVector(new double[] {usual});
        RealVector weights = new ArrayRealVector(seen.size(), 1.0);
        for (int round = 0; round < 12; round++) {
            DiagonalMatrix root = new DiagonalMatrix(weights.map(Math::sqrt).toArray());
            DecompositionSolver solver = new QRDecomposition(root.multiply(rows), SINGULAR).getSolver();
            if (!solver.isNonSingular()) {
                break;
            }
            surface = solver.solve(root.operate(light));
            RealVector rest = light.subtract(rows.operate(surface)).map(Math::abs);
            double middle = Arrays.stream(rest.toArray()).sorted().toArray()[seen.size() / 2];
            // Loose at first, so that light that falls off is not taken for a stain.
            double far = Math.max(UNEVEN * usual, (round < 3 ? 8 : 4) * middle);
            weights = rest.map(off -> {
                double share = Math.max(0, 1 - off * off / (far * far));
                return share * share;
            });
        }
        double all = weights.getL1Norm();
        List<Square> kept = new ArrayList<>();
        for (int i = 0; i < seen.size(); i++) {
            if (paper && weights.getEntry(i) > 0) {
                kept.add(seen.get(i).square());
            }
        }
        return new PaperWhite(whole, surface.toArray(), all > 0 ? weights.dotProduct(light) / all : usual, kept);
    }

    /** The squares that lie on the scan, with their light. */
    private static List<Seen> seen(List<Square> squares, Projective place, StrayLight light) {
        return squares.stream()
                .map(square -> new Seen(square, mean(square, place, light)))
                .filter(one -> !Double.isNaN(one.light()))
                .toList();
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
        double x = square.middleX();
        double y = square.middleY();
        return light.cleared(sum / SAMPLES / SAMPLES, place.x(x, y), place.y(x, y));
    }

    /** The middles of the clear fields. */
    private static List<Square> clearFields(TestPlate plate) {
        return plate.patches().stream()
                .filter(patch -> patch.coveragePerMille() == 0)
                .map(LevelPatch::area)
                .map(area -> {
                    double side = 0.5 * Math.min(area.width(), area.height());
                    return new Square(area.middleX() - side / 2, area.middleY() - side / 2, side, 0);
                })
                .toList();
    }

    /** Terms of the surface: constant, then linear, then square, in shares of the plate's half from its middle. */
    private static double[] row(Area plate, double x, double y, int terms) {
        double reach = Math.max(plate.middleX(), plate.middleY());
        double u = (x - plate.middleX()) / reach;
        double v = (y - plate.middleY()) / reach;
        return Arrays.copyOf(new double[] {1, u, v, u * u, u * v, v * v}, terms);
    }

    /** Paper's light at a place of the plate, as the scan has it. */
    double at(double xMicrometres, double yMicrometres) {
        double[] row = row(plate, xMicrometres, yMicrometres, surface.length);
        double value = 0;
        for (int i = 0; i < row.length; i++) {
            value += surface[i] * row[i];
        }
        return value;
    }

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
        double[] lit = IntStream.range(0, 81)
                .mapToDouble(i -> at(plate.width() * (i % 9) / 8.0, plate.height() * (i / 9) / 8.0))
                .sorted()
                .toArray();
        return 1 - lit[0] / lit[80];
    }
}
