package greyground.art.touch;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;

/**
 * The light on a sheet of paper: a surface of second order through the logarithm of what paper sends back, since light is a factor. Drawing, stains and
 * whatever else is no even paper weigh little in it (reweighted least squares with the weights of Cauchy's distribution, from memory).
 */
final class PaperLight {
    private static final int TERMS = 6;
    private static final int ROUNDS = 12;

    /** How far paper may lie below and above the surface, as a logarithm, and still weigh half (assumed): drawing is darker than paper. */
    private static final double BELOW = 0.05;

    private static final double ABOVE = 0.3;

    /** Keeps what a narrow strip of art can't decide at none. */
    private static final double RIDGE = 1e-9;

    private PaperLight() {}

    /**
     * Light for each cell.
     *
     * @param paper what the cells send back without their drawing, above 0
     * @return the same, as smooth as light is, and nowhere beyond what the paper sends back
     */
    static double[] of(double[] paper, int across) {
        double least = Double.MAX_VALUE;
        double most = 0;
        for (double light : paper) {
            least = Math.min(least, light);
            most = Math.max(most, light);
        }
        double[] logs = new double[paper.length];
        double[] weights = new double[paper.length];
        for (int i = 0; i < paper.length; i++) {
            logs[i] = StrictMath.log(paper[i]);
            weights[i] = paper[i] / most * (paper[i] / most);
        }
        int down = paper.length / across;
        double[] surface = new double[paper.length];
        for (int round = 0; round < ROUNDS; round++) {
            fit(logs, weights, across, down, surface);
            for (int i = 0; i < paper.length; i++) {
                double off = (logs[i] - surface[i]) / (logs[i] < surface[i] ? BELOW : ABOVE);
                weights[i] = 1 / (1 + off * off);
            }
        }
        for (int i = 0; i < paper.length; i++) {
            surface[i] = Math.max(least, Math.min(most, StrictMath.exp(surface[i])));
        }
        return surface;
    }

    private static void fit(double[] values, double[] weights, int across, int down, double[] surface) {
        double[][] normal = new double[TERMS][TERMS];
        double[] right = new double[TERMS];
        double[] terms = new double[TERMS];
        double all = 0;
        for (int i = 0; i < values.length; i++) {
            terms(i, across, down, terms);
            all += weights[i];
            for (int row = 0; row < TERMS; row++) {
                double weighted = weights[i] * terms[row];
                right[row] += weighted * values[i];
                for (int column = 0; column < TERMS; column++) {
                    normal[row][column] += weighted * terms[column];
                }
            }
        }
        for (int row = 0; row < TERMS; row++) {
            normal[row][row] += RIDGE * all;
        }
        double[] found = new LUDecomposition(new Array2DRowRealMatrix(normal, false))
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
        for (int i = 0; i < surface.length; i++) {
            terms(i, across, down, terms);
            double sum = 0;
            for (int term = 0; term < TERMS; term++) {
                sum += found[term] * terms[term];
            }
            surface[i] = sum;
        }
    }

    private static void terms(int cell, int across, int down, double[] into) {
        int row = cell / across;
        double x = (2.0 * (cell - row * across) + 1) / across - 1;
        double y = (2.0 * row + 1) / down - 1;
        into[0] = 1;
        into[1] = x;
        into[2] = y;
        into[3] = x * x;
        into[4] = x * y;
        into[5] = y * y;
    }
}
