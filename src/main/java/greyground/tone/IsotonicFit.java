package greyground.tone;

import greyground.quantity.Refusal;

/**
 * The nearest never-falling sequence to noisy readings, in weighted least squares: pool adjacent violators (Ayer, Brunk,
 * Ewing, Reid and Silverman 1955, Ann. Math. Statist. 26, 641-647, from memory; algorithm as in published code).
 */
public final class IsotonicFit {
    private final double[] fitted;
    private final int longestBlock;

    private IsotonicFit(double[] fitted, int longestBlock) {
        this.fitted = fitted;
        this.longestBlock = longestBlock;
    }

    /**
     * Fits weighted readings.
     *
     * @param readings in order of coverage, at least one, finite
     * @param weights above 0: number of repeats, or repeats over variance
     */
    public static IsotonicFit rising(double[] readings, double[] weights) {
        int n = readings.length;
        if (n == 0 || weights.length != n) {
            throw Refusal.use("an isotonic fit has " + n + " readings and " + weights.length
                    + " weights; it needs as many of each, at least 1");
        }
        double[] mean = new double[n];
        double[] weight = new double[n];
        int[] count = new int[n];
        int blocks = 0;
        for (int i = 0; i < n; i++) {
            if (!Double.isFinite(readings[i]) || !(weights[i] > 0) || !Double.isFinite(weights[i])) {
                throw Refusal.use("reading " + (i + 1) + " is " + readings[i] + " with weight " + weights[i]
                        + "; readings must be finite and weights above 0: leave the patch out");
            }
            mean[blocks] = readings[i];
            weight[blocks] = weights[i];
            count[blocks] = 1;
            blocks++;
            while (blocks > 1 && mean[blocks - 2] > mean[blocks - 1]) {
                double sum = weight[blocks - 2] + weight[blocks - 1];
                mean[blocks - 2] =
                        (mean[blocks - 2] * weight[blocks - 2] + mean[blocks - 1] * weight[blocks - 1]) / sum;
                weight[blocks - 2] = sum;
                count[blocks - 2] += count[blocks - 1];
                blocks--;
            }
        }
        double[] fitted = new double[n];
        int longest = 1;
        int at = 0;
        for (int block = 0; block < blocks; block++) {
            longest = Math.max(longest, count[block]);
            for (int k = 0; k < count[block]; k++) {
                fitted[at++] = mean[block];
            }
        }
        return new IsotonicFit(fitted, longest);
    }

    /** Fits readings that should fall, such as lightness over coverage. */
    public static IsotonicFit falling(double[] readings, double[] weights) {
        IsotonicFit turned = rising(negated(readings), weights);
        return new IsotonicFit(negated(turned.fitted), turned.longestBlock);
    }

    private static double[] negated(double[] values) {
        double[] negated = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            negated[i] = -values[i];
        }
        return negated;
    }

    /** The fitted values, one for each reading; a fresh copy. */
    public double[] fitted() {
        return fitted.clone();
    }

    /**
     * Share of the readings that the longest pooled block takes, 0 when nothing was pooled. Above 0.2 the measurement itself is
     * in doubt (common practice).
     */
    public double longestPooledShare() {
        return longestBlock == 1 ? 0 : (double) longestBlock / fitted.length;
    }
}
