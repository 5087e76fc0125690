package greyground.fit;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * What is left of the readings after a mean for each coverage and, if wished, smooth terms in the patch's place: weighted least
 * squares of {@code L = level + sum b_k c_k(x, y) + error}. The levels are taken out first by centring readings and terms on
 * their level's mean, which gives the same b (Frisch and Waugh 1933; Lovell 1963, from memory).
 *
 * <p>Patches that are not {@code kept} are left out of the sums, yet have a residual.
 */
final class MeasuredResiduals {
    /** A column that the levels explain but for this share says nothing. */
    private static final double NOTHING = 1e-9;

    private final List<MeasuredPatch> patches;
    private final double[] residual;
    private final double[] leverage;
    private final double[] slopes;
    private final double sum;
    private final int degrees;
    private final double meanWeight;

    private MeasuredResiduals(
            List<MeasuredPatch> patches,
            double[] residual,
            double[] leverage,
            double[] slopes,
            double sum,
            int degrees,
            double meanWeight) {
        this.patches = patches;
        this.residual = residual;
        this.leverage = leverage;
        this.slopes = slopes;
        this.sum = sum;
        this.degrees = degrees;
        this.meanWeight = meanWeight;
    }

    /**
     * Fits.
     *
     * @param patches sorted by coverage; equal coverages make a level
     * @param kept which of them count, at least one of each level
     * @param terms functions of a patch's place
     */
    static MeasuredResiduals of(
            List<MeasuredPatch> patches, boolean[] kept, List<ToDoubleFunction<MeasuredPatch>> terms) {
        int n = patches.size();
        int k = terms.size();
        double[][] column = new double[k + 1][n];
        for (int i = 0; i < n; i++) {
            for (int c = 0; c < k; c++) {
                column[c][i] = terms.get(c).applyAsDouble(patches.get(i));
            }
            column[k][i] = patches.get(i).lightness();
        }
        double[] whole = new double[k];
        for (int c = 0; c < k; c++) {
            whole[c] = Arrays.stream(column[c]).map(value -> value * value).sum();
        }
        double[] share = new double[n];
        double mean = weight(patches, kept);
        int levels = centre(patches, kept, column, share);
        RealMatrix normal = new Array2DRowRealMatrix(Math.max(k, 1), Math.max(k, 1));
        ArrayRealVector right = new ArrayRealVector(Math.max(k, 1));
        int count = 0;
        for (int i = 0; i < n; i++) {
            if (!kept[i]) {
                continue;
            }
            count++;
            double weight = patches.get(i).weight() / mean;
            for (int a = 0; a < k; a++) {
                right.addToEntry(a, weight * column[a][i] * column[k][i]);
                for (int b = 0; b < k; b++) {
                    normal.addToEntry(a, b, weight * column[a][i] * column[b][i]);
                }
            }
        }
        boolean[] empty = new boolean[k];
        for (int c = 0; c < k; c++) {
            empty[c] = !(normal.getEntry(c, c) > NOTHING * whole[c]);
        }
        RealMatrix inverse = normal;
        int rank = 0;
        double[] slopes = new double[k];
        if (k > 0) {
            SingularValueDecomposition parts = new SingularValueDecomposition(scrubbed(normal, empty));
            double[] values = parts.getSingularValues();
            RealMatrix reciprocal = new Array2DRowRealMatrix(k, k);
            for (int c = 0; c < k; c++) {
                if (values[c] > NOTHING * values[0] && values[c] > 0) {
                    reciprocal.setEntry(c, c, 1 / values[c]);
                    rank++;
                }
            }
            inverse = parts.getV().multiply(reciprocal).multiply(parts.getUT());
            slopes = inverse.operate(right).toArray();
        }
        double[] residual = new double[n];
        double[] leverage = new double[n];
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double weight = patches.get(i).weight() / mean;
            residual[i] = column[k][i];
            leverage[i] = share[i];
            for (int a = 0; a < k; a++) {
                residual[i] -= slopes[a] * column[a][i];
                for (int b = 0; b < k; b++) {
                    leverage[i] += weight * column[a][i] * inverse.getEntry(a, b) * column[b][i];
                }
            }
            sum += kept[i] ? weight * residual[i] * residual[i] : 0;
        }
        return new MeasuredResiduals(patches, residual, leverage, slopes, sum, count - levels - rank, mean);
    }

    private static RealMatrix scrubbed(RealMatrix normal, boolean[] empty) {
        RealMatrix scrubbed = normal.copy();
        for (int a = 0; a < empty.length; a++) {
            for (int b = 0; b < empty.length; b++) {
                if (empty[a] || empty[b]) {
                    scrubbed.setEntry(a, b, 0);
                }
            }
        }
        return scrubbed;
    }

    private static double weight(List<MeasuredPatch> patches, boolean[] kept) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < kept.length; i++) {
            sum += kept[i] ? patches.get(i).weight() : 0;
            count += kept[i] ? 1 : 0;
        }
        return sum / count;
    }

    /** Takes from every column its level's weighted mean; {@code share} gets each weight over its level's. */
    private static int centre(List<MeasuredPatch> patches, boolean[] kept, double[][] column, double[] share) {
        int levels = 0;
        int from = 0;
        while (from < kept.length) {
            int to = from;
            double weight = 0;
            double[] sums = new double[column.length];
            while (to < kept.length
                    && patches.get(to).coverage() == patches.get(from).coverage()) {
                double each = kept[to] ? patches.get(to).weight() : 0;
                weight += each;
                for (int c = 0; c < column.length; c++) {
                    sums[c] += each * column[c][to];
                }
                to++;
            }
            for (int i = from; i < to; i++) {
                share[i] = patches.get(i).weight() / weight;
                for (int c = 0; c < column.length; c++) {
                    column[c][i] -= sums[c] / weight;
                }
            }
            levels++;
            from = to;
        }
        return levels;
    }

    /** Distance of a reading from the fit, in L*. */
    double residual(int patch) {
        return residual[patch];
    }

    /** Share of a kept patch in its own fitted value, 0 to 1. */
    double leverage(int patch) {
        return leverage[patch];
    }

    /** Slopes of the terms. */
    double[] slopes() {
        return slopes.clone();
    }

    /** Weighted sum of squares of the kept residuals, weights scaled to a mean of 1. */
    double sum() {
        return sum;
    }

    /** Readings less levels and terms; the variance is {@link #sum} over this. */
    int degrees() {
        return degrees;
    }

    /** Square root of a kept patch's weight over the mean; scales its residual to the common variance. */
    double rootWeight(int patch) {
        return Math.sqrt(patches.get(patch).weight() / meanWeight);
    }
}
