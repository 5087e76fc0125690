package greyground.fit;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DiagonalMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
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
        RealVector at = new ArrayRealVector(middle);
        this.weights = places.stream()
                .mapToDouble(place -> new ArrayRealVector(place, false).getDistance(at) / bandwidth)
                .map(away -> StrictMath.exp(-away * away / 2))
                .toArray();
        DiagonalMatrix root =
                new DiagonalMatrix(Arrays.stream(weights).map(Math::sqrt).toArray());
        RealMatrix rows =
                new Array2DRowRealMatrix(places.stream().map(this::basis).toArray(double[][]::new), false);
        // Pseudo-inverse of the weighted rows: coefficients from weighted values.
        this.coefficients = new SingularValueDecomposition(root.multiply(rows))
                .getSolver()
                .getInverse()
                .multiply(root);
    }

    /** What share of each place's value the quadratic takes at {@code place}; they sum to 1 and may be negative. */
    double[] shares(double[] place) {
        return coefficients.preMultiply(basis(place));
    }

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
