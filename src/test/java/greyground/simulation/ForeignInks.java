package greyground.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * An invented shop that prints in colour: smooth spectra of paper and inks in 35 bands, uneven films, wet ink that takes on only a share of the
 * next, light from the ink's surface, a hand that wipes unevenly, and a scanner of three bell-shaped channels. Its arithmetic is its own: nothing of
 * the program's colours is used.
 */
public final class ForeignInks {
    private static final int BANDS = 35;
    private static final double[] D50 = {0.9642, 1, 0.8249};

    private final Random random;
    private final double[] paper = new double[BANDS];
    private final double[][] perMicrometre;
    private final double[] fullFilm;
    private final double[] reach;
    private final double gain;
    private final double acceptance;
    private final double greatest;
    private final double[] light = new double[BANDS];
    private final double[][] eye = new double[3][BANDS];
    private final double[][] channels = new double[3][BANDS];
    private final double[] scannedWhite = new double[3];

    /** A shop of its own numbers. */
    public ForeignInks(int inks, long seed) {
        random = new Random(seed);
        gain = 1.5 + 0.6 * random.nextDouble();
        acceptance = 0.7 + 0.2 * random.nextDouble();
        greatest = 1.6 + 0.3 * random.nextDouble();
        perMicrometre = new double[inks][BANDS];
        fullFilm = new double[inks];
        reach = new double[inks];
        double[][] hues = {
            {430, 45, 0.16}, {545, 42, 0.17}, {650, 62, 0.17}, {560, 400, 0.22}, {500, 60, 0.12}, {600, 40, 0.12}
        };
        for (int ink = 0; ink < inks; ink++) {
            double peak = hues[ink][0] + 12 * (random.nextDouble() - 0.5);
            double width = hues[ink][1] * (0.9 + 0.2 * random.nextDouble());
            double strength = hues[ink][2] * (0.8 + 0.3 * random.nextDouble());
            double grey = 0.006 + 0.008 * random.nextDouble();
            for (int band = 0; band < BANDS; band++) {
                double away = (nanometres(band) - peak) / width;
                perMicrometre[ink][band] = grey + strength * Math.exp(-0.5 * away * away);
            }
            fullFilm[ink] = 6 + 3 * random.nextDouble();
            reach[ink] = 0.75 + 0.5 * random.nextDouble();
        }
        double[] peaks = {600 + 10 * random.nextDouble(), 540 + 8 * random.nextDouble(), 455 + 10 * random.nextDouble()
        };
        for (int band = 0; band < BANDS; band++) {
            double nm = nanometres(band);
            paper[band] = 0.88 - 0.10 * Math.exp(-(nm - 390) / 60);
            light[band] = 0.75 + 0.3 * (nm - 390) / 340 + 0.08 * Math.sin(nm / 40);
            // The observer as in Wyman, Sloan and Shirley 2013.
            eye[0][band] = 0.362 * lobe(nm, 442.0, 0.0624, 0.0374)
                    + 1.056 * lobe(nm, 599.8, 0.0264, 0.0323)
                    - 0.065 * lobe(nm, 501.1, 0.0490, 0.0382);
            eye[1][band] = 0.821 * lobe(nm, 568.8, 0.0213, 0.0247) + 0.286 * lobe(nm, 530.9, 0.0613, 0.0322);
            eye[2][band] = 1.217 * lobe(nm, 437.0, 0.0845, 0.0278) + 0.681 * lobe(nm, 459.0, 0.0385, 0.0725);
            for (int channel = 0; channel < 3; channel++) {
                double away = (nm - peaks[channel]) / 32;
                channels[channel][band] = Math.exp(-0.5 * away * away);
            }
        }
        for (int channel = 0; channel < 3; channel++) {
            for (int band = 0; band < BANDS; band++) {
                scannedWhite[channel] += channels[channel][band] * paper[band];
            }
        }
    }

