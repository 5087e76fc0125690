package greyground.scan;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/** Sums up rows of a small linear problem and solves it in least squares. One thread. */
final class LeastSquares {
    private static final double SINGULAR = 1e-12;

    private final int unknowns;
    private final double[][] sums;

    LeastSquares(int unknowns) {
        this.unknowns = unknowns;
        this.sums = new double[unknowns][unknowns + 1];
    }

    /** One row: what the unknowns are multiplied by, what comes out, how much it counts. */
    void add(double[] row, double value, double weight) {
        for (int i = 0; i < unknowns; i++) {
            double weighted = row[i] * weight;
            for (int k = i; k < unknowns; k++) {
                sums[i][k] += weighted * row[k];
            }
            sums[i][unknowns] += weighted * value;
        }
    }

    /** Sums made elsewhere: the square matrix and, in its last column, what comes out. */
    void addNormal(double[][] normal) {
        for (int i = 0; i < unknowns; i++) {
            for (int k = 0; k <= unknowns; k++) {
                sums[i][k] += k >= i ? normal[i][k] : 0;
            }
        }
    }

    /** The unknowns, or none where the rows don't fix them. */
    double[] solved() {
        double largest = 0;
        RealMatrix square = new Array2DRowRealMatrix(unknowns, unknowns);
        double[] right = new double[unknowns];
        for (int i = 0; i < unknowns; i++) {
            for (int k = 0; k < unknowns; k++) {
                square.setEntry(i, k, sums[Math.min(i, k)][Math.max(i, k)]);
            }
            right[i] = sums[i][unknowns];
            largest = Math.max(largest, Math.abs(sums[i][i]));
        }
        DecompositionSolver solver = new LUDecomposition(square, SINGULAR * largest).getSolver();
        return solver.isNonSingular()
                ? solver.solve(new ArrayRealVector(right, false)).toArray()
                : new double[0];
    }
}
