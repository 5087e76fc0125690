package greyground.tone;

/**
 * Bradford chromatic adaptation: XYZ seen under one white to XYZ seen under another, as profiles do it (ICC Technical Note
 * 02-2003). Neutrals keep their luminance; coloured originals shift by up to a few per cent.
 */
public final class Adaptation {
    /** XYZ of the profile connection space's D50 (ICC.1). */
    public static final White D50 = new White(0.9642, 1, 0.8249);

    private static final double[][] CONES = {
        {0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296}
    };

    private Adaptation() {}

    /** A white's tristimulus values, Y = 1. */
    public record White(double x, double y, double z) {
        /** The white of a CIE 1931 chromaticity. */
        public static White ofChromaticity(double x, double y) {
            return new White(x / y, 1, (1 - x - y) / y);
        }

        double[] xyz() {
            return new double[] {x, y, z};
        }

        private double[] cones() {
            return times(CONES, xyz());
        }
    }

    /** The 3 × 3 matrix, row by row, that takes XYZ under {@code from} to XYZ under {@code to}. */
    public static double[][] matrix(White from, White to) {
        double[] before = from.cones();
        double[] after = to.cones();
        double[][] scaled = new double[3][3];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                scaled[row][column] = CONES[row][column] * after[row] / before[row];
            }
        }
        double[][] back = inverse(CONES);
        double[][] matrix = new double[3][3];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                for (int k = 0; k < 3; k++) {
                    matrix[row][column] += back[row][k] * scaled[k][column];
                }
            }
        }
        return matrix;
    }

    /** A 3 × 3 matrix times a column. */
    public static double[] times(double[][] matrix, double[] column) {
        double[] product = new double[3];
        for (int row = 0; row < 3; row++) {
            product[row] = matrix[row][0] * column[0] + matrix[row][1] * column[1] + matrix[row][2] * column[2];
        }
        return product;
    }

    /** The inverse of a 3 × 3 matrix that has one. */
    public static double[][] inverse(double[][] m) {
        // Cofactors with cyclic indices carry their own signs.
        double[][] inverse = new double[3][3];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                int r1 = (column + 1) % 3;
                int r2 = (column + 2) % 3;
                int c1 = (row + 1) % 3;
                int c2 = (row + 2) % 3;
                inverse[row][column] = m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1];
            }
        }
        double determinant = m[0][0] * inverse[0][0] + m[0][1] * inverse[1][0] + m[0][2] * inverse[2][0];
        for (double[] row : inverse) {
            for (int column = 0; column < 3; column++) {
                row[column] /= determinant;
            }
        }
        return inverse;
    }
}
