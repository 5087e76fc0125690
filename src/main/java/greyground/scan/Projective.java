package greyground.scan;

import greyground.quantity.Refusal;
import java.util.List;

/**
 * A projective map of the plane, nine numbers row by row, as (X Y 1) goes to (x y w) (Hartley and Zisserman 2004, Multiple View Geometry,
 * 2.3; from memory).
 */
@SuppressWarnings("ArrayRecordComponent") // never compared, never seen outside this package
record Projective(double[] m) {
    /** A place on the plate, in micrometres, and on the scan, in pixels. */
    record Pair(double plateX, double plateY, double scanX, double scanY) {}

    PlateOnScan place() {
        double w = m[8];
        return new PlateOnScan(m[0] / w, m[1] / w, m[2] / w, m[3] / w, m[4] / w, m[5] / w, m[6] / w, m[7] / w);
    }

    double x(double x, double y) {
        return (m[0] * x + m[1] * y + m[2]) / (m[6] * x + m[7] * y + m[8]);
    }

    double y(double x, double y) {
        return (m[3] * x + m[4] * y + m[5]) / (m[6] * x + m[7] * y + m[8]);
    }

    /** This after the other. */
    Projective after(Projective first) {
        double[] product = new double[9];
        for (int r = 0; r < 3; r++) {
            for (int c = 0; c < 3; c++) {
                for (int k = 0; k < 3; k++) {
                    product[3 * r + c] += m[3 * r + k] * first.m[3 * k + c];
                }
            }
        }
        return new Projective(product);
    }

    /** The way back. */
    Projective inverse() {
        double[] back = {
            m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
            m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
            m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]
        };
        return new Projective(back);
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
        double[] plate = framing(pairs, true);
        double[] scan = framing(pairs, false);
        LeastSquares sums = new LeastSquares(unknowns);
        double[] row = new double[unknowns];
        for (Pair pair : pairs) {
            double x = (pair.plateX() - plate[0]) / plate[2];
            double y = (pair.plateY() - plate[1]) / plate[2];
            double u = (pair.scanX() - scan[0]) / scan[2];
            double v = (pair.scanY() - scan[1]) / scan[2];
            fill(row, 0, x, y, u);
            sums.add(row, u, 1);
            fill(row, 3, x, y, v);
            sums.add(row, v, 1);
        }
        double[] p = sums.solved();
        if (p.length == 0) {
            throw Refusal.failure(
                    "the corners of the plate lie on one line or on one another: give four corners, clockwise"
                            + " from the print's top left");
        }
        Projective inner = new Projective(
                new double[] {p[0], p[1], p[2], p[3], p[4], p[5], whole ? p[6] : 0, whole ? p[7] : 0, 1});
        Projective in = new Projective(
                new double[] {1 / plate[2], 0, -plate[0] / plate[2], 0, 1 / plate[2], -plate[1] / plate[2], 0, 0, 1});
        Projective out = new Projective(new double[] {scan[2], 0, scan[0], 0, scan[2], scan[1], 0, 0, 1});
        return out.after(inner).after(in);
    }

    private static void fill(double[] row, int from, double x, double y, double target) {
        java.util.Arrays.fill(row, 0);
        row[from] = x;
        row[from + 1] = y;
        row[from + 2] = 1;
        if (row.length == 8) {
            row[6] = -x * target;
            row[7] = -y * target;
        }
    }

    private static double[] framing(List<Pair> pairs, boolean plate) {
        double x = 0;
        double y = 0;
        for (Pair pair : pairs) {
            x += (plate ? pair.plateX() : pair.scanX()) / pairs.size();
            y += (plate ? pair.plateY() : pair.scanY()) / pairs.size();
        }
        double away = 1e-9;
        for (Pair pair : pairs) {
            double dx = (plate ? pair.plateX() : pair.scanX()) - x;
            double dy = (plate ? pair.plateY() : pair.scanY()) - y;
            away += Math.sqrt(dx * dx + dy * dy) / pairs.size();
        }
        return new double[] {x, y, away};
    }
}