    private static double nanometres(int band) {
        return 390 + 10 * band;
    }

    private static double lobe(double nm, double peak, double below, double above) {
        double t = (nm - peak) * (nm < peak ? below : above);
        return Math.exp(-0.5 * t * t);
    }

    /** Films that lie beside each other within a plate's printed share, and how much of it each covers. */
    private static final double[] FILMS = {0.55, 0.9, 1.1, 1.45};

    /**
     * Spectrum of a place of even tones.
     *
     * @param shares of each plate's full tone, 0 to 1
     * @param thicker each plate's films by so much, as the hand wiped there
     */
    public double[] print(double[] shares, double[] thicker) {
        double[] mean = new double[BANDS];
        add(mean, shares, thicker, 0, 1, 0, new double[BANDS]);
        double[] spectrum = new double[BANDS];
        for (int band = 0; band < BANDS; band++) {
            spectrum[band] = paper[band] * Math.pow(mean[band], gain);
        }
        return spectrum;
    }

    /** Every film of every plate over every one of the plates before: their grains know nothing of each other. */
    private void add(
            double[] mean, double[] shares, double[] thicker, int ink, double share, double below, double[] density) {
        if (share == 0) {
            return;
        }
        if (ink == shares.length) {
            for (int band = 0; band < BANDS; band++) {
                double dense = greatest * (1 - Math.exp(-density[band] / greatest));
                mean[band] += share * Math.pow(10, -dense / gain);
            }
            return;
        }
        double printed = Math.pow(shares[ink], reach[ink]);
        add(mean, shares, thicker, ink + 1, share * (1 - printed), below, density);
        for (double film : FILMS) {
            double stays = below > 0 ? acceptance : 1;
            double laid = film * fullFilm[ink] * (0.6 + 0.4 * shares[ink]) * thicker[ink] * stays;
            double[] both = density.clone();
            for (int band = 0; band < BANDS; band++) {
                both[band] += perMicrometre[ink][band] * laid;
            }
            add(mean, shares, thicker, ink + 1, share * printed / FILMS.length, laid, both);
        }
    }

    /** Films as the hand means them. */
    public double[] even(int inks) {
        double[] ones = new double[inks];
        Arrays.fill(ones, 1);
        return ones;
    }

    /** How the hand wiped one field. */
    public double[] wiped(int inks, double unevenness) {
        double[] films = new double[inks];
        for (int i = 0; i < inks; i++) {
            films[i] = Math.max(0.5, 1 + unevenness * random.nextGaussian());
        }
        return films;
    }

    /** X, Y and Z under the shop's light, white being D50's. */
    public double[] colour(double[] spectrum) {
        double[] xyz = new double[3];
        for (int row = 0; row < 3; row++) {
            double white = 0;
            for (int band = 0; band < BANDS; band++) {
                xyz[row] += spectrum[band] * light[band] * eye[row][band];
                white += light[band] * eye[row][band];
            }
            xyz[row] *= D50[row] / white;
        }
        return xyz;
    }

    /** The scanner's red, green and blue, bare paper's being 1. */
    public double[] scanned(double[] spectrum, double noise) {
        double[] rgb = new double[3];
        for (int channel = 0; channel < 3; channel++) {
            for (int band = 0; band < BANDS; band++) {
                rgb[channel] += channels[channel][band] * spectrum[band];
            }
            rgb[channel] = Math.max(0, rgb[channel] / scannedWhite[channel] + noise * random.nextGaussian());
        }
        return rgb;
    }

    /** Spectrum of the bare sheet. */
    public double[] sheet() {
        return paper.clone();
    }

    /** Even random shares of full tones. */
    public List<double[]> tones(int inks, int count) {
        List<double[]> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double[] shares = new double[inks];
            for (int ink = 0; ink < inks; ink++) {
                shares[ink] = random.nextInt(4) == 0 ? 0 : random.nextDouble();
            }
            all.add(shares);
        }
        return all;
    }
}
