package greyground.simulation;

import java.util.Random;

/** Smooth noise of unit deviation: random values on a lattice with a cubic between them. Wrapped. */
final class PaperNoise {
    private static final int SIDE = 256;

    private final float[] lattice = new float[SIDE * SIDE];
    private final double spacing;

    PaperNoise(double spacingMicrometres, Random random) {
        this.spacing = spacingMicrometres;
        for (int i = 0; i < lattice.length; i++) {
            // Bilinear mixing of four lowers the deviation to two thirds; this makes up for it.
            lattice[i] = (float) (1.5 * random.nextGaussian());
        }
    }

    double at(double x, double y) {
        double across = x / spacing;
        double down = y / spacing;
        int column = (int) Math.floor(across);
        int row = (int) Math.floor(down);
        double right = smooth(across - column);
        double below = smooth(down - row);
        return (1 - below) * ((1 - right) * value(column, row) + right * value(column + 1, row))
                + below * ((1 - right) * value(column, row + 1) + right * value(column + 1, row + 1));
    }

    private static double smooth(double share) {
        return share * share * (3 - 2 * share);
    }

    private double value(int column, int row) {
        return lattice[(row & SIDE - 1) * SIDE + (column & SIDE - 1)];
    }
}
