package greyground.scan;

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
        double[][] a = new double[unknowns][];
        double largest = 0;
        for (int i = 0; i < unknowns; i++) {
            a[i] = sums[i].clone();
            for (int k = 0; k < i; k++) {
                a[i][k] = sums[k][i];
            }
            largest = Math.max(largest, Math.abs(a[i][i]));
        }
        for (int column = 0; column < unknowns; column++) {
            int best = column;
            for (int row = column + 1; row < unknowns; row++) {
                best = Math.abs(a[row][column]) > Math.abs(a[best][column]) ? row : best;
            }
            double[] pivot = a[best];
            a[best] = a[column];
            a[column] = pivot;
            if (!(Math.abs(pivot[column]) > SINGULAR * largest)) {
                return new double[0];
            }
            for (int row = column + 1; row < unknowns; row++) {
                double share = a[row][column] / pivot[column];
                for (int k = column; k <= unknowns; k++) {
                    a[row][k] -= share * pivot[k];
                }
            }
        }
        double[] solved = new double[unknowns];
        for (int row = unknowns - 1; row >= 0; row--) {
            double rest = a[row][unknowns];
            for (int k = row + 1; k < unknowns; k++) {
                rest -= a[row][k] * solved[k];
            }
            solved[row] = rest / a[row][row];
        }
        return solved;
    }
}
