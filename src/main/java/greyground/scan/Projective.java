package greyground.scan;

import greyground.chart.Area;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Where a plate lies on a scan: the projective map from the plate, in micrometres from its top left as the print reads, to scan pixels
 * counted from the top left corner of the first (Hartley and Zisserman 2004, Multiple View Geometry, 2.3; from memory).
 *
 * <p>x = (a X + b Y + c) / w, y = (d X + e Y + f) / w, w = g X + h Y + 1.
 */
public record Projective(double a, double b, double c, double d, double e, double f, double g, double h) {
    private static final double SINGULAR = 1e-9;

    /** A place on the plate, in micrometres, and on the scan, in pixels. */
    record Pair(double plateX, double plateY, double scanX, double scanY) {}

    private static Projective of(RealMatrix m) {
        RealMatrix one = m.scalarMultiply(1 / m.getEntry(2, 2));
        double[] x = one.getRow(0);
        double[] y = one.getRow(1);
        double[] w = one.getRow(2);
        return new Projective(x[0], x[1], x[2], y[0], y[1], y[2], w[0], w[1]);
    }

    private RealMatrix matrix() {
        return new Array2DRowRealMatrix(new double[][] {{a, b, c}, {d, e, f}, {g, h, 1}}, false);
    }

    /** A map that scales and then shifts. */
    static Projective scaled(double scale, double shiftX, double shiftY) {
        return new Projective(scale, 0, shiftX, 0, scale, shiftY, 0, 0);
    }

    /** Scan pixel across, of a place on the plate. */
    public double x(double xMicrometres, double yMicrometres) {
        return (a * xMicrometres + b * yMicrometres + c) / (g * xMicrometres + h * yMicrometres + 1);
    }

    /** Scan pixel down, of a place on the plate. */
    public double y(double xMicrometres, double yMicrometres) {
        return (d * xMicrometres + e * yMicrometres + f) / (g * xMicrometres + h * yMicrometres + 1);
    }

    /** Whether the scan shows the plate's print from behind, or its copper. */
    public boolean mirrored() {
        return a * e - b * d < 0;
    }

    /** This after the other. */
    Projective after(Projective first) {
        return of(matrix().multiply(first.matrix()));
    }

    /** The way back. */
    Projective inverse() {
        // Cofactors: places of micrometres beside shares of a millionth are no work for pivots.
        return of(new Array2DRowRealMatrix(
                new double[][] {
                    {e - f * h, c * h - b, b * f - c * e},
                    {f * g - d, a - c * g, c * d - a * f},
                    {d * h - e * g, b * g - a * h, a * e - b * d}
                },
                false));
    }

    /** Scan pixels to a micrometre near a place: the square root of how areas grow. */
    double scale(double x, double y) {
        double step = 100;
        double ax = x(x + step, y) - x(x - step, y);
        double ay = y(x + step, y) - y(x - step, y);
        double bx = x(x, y + step) - x(x, y - step);
        double by = y(x, y + step) - y(x, y - step);
        return Math.sqrt(Math.abs(ax * by - ay * bx)) / (2 * step);
    }

    /** The same in the middle of an area. */
    public double scale(Area area) {
        return scale(area.middleX(), area.middleY());
    }

    /**
     * The map of least squares through pairs: the direct linear transform with its places centred and scaled first (Hartley 1997,
     * In Defense of the Eight-Point Algorithm; from memory), its last number held at 1.
     *
     * @param whole true for a projective map, which takes four pairs or more, false for an affine one, which takes three
     */
    static Projective through(List<Pair> pairs, boolean whole) {
        int unknowns = whole ? 8 : 6;
        if (2 * pairs.size() < unknowns) {
            throw Refusal.use("a map of the plate has " + pairs.size() + " pairs of places; it needs " + unknowns / 2
                    + ": give one for each corner");
        }
        Projective plate = framing(pairs, Pair::plateX, Pair::plateY);
        Projective scan = framing(pairs, Pair::scanX, Pair::scanY);
        RealMatrix rows = new Array2DRowRealMatrix(2 * pairs.size(), unknowns);
        double[] targets = new double[2 * pairs.size()];
        for (int i = 0; i < targets.length; i++) {
            Pair pair = pairs.get(i / 2);
            boolean across = i % 2 == 0;
            double x = plate.x(pair.plateX(), pair.plateY());
            double y = plate.y(pair.plateX(), pair.plateY());
            targets[i] = across ? scan.x(pair.scanX(), pair.scanY()) : scan.y(pair.scanX(), pair.scanY());
            double[] row = {x, y, 1, 0, 0, 0, -x * targets[i], -y * targets[i]};
            for (int k = 0; k < 6; k++) {
                rows.setEntry(i, across ? k : (k + 3) % 6, row[k]);
            }
            for (int k = 6; k < unknowns; k++) {
                rows.setEntry(i, k, row[k]);
            }
        }
        DecompositionSolver solver = new QRDecomposition(rows, SINGULAR).getSolver();
        if (!solver.isNonSingular()) {
            throw Refusal.failure(
                    "the corners of the plate lie on one line or on one another: give four corners, clockwise"
                            + " from the print's top left");
        }
        double[] p = solver.solve(new ArrayRealVector(targets, false)).toArray();
        Projective inner = new Projective(p[0], p[1], p[2], p[3], p[4], p[5], whole ? p[6] : 0, whole ? p[7] : 0);
        return scan.inverse().after(inner).after(plate);
    }

    /** What brings places to their middle and to a mean distance of 1 from it. */
    private static Projective framing(List<Pair> pairs, ToDoubleFunction<Pair> across, ToDoubleFunction<Pair> down) {
        double x = pairs.stream().mapToDouble(across).average().orElse(0);
        double y = pairs.stream().mapToDouble(down).average().orElse(0);
        double away = pairs.stream()
                .mapToDouble(pair -> StrictMath.hypot(across.applyAsDouble(pair) - x, down.applyAsDouble(pair) - y))
                .average()
                .orElse(0);
        double scale = 1 / (away + 1e-9);
        return scaled(scale, -x * scale, -y * scale);
    }
}
