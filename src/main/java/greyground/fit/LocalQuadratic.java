package greyground.fit;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * Local regression (Cleveland and Devlin 1988, with a Gaussian weight in place of their tricube; from memory): near a middle, the
 * quadratic that fits values at scattered places best, each place weighted by its distance from the middle. Linear in the values, so
 * that it is a share of each.
 */
final class LocalQuadratic {
    private final double[] middle;
    private final double[] weights;
    private final RealMatrix coefficients;

    /**
     * Weighs the places.
     *
     * @param places at least {@code (n + 1)(n + 2) / 2} of n coordinates each
     * @param bandwidth distance at which a place weighs {@code exp(-1/2)} = 0.61, above 0
     */
    LocalQuadratic(List<double[]> places, double[] middle, double bandwidth) {
        this.middle = middle.clone();
        this.weights = new double[places.size()];
        double[][] rows = new double[places.size()][];
        for (int d = 0; d < weights.length; d++) {
            double square = 0;
            for (int i = 0; i < middle.length; i++) {
                double off = (places.get(d)[i] - middle[i]) / bandwidth;
                square += off * off;
            }
            weights[d] = StrictMath.exp(-square / 2);
            rows[d] = basis(places.get(d));
            for (int k = 0; k < rows[d].length; k++) {
                rows[d][k] *= Math.sqrt(weights[d]);
            }
        }
        // Pseudo-inverse of the weighted rows: coefficients from weighted values.
        RealMatrix inverse = new SingularValueDecomposition(new Array2DRowRealMatrix(rows))
                .getSolver()
                .getInverse();
        for (int k = 0; k < inverse.getRowDimension(); k++) {
            for (int d = 0; d < weights.length; d++) {
                inverse.multiplyEntry(k, d, Math.sqrt(weights[d]));
            }
        }
        this.coefficients = inverse;
    }

    /** What share of each place's value the quadratic takes at {@code place}; they sum to 1 and may be negative. */
    double[] shares(double[] place) {
        return coefficients.preMultiply(basis(place));
    }

    /** Weight of a place, 0 to 1. */
    double weight(int place) {
        return weights[place];
    }

    private double[] basis(double[] place) {
        int n = place.length;
        double[] basis = new double[1 + n + n * (n + 1) / 2];
        basis[0] = 1;
        int at = 1 + n;
        for (int i = 0; i < n; i++) {
            double one = place[i] - middle[i];
            basis[1 + i] = one;
            for (int k = i; k < n; k++) {
                basis[at++] = one * (place[k] - middle[k]);
            }
        }
        return basis;
    }
}
