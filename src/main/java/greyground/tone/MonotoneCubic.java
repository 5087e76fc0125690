package greyground.tone;

import greyground.quantity.Refusal;

/**
 * A smooth curve through measured or computed points that rises or falls wherever they do and never overshoots: cubic
 * Hermite pieces whose slopes come from {@link FritschCarlson} or {@link FritschButland}. The two differ; a record that
 * quotes a value must name its kind.
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

    /** Through the points with the slopes of {@link FritschCarlson}. */
    public static MonotoneCubic fritschCarlson(double[] x, double[] y) {
        check(x, y);
        return new MonotoneCubic(x.clone(), y.clone(), FritschCarlson.slopes(x, y));
    }

    /** Through the points with the slopes of {@link FritschButland}, also known as PCHIP. */
    public static MonotoneCubic fritschButland(double[] x, double[] y) {
        check(x, y);
        return new MonotoneCubic(x.clone(), y.clone(), FritschButland.slopes(x, y));
    }

    private static void check(double[] x, double[] y) {
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
    }

    /** Number of points. */
    public int size() {
        return x.length;
    }

    /** Place of a point, 0 to {@link #size()} - 1. */
    public double place(int point) {
        return x[point];
    }

    /** Value at a point. */
    public double pointValue(int point) {
        return y[point];
    }

    /**
     * The curve's value.
     *
     * @param place from the first to the last point's place; anything else is refused, nothing is extrapolated
     */
    public double value(double place) {
        int i = piece(place);
        double h = x[i + 1] - x[i];
        double t = (place - x[i]) / h;
        double u = 1 - t;
        return y[i] * u * u * (1 + 2 * t)
                + y[i + 1] * t * t * (1 + 2 * u)
                + h * t * u * (slopes[i] * u - slopes[i + 1] * t);
    }

    private int piece(double place) {
        if (!(place >= x[0] && place <= x[x.length - 1])) {
            throw Refusal.use("place on a curve is " + place + "; it must lie between " + x[0] + " and "
                    + x[x.length - 1] + ": a curve ends at its last point");
        }
        int low = 0;
        int high = x.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (x[middle] <= place) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
