package greyground.grain;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The regular waves in a pattern of dots: those frequencies at which its power spectrum stands up as a line. A halftone has a
 * few strong ones; a stochastic grain, whose power lies in a smooth ring, has none.
 *
 * @param peaks strongest first; a wave and its opposite are both there
 */
public record DotSpectrum(List<Peak> peaks) {
    private static final int SIDE = 1024;

    /** A line worth telling holds more of the pattern's variance than this in its few bins. */
    private static final double LEAST_SHARE = 0.01;

    /**
     * And stands out from its neighbourhood this much. Bins of a stochastic grain's ring exceed theirs up to 22 times (measured
     * here, spacings 120 to 400 um at 1440 dpi), lines of a halftone thousands of times.
     */
    private static final double LEAST_RISE = 100;

    private static final int MOST_PEAKS = 40;

    /** Amplitude taken for a film printer's own rows of dots: those of half-black lines would have 2/pi; assumed. */
    private static final double LATTICE_AMPLITUDE = 0.5;

    /**
     * One wave.
     *
     * @param across cycles per millimetre along the film's width
     * @param up cycles per millimetre along its height, upward
     * @param amplitude of the cosine in the pattern, 0 to 0.64, where black is 1 and clear 0
     */
    public record Peak(double across, double up, double amplitude) {
        /** Cycles per millimetre. */
        public double frequency() {
            return StrictMath.hypot(across, up);
        }
    }

    public DotSpectrum {
        peaks = List.copyOf(peaks);
    }

    /**
     * Finds the waves of a tile under one tone.
     *
     * @param coverage of the film, 0.05 to 0.95
     */
    public static DotSpectrum of(ThresholdTile tile, double coverage, Resolution resolution) {
        Refusal.checkRange("film coverage", coverage, 0.05, 0.95, "", "about half shows the waves best");
        double[] window = new double[SIDE];
        for (int i = 0; i < SIDE; i++) {
            window[i] = 0.5 - 0.5 * StrictMath.cos(2 * Math.PI * i / SIDE);
        }
        int wanted = (int) Math.round(coverage * 65_535);
        double[] real = new double[SIDE * SIDE];
        double weights = 0;
        double sum = 0;
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                double weight = window[x] * window[y];
                double black = wanted > tile.threshold(x, y) ? 1 : 0;
                real[y * SIDE + x] = black;
                weights += weight;
                sum += weight * black;
            }
        }
        double mean = sum / weights;
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                real[y * SIDE + x] = (real[y * SIDE + x] - mean) * window[x] * window[y];
            }
        }
        return new DotSpectrum(peaks(power(real), mean * (1 - mean), resolution.pitchMicrometres() / 1000));
    }

    /**
     * The rows and columns in which a film printer lays its dots.
     *
     * @param resolution the printer's own
     */
    public static DotSpectrum ofPrinter(Resolution resolution) {
        double frequency = 1000 / resolution.pitchMicrometres();
        return new DotSpectrum(List.of(
                new Peak(frequency, 0, LATTICE_AMPLITUDE),
                new Peak(-frequency, 0, LATTICE_AMPLITUDE),
                new Peak(0, frequency, LATTICE_AMPLITUDE),
                new Peak(0, -frequency, LATTICE_AMPLITUDE)));
    }

    /**
     * These waves as they reach the resist: a Gaussian blur lowers each by {@code exp(-2 (pi s f)^2)}.
     *
     * @param blurMicrometres standard deviation of film softness and half-shadow together, 0 or more
     */
    public DotSpectrum blurred(double blurMicrometres) {
        return new DotSpectrum(peaks.stream()
                .map(peak -> {
                    double turns = Math.PI * blurMicrometres / 1000 * peak.frequency();
                    return new Peak(peak.across(), peak.up(), peak.amplitude() * StrictMath.exp(-2 * turns * turns));
                })
                .toList());
    }

    /** Power of each bin, zero frequency first. */
    private static double[] power(double[] real) {
        double[] imaginary = new double[real.length];
        FourierTransform transform = new FourierTransform(SIDE);
        for (int y = 0; y < SIDE; y++) {
            transform.transform(real, imaginary, y * SIDE, 1);
        }
        for (int x = 0; x < SIDE; x++) {
            transform.transform(real, imaginary, x, SIDE);
        }
        for (int i = 0; i < real.length; i++) {
            real[i] = real[i] * real[i] + imaginary[i] * imaginary[i];
        }
        return real;
    }

    private static List<Peak> peaks(double[] power, double variance, double pitchMillimetres) {
        double total = 0;
        for (double bin : power) {
            total += bin;
        }
        List<Peak> peaks = new ArrayList<>();
        for (int y = -SIDE / 2; y < SIDE / 2; y++) {
            for (int x = -SIDE / 2; x < SIDE / 2; x++) {
                if (at(power, x, y) * 25 < LEAST_SHARE * total || !isHighest(power, x, y)) {
                    continue;
                }
                double share = box(power, x, y, 2) / total;
                double round = (box(power, x, y, 8) - box(power, x, y, 3)) / (17 * 17 - 7 * 7);
                if (share >= LEAST_SHARE && at(power, x, y) >= LEAST_RISE * round) {
                    double across = (x + between(power, x, y, 1, 0)) / (SIDE * pitchMillimetres);
                    double down = (y + between(power, x, y, 0, 1)) / (SIDE * pitchMillimetres);
                    // Rows run down the film, frequencies are told upward.
                    peaks.add(new Peak(across, -down, 2 * Math.sqrt(share * variance)));
                }
            }
        }
        peaks.sort(Comparator.comparingDouble(Peak::amplitude)
                .reversed()
                .thenComparing(Peak::across)
                .thenComparing(Peak::up));
        return peaks.subList(0, Math.min(MOST_PEAKS, peaks.size()));
    }

    private static double at(double[] power, int x, int y) {
        return power[(y & (SIDE - 1)) * SIDE + (x & (SIDE - 1))];
    }

    private static boolean isHighest(double[] power, int x, int y) {
        double here = at(power, x, y);
        for (int j = -1; j <= 1; j++) {
            for (int i = -1; i <= 1; i++) {
                double there = at(power, x + i, y + j);
                // Of equal neighbours the first counts.
                if (there > here || (there == here && (j < 0 || (j == 0 && i < 0)))) {
                    return false;
                }
            }
        }
        return true;
    }

    private static double box(double[] power, int x, int y, int reach) {
        double sum = 0;
        for (int j = -reach; j <= reach; j++) {
            for (int i = -reach; i <= reach; i++) {
                sum += at(power, x + i, y + j);
            }
        }
        return sum;
    }

    /**
     * Where between bins a line lies. Under a Hann window neighbouring magnitudes of a single line stand in the ratio
     * {@code r = (1 + d) / (2 - d)} for a line d bins from the higher one, so {@code d = (2 r - 1) / (1 + r)} (Jain, Collins and
     * Davis 1979 for the plain window, Grandke 1983 for Hann's; from memory, checked in the tests).
     */
    private static double between(double[] power, int x, int y, int stepX, int stepY) {
        double here = Math.sqrt(at(power, x, y));
        double before = Math.sqrt(at(power, x - stepX, y - stepY));
        double after = Math.sqrt(at(power, x + stepX, y + stepY));
        double ratio = Math.max(before, after) / here;
        double away = (2 * ratio - 1) / (1 + ratio);
        return after >= before ? away : -away;
    }
}
