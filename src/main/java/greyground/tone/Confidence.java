package greyground.tone;

import greyground.quantity.Refusal;
import org.hipparchus.distribution.continuous.TDistribution;

/** How far a mean of repeated readings can be trusted: Student's t. */
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
     * The t within which a share of Student's distribution lies, both sides together.
     *
     * @param share 0 to below 1, for example 0.95
     * @param degrees degrees of freedom, 1 or more
     */
    public static double quantile(double share, int degrees) {
        return new TDistribution(degrees).inverseCumulativeProbability((1 + share) / 2);
    }
}
