package greyground.art.printed;

import greyground.raster.GreyPlane;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/**
 * Power of the waves in a square piece of art under a Hann window, and how far each rises above those around it.
 *
 * <p>Waves are numbered by whole periods along row and column of the piece, modulo its side.
 */
final class TileSpectrum {
    /** One loud place can't outvote the rest (assumed). */
    private static final double LOUDEST = 60;

    /** Waves on either side that make up the ground a wave rises from: 17 x 17 in all (assumed). */
    private static final int AROUND = 8;

    private final int side;
    private final double[] power;
    private final double[] rise;

    private TileSpectrum(int side, double[] power, double[] rise) {
        this.side = side;
        this.power = power;
        this.rise = rise;
    }

    /**
     * The spectrum of the piece whose corner is at {@code left}, {@code top}.
     *
     * @param side a power of two; the piece lies on the plane
     */
    static TileSpectrum of(GreyPlane plane, int left, int top, int side) {
        double[] power = power(piece(plane, left, top, side));
        return new TileSpectrum(side, power, rise(power, side));
    }

    /** The mean of several pieces' spectra, wave by wave. */
    static TileSpectrum mean(List<TileSpectrum> pieces) {
        int side = pieces.get(0).side;
        double[] power = new double[side * side];
        double[] rise = new double[side * side];
        for (TileSpectrum piece : pieces) {
            for (int i = 0; i < power.length; i++) {
                power[i] += piece.power[i];
                rise[i] += piece.rise[i];
            }
        }
        for (int i = 0; i < power.length; i++) {
            power[i] /= pieces.size();
            rise[i] /= pieces.size();
        }
        return new TileSpectrum(side, power, rise);
    }

    private static double[][] piece(GreyPlane plane, int left, int top, int side) {
        double[] window = new double[side];
        for (int i = 0; i < side; i++) {
            window[i] = 0.5 - 0.5 * StrictMath.cos(2 * StrictMath.PI * i / side);
        }
        double[][] piece = new double[side][side];
        short[] run = new short[side];
        double sum = 0;
        double weight = 0;
        for (int y = 0; y < side; y++) {
            plane.readRun(left, top + y, side, run, 0);
            for (int x = 0; x < side; x++) {
                piece[y][x] = (run[x] & 0xFFFF) / (double) GreyPlane.WHITE;
                sum += window[x] * window[y] * piece[y][x];
                weight += window[x] * window[y];
            }
        }
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                piece[y][x] = (piece[y][x] - sum / weight) * window[x] * window[y];
            }
        }
        return piece;
    }

    private static double[] power(double[][] real) {
        int side = real.length;
        double[][] imaginary = new double[side][side];
        for (int y = 0; y < side; y++) {
            transform(real[y], imaginary[y]);
        }
        double[] power = new double[side * side];
        double[] columnReal = new double[side];
        double[] columnImaginary = new double[side];
        // Light has no imaginary part: the other half is the same turned about.
        for (int x = 0; x <= side / 2; x++) {
            for (int y = 0; y < side; y++) {
                columnReal[y] = real[y][x];
                columnImaginary[y] = imaginary[y][x];
            }
            transform(columnReal, columnImaginary);
            for (int y = 0; y < side; y++) {
                double one = columnReal[y] * columnReal[y] + columnImaginary[y] * columnImaginary[y];
                power[y * side + x] = one;
                power[(-y & side - 1) * side + (-x & side - 1)] = one;
            }
        }
        return power;
    }

    private static void transform(double[] real, double[] imaginary) {
        FastFourierTransformer.transformInPlace(
                new double[][] {real, imaginary}, DftNormalization.STANDARD, TransformType.FORWARD);
    }

    private static double[] rise(double[] power, int side) {
        double[] rows = new double[power.length];
        for (int y = 0; y < side; y++) {
            around(power, rows, y * side, side);
        }
        double[] ground = new double[power.length];
        double[] sums = new double[side];
        for (int y = 0; y < side; y++) {
            // Summed afresh, here as there: a running sum would carry the rounding of a loud wave into quiet ones.
            Arrays.fill(sums, 0);
            for (int j = y - AROUND; j <= y + AROUND; j++) {
                int from = (j & side - 1) * side;
                for (int x = 0; x < side; x++) {
                    sums[x] += rows[from + x];
                }
            }
            System.arraycopy(sums, 0, ground, y * side, side);
        }
        double count = (2 * AROUND + 1) * (2 * AROUND + 1);
        double[] rise = new double[power.length];
        for (int i = 0; i < rise.length; i++) {
            rise[i] = ground[i] > 0 ? Math.min(LOUDEST, power[i] * count / ground[i]) : 0;
        }
        return rise;
    }

    /** Sums over the places around each of a row, which closes on itself. */
    private static void around(double[] from, double[] into, int start, int side) {
        for (int i = 0; i < side; i++) {
            double sum = 0;
            for (int j = i - AROUND; j <= i + AROUND; j++) {
                sum += from[start + (j & side - 1)];
            }
            into[start + i] = sum;
        }
    }

    int side() {
        return side;
    }

    double power(int across, int down) {
        return power[at(across, down)];
    }

    double rise(int across, int down) {
        return rise[at(across, down)];
    }

    private int at(int across, int down) {
        return (down & side - 1) * side + (across & side - 1);
    }
}
