package greyground.colour;

import java.util.Arrays;

/**
 * What an uneven film lets through in every band of an ink, from what it lets through at a few strengths: the film's geometry does not depend on
 * the light, so the mean of 10^(-D/n) is one smooth function of m. Its logarithm is a polynomial in m / (m + 0.4 M) through no ink at all and each
 * strength that was computed; with five strengths within 0.1 L* for m up to 0.15 per µm (found on uneven films of many shapes).
 */
public final class BandsBetween implements InkLight {
    private static final double[] SHARES = {1, 0.6, 0.33, 0.15, 0.05};
    private static final double BEND = 0.4;

    private final double[] strengths;
    private final double[][] weights;

    private BandsBetween(double[] strengths, double[][] weights) {
        this.strengths = strengths;
        this.weights = weights;
    }

    /**
     * For an ink.
     *
     * @param least strength that can be computed, per µm; the strongest band's is no less
     */
    public static BandsBetween of(InkInBands ink, double least) {
        double most = ink.strongestPerMicrometre();
        double[] strengths = ink.isGrey()
                ? new double[] {most}
                : Arrays.stream(SHARES)
                        .map(share -> share * most)
                        .filter(m -> m >= least)
                        .toArray();
        double[][] weights = new double[SmoothSpectrum.BANDS][strengths.length];
        for (int band = 0; band < weights.length; band++) {
            double x = bent(ink.strengthPerMicrometre(band), most);
            for (int i = 0; i < strengths.length; i++) {
                double xi = bent(strengths[i], most);
                // Through no ink, whose logarithm is 0, as well.
                double weight = x / xi;
                for (int k = 0; k < strengths.length; k++) {
                    if (k != i) {
                        weight *= (x - bent(strengths[k], most)) / (xi - bent(strengths[k], most));
                    }
                }
                weights[band][i] = weight;
            }
        }
        return new BandsBetween(strengths, weights);
    }

    private static double bent(double m, double most) {
        return m / (m + BEND * most);
    }

    @Override
    public double[] strengths() {
        return strengths.clone();
    }

    @Override
    public double logarithm(int band, double[] logarithms) {
        double sum = 0;
        for (int i = 0; i < strengths.length; i++) {
            sum += weights[band][i] * logarithms[i];
        }
        return Math.min(0, sum);
    }
}
