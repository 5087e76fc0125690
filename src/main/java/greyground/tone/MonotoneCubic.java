package greyground.tone;

import greyground.quantity.Refusal;
import java.util.Arrays;

/**
 * A smooth curve through measured or computed points that rises or falls wherever they do and never overshoots: cubic
 * Hermite pieces, with slopes after Fritsch and Carlson or Fritsch and Butland. The two differ; a record that quotes a value must
 * name its kind.
 */
public final class MonotoneCubic {
    // Never changed after construction, so any thread may read.
    private final double[] x;
    private final double[] y;
    private final double[] slopes;

    private MonotoneCubic(double[] x, double[] y, double[] slopes) {
        this.x = x;
        this.y = y;
        this.slopes = slopes;
    }

    /**
     * Through the points with the slopes of Fritsch and Carlson, 1980, Monotone Piecewise Cubic Interpolation, SIAM J. Numer. Anal.
     * 17, 238-246 (from memory, unverified): the mean of neighbouring secants (none at a turn, the secant itself at the ends); then,
     * from left to right and in place, the two slopes of each piece are shrunk into the circle of radius three secants, which keeps
     * the piece monotone.
     */
    public static MonotoneCubic fritschCarlson(double[] x, double[] y) {
        double[] secants = secants(x, y);
        int pieces = secants.length;
        double[] slopes = new double[x.length];
        slopes[0] = secants[0];
        slopes[pieces] = secants[pieces - 1];
        for (int i = 1; i < pieces; i++) {
            slopes[i] = secants[i - 1] * secants[i] > 0 ? (secants[i - 1] + secants[i]) / 2 : 0;
        }
        for (int i = 0; i < pieces; i++) {
            if (secants[i] == 0) {
                slopes[i] = 0;
                slopes[i + 1] = 0;
                continue;
            }
            double a = slopes[i] / secants[i];
            double b = slopes[i + 1] / secants[i];
            double square = a * a + b * b;
            if (square > 9) {
                double shrink = 3 / StrictMath.sqrt(square);
                slopes[i] = shrink * a * secants[i];
                slopes[i + 1] = shrink * b * secants[i];
            }
        }
        return new MonotoneCubic(x.clone(), y.clone(), slopes);
    }

    /**
     * Through the points with the slopes of Fritsch and Butland, 1984, A Method for Constructing Local Monotone Piecewise Cubic
     * Interpolants, SIAM J. Sci. Stat. Comput. 5, 300-304, also known as PCHIP: at each point the harmonic mean of its two secants,
     * weighted by the lengths of the pieces; at the ends a three-point slope, held to the secant's sign and to three times its size.
     */
    public static MonotoneCubic fritschButland(double[] x, double[] y) {
        double[] secants = secants(x, y);
        int pieces = secants.length;
        double[] slopes = new double[x.length];
        for (int i = 1; i < pieces; i++) {
            double before = x[i] - x[i - 1];
            double after = x[i + 1] - x[i];
            if (secants[i - 1] * secants[i] > 0) {
                double first = 2 * after + before;
                double second = after + 2 * before;
                slopes[i] = (first + second) / (first / secants[i - 1] + second / secants[i]);
            }
        }
        int last = pieces - 1;
        slopes[0] = pieces == 1 ? secants[0] : end(x[1] - x[0], x[2] - x[1], secants[0], secants[1]);
        slopes[pieces] = pieces == 1
                ? secants[0]
                : end(x[pieces] - x[last], x[last] - x[last - 1], secants[last], secants[last - 1]);
        return new MonotoneCubic(x.clone(), y.clone(), slopes);
    }

    private static double end(double near, double far, double nearSecant, double farSecant) {
        double slope = ((2 * near + far) * nearSecant - near * farSecant) / (near + far);
        if (slope * nearSecant <= 0) {
            return 0;
        }
        boolean turns = nearSecant * farSecant <= 0;
        return turns && Math.abs(slope) > 3 * Math.abs(nearSecant) ? 3 * nearSecant : slope;
    }

    /** Slopes of the straight lines from point to point. */
    private static double[] secants(double[] x, double[] y) {
        if (x.length < 2 || x.length != y.length) {
            throw Refusal.use("a curve has " + x.length + " places and " + y.length
                    + " values; it needs as many values as places, at least 2: measure more patches");
        }
        for (int i = 0; i < x.length; i++) {
            if (!Double.isFinite(x[i]) || !Double.isFinite(y[i]) || (i > 0 && x[i] <= x[i - 1])) {
                throw Refusal.use("point " + (i + 1) + " of a curve is (" + x[i] + ", " + y[i]
                        + "); places must rise and all numbers be finite: sort the patches and average repeats");
            }
        }
        double[] secants = new double[x.length - 1];
        for (int i = 0; i < secants.length; i++) {
            secants[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
        }
        return secants;
    }

    public int size() {
        return x.length;
    }

    /** Place of a point, 0 to {@link #size()} - 1. */
    public double place(int point) {
        return x[point];
    }

    public double pointValue(int point) {
        return y[point];
    }

    /**
     * The curve's value.
     *
     * @param place from the first to the last point's place; anything else is refused, nothing is extrapolated
     */
    public double value(double place) {
        if (!(place >= x[0] && place <= x[x.length - 1])) {
            throw Refusal.use("place on a curve is " + place + "; it must lie between " + x[0] + " and "
                    + x[x.length - 1] + ": a curve ends at its last point");
        }
        int found = Arrays.binarySearch(x, place);
        int i = Math.max(0, found >= 0 ? Math.min(found, x.length - 2) : -found - 2);
        double h = x[i + 1] - x[i];
        double t = (place - x[i]) / h;
        double u = 1 - t;
        return y[i] * u * u * (1 + 2 * t)
                + y[i + 1] * t * t * (1 + 2 * u)
                + h * t * u * (slopes[i] * u - slopes[i + 1] * t);
    }
}
