package greyground.tone;

/**
 * Slopes of a monotone cubic after Fritsch and Butland, 1984, A Method for Constructing Local Monotone Piecewise Cubic
 * Interpolants, SIAM J. Sci. Stat. Comput. 5, 300-304: at each point the harmonic mean of its two secants, weighted by the
 * lengths of the pieces; at the ends a three-point slope, held to the secant's sign and to three times its size.
 */
final class FritschButland {
    private FritschButland() {}

    static double[] slopes(double[] x, double[] y) {
        int pieces = x.length - 1;
        double[] secants = FritschCarlson.secants(x, y);
        double[] slopes = new double[x.length];
        if (pieces == 1) {
            slopes[0] = secants[0];
            slopes[1] = secants[0];
            return slopes;
        }
        for (int i = 1; i < pieces; i++) {
            double before = x[i] - x[i - 1];
            double after = x[i + 1] - x[i];
            if (secants[i - 1] * secants[i] > 0) {
                double first = 2 * after + before;
                double second = after + 2 * before;
                slopes[i] = (first + second) / (first / secants[i - 1] + second / secants[i]);
            }
        }
        slopes[0] = end(x[1] - x[0], x[2] - x[1], secants[0], secants[1]);
        slopes[pieces] =
                end(x[pieces] - x[pieces - 1], x[pieces - 1] - x[pieces - 2], secants[pieces - 1], secants[pieces - 2]);
        return slopes;
    }

    private static double end(double near, double far, double nearSecant, double farSecant) {
        double slope = ((2 * near + far) * nearSecant - near * farSecant) / (near + far);
        if (slope * nearSecant <= 0) {
            return 0;
        }
        boolean turns = nearSecant * farSecant <= 0;
        return turns && Math.abs(slope) > 3 * Math.abs(nearSecant) ? 3 * nearSecant : slope;
    }
}
