package greyground.tone;

import greyground.quantity.Refusal;

/**
 * How far a mean of repeated readings can be trusted: Student's t.
 *
 * <p>The quantile comes from the closed form of the distribution for whole degrees of freedom (Abramowitz and Stegun 1964,
 * 26.7.3 and 26.7.4, from memory; checked against printed quantiles), inverted by halving.
 */
public final class Confidence {
    private Confidence() {}

    /**
     * Half-width of the two-sided 95 % interval of a mean: t(0.975, n - 1) s / sqrt(n).
     *
     * @param standardDeviation s of the readings
     * @param repeats n, 2 to 100 000
     */
    public static double halfWidth(double standardDeviation, int repeats) {
        Refusal.checkRange("repeats", repeats, 2, 100_000, "", "one reading has no spread; measure at least twice");
        return quantile(0.95, repeats - 1) * standardDeviation / StrictMath.sqrt(repeats);
    }

    /**
     * Patches to measure so that their mean is good to {@code error} at 95 %, when s is known: (1.959964 s / e)^2, rounded up.
     */
    public static int patches(double standardDeviation, double error) {
        double normal = 1.959963984540054;
        double ratio = normal * standardDeviation / error;
        return Math.max(1, (int) Math.ceil(ratio * ratio));
    }

    /** Uncertainty of the input of a curve from that of its output: error / |slope|. */
    public static double ofInput(double outputError, double slope) {
        return outputError / Math.abs(slope);
    }

    /** Greatest error of straight lines between points a distance apart: h^2 max|f''| / 8. */
    public static double linearInterpolationError(double spacing, double largestSecondDerivative) {
        return spacing * spacing * largestSecondDerivative / 8;
    }

    /**
     * The t within which a share of Student's distribution lies, both sides together.
     *
     * @param share 0 to below 1, for example 0.95
     * @param degrees degrees of freedom, 1 or more
     */
    public static double quantile(double share, int degrees) {
        double low = 0;
        double high = Math.PI / 2;
        // Halving the angle atan(t / sqrt(degrees)) keeps a long tail within reach.
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (within(middle, degrees) < share) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return StrictMath.tan((low + high) / 2) * StrictMath.sqrt(degrees);
    }

    private static double within(double angle, int degrees) {
        double cosine = StrictMath.cos(angle);
        double square = cosine * cosine;
        boolean odd = degrees % 2 == 1;
        double term = odd ? cosine : 1;
        double sum = 0;
        // Odd: cos + 2/3 cos^3 + 2*4/(3*5) cos^5 + ...; even: 1 + 1/2 cos^2 + 1*3/(2*4) cos^4 + ...
        for (int power = odd ? 1 : 0; power <= degrees - 2; power += 2) {
            sum += term;
            term *= square * (power + 1) / (power + 2);
        }
        return odd ? 2 / Math.PI * (angle + StrictMath.sin(angle) * sum) : StrictMath.sin(angle) * sum;
    }
}
