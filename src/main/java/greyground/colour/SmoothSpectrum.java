package greyground.colour;

import java.util.Arrays;
import java.util.Optional;

/**
 * The smoothest spectrum of a colour, in bands: inks laid over one another multiply there, which in three lights is wrong by 5 CIEDE2000 on
 * average and in a smooth spectrum by 2 (simulated with invented inks; docs/sources.md).
 *
 * <p>A spectrum is an array of {@link #BANDS} numbers, the share of light in bands 10 nm wide about 390, 400 .. 730 nm. Nobody changes one.
 */
public final class SmoothSpectrum {
    /** Bands of a spectrum. */
    public static final int BANDS = 35;

    private static final double FIRST_NANOMETRES = 390;
    private static final double STEP_NANOMETRES = 10;
    private static final double[][] WEIGHTS = weights();
    private static final int MOST_STEPS = 60;
    private static final double EXACT = 1e-13;

    private SmoothSpectrum() {}

    /** What each band adds to X, Y and Z: three rows of {@link #BANDS}; a white of 1 in all bands is D50. */
    static double[][] weights() {
        double[][] rows = new double[3][BANDS];
        for (int band = 0; band < BANDS; band++) {
            double nm = FIRST_NANOMETRES + STEP_NANOMETRES * band;
            // Wyman, Sloan and Shirley 2013, the fit of several lobes; equal energy, since rows are scaled to D50
            // below: a device to get bands.
            rows[0][band] = 0.362 * lobe(nm, 442.0, 0.0624, 0.0374)
                    + 1.056 * lobe(nm, 599.8, 0.0264, 0.0323)
                    - 0.065 * lobe(nm, 501.1, 0.0490, 0.0382);
            rows[1][band] = 0.821 * lobe(nm, 568.8, 0.0213, 0.0247) + 0.286 * lobe(nm, 530.9, 0.0613, 0.0322);
            rows[2][band] = 1.217 * lobe(nm, 437.0, 0.0845, 0.0278) + 0.681 * lobe(nm, 459.0, 0.0385, 0.0725);
        }
        double[] white = Xyz.WHITE.values();
        for (int row = 0; row < 3; row++) {
            double sum = 0;
            for (double each : rows[row]) {
                sum += each;
            }
            for (int band = 0; band < BANDS; band++) {
                rows[row][band] *= white[row] / sum;
            }
        }
        return rows;
    }

    private static double lobe(double nm, double peak, double below, double above) {
        double t = (nm - peak) * (nm < peak ? below : above);
        return StrictMath.exp(-0.5 * t * t);
    }

    /** Colour of a spectrum. */
    public static Xyz colour(double[] spectrum) {
        double[] sums = new double[3];
        for (int row = 0; row < 3; row++) {
            for (int band = 0; band < BANDS; band++) {
                sums[row] += WEIGHTS[row][band] * spectrum[band];
            }
        }
        return Xyz.of(sums);
    }

    /** The smoothest spectrum of a colour by itself, such as a paper's; empty where no reflectance of 0 to 1 has that colour. */
    public static Optional<double[]> of(Xyz colour) {
        double[] white = new double[BANDS];
        Arrays.fill(white, 1);
        return over(white, colour);
    }

    /**
     * The smoothest share that a layer leaves of a ground's light in each band: 1 / (1 + e^-z) with the least sum of squared steps of z (the
     * least slope of a hyperbolic tangent, Burns 2015-2020; that it is taken over paper is ours).
     *
     * @param ground the spectrum below
     * @param colour of layer and ground together
     * @return shares strictly between 0 and 1; empty where no layer gives that colour on that ground
     */
    public static Optional<double[]> over(double[] ground, Xyz colour) {
        double[] wanted = colour.values();
        double[] z = new double[BANDS];
        double[] multipliers = new double[3];
        for (int step = 0; step < MOST_STEPS; step++) {
            double[][] system = new double[BANDS + 3][BANDS + 4];
            double missing = 0;
            for (int row = 0; row < 3; row++) {
                system[BANDS + row][BANDS + 3] = wanted[row];
            }
            for (int k = 0; k < BANDS; k++) {
                double share = share(z[k]);
                double slope = share * (1 - share);
                double gradient = 0;
                if (k > 0) {
                    gradient += 2 * (z[k] - z[k - 1]);
                    system[k][k - 1] = -2;
                    system[k][k] += 2;
                }
                if (k < BANDS - 1) {
                    gradient += 2 * (z[k] - z[k + 1]);
                    system[k][k + 1] = -2;
                    system[k][k] += 2;
                }
                for (int row = 0; row < 3; row++) {
                    double weight = WEIGHTS[row][k] * ground[k];
                    gradient += multipliers[row] * weight * slope;
                    system[k][k] += multipliers[row] * weight * slope * (1 - 2 * share);
                    system[k][BANDS + row] = weight * slope;
                    system[BANDS + row][k] = weight * slope;
                    system[BANDS + row][BANDS + 3] -= weight * share;
                }
                system[k][BANDS + 3] = -gradient;
                missing = Math.max(missing, Math.abs(gradient));
            }
            for (int row = 0; row < 3; row++) {
                missing = Math.max(missing, Math.abs(system[BANDS + row][BANDS + 3]));
            }
            if (missing < EXACT) {
                double[] shares = new double[BANDS];
                for (int k = 0; k < BANDS; k++) {
                    shares[k] = share(z[k]);
                }
                return Optional.of(shares);
            }
            double[] change = solved(system);
            double widest = 1;
            for (int k = 0; k < BANDS; k++) {
                widest = Math.max(widest, Math.abs(change[k]));
            }
            if (!(widest < Double.MAX_VALUE)) {
                return Optional.empty();
            }
            for (int k = 0; k < BANDS; k++) {
                z[k] += change[k] / widest;
            }
            for (int row = 0; row < 3; row++) {
                multipliers[row] += change[BANDS + row] / widest;
            }
        }
        return Optional.empty();
    }

    private static double share(double z) {
        return 1 / (1 + StrictMath.exp(-z));
    }

    /** Gauss's elimination with the largest pivot of a column; rows end in the right-hand side, and are used up. Not a number where singular. */
    static double[] solved(double[][] rows) {
        int count = rows.length;
        for (int column = 0; column < count; column++) {
            int largest = column;
            for (int row = column + 1; row < count; row++) {
                if (Math.abs(rows[row][column]) > Math.abs(rows[largest][column])) {
                    largest = row;
                }
            }
            double[] pivot = rows[largest];
            rows[largest] = rows[column];
            rows[column] = pivot;
            for (int row = column + 1; row < count; row++) {
                double factor = rows[row][column] / pivot[column];
                for (int k = column; factor != 0 && k <= count; k++) {
                    rows[row][k] -= factor * pivot[k];
                }
            }
        }
        double[] values = new double[count];
        for (int row = count - 1; row >= 0; row--) {
            double sum = rows[row][count];
            for (int k = row + 1; k < count; k++) {
                sum -= rows[row][k] * values[k];
            }
            values[row] = sum / rows[row][row];
        }
        return values;
    }
}
