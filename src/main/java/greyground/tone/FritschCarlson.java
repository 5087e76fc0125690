package greyground.tone;

/**
 * Slopes of a monotone cubic after Fritsch and Carlson, 1980, Monotone Piecewise Cubic Interpolation, SIAM J. Numer. Anal. 17,
 * 238-246 (from memory, unverified).
 *
 * <p>Start from the mean of neighbouring secants (none at a turn, the secant itself at the ends). Then, from left to right
 * and in place, shrink the two slopes of each piece into the circle of radius three secants, which keeps the piece monotone.
 */
final class FritschCarlson {
    private FritschCarlson() {}

    static double[] slopes(double[] x, double[] y) {
        int pieces = x.length - 1;
        double[] secants = secants(x, y);
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
        return slopes;
    }

    static double[] secants(double[] x, double[] y) {
        double[] secants = new double[x.length - 1];
        for (int i = 0; i < secants.length; i++) {
            secants[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
        }
        return secants;
    }
}
