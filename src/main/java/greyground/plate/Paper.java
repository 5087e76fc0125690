package greyground.plate;

import greyground.quantity.Refusal;

/**
 * The paper.
 *
 * @param density of the bare sheet, absolute, 0 to 0.6
 * @param opticalGain n of Yule and Nielsen 1951, 1 (no light spreads in the paper) to 4 (2 is full diffusion)
 */
public record Paper(double density, double opticalGain) {
    private static final double LN_10 = StrictMath.log(10);

    public Paper {
        Refusal.checkRange("paper density", density, 0, 0.6, "", "0.05 to 0.1 for white cotton paper");
        Refusal.checkRange("optical gain", opticalGain, 1, 4, "", "1.7 when nothing is known");
    }

    /**
     * Reflectance of an uneven area, {@code (mean of R^(1/n))^n} (Yule and Nielsen 1951): light that enters the paper at a
     * bare place may leave under an inked one.
     *
     * @param meanRoot mean over the area of R^(1/n)
     */
    public double reflectance(double meanRoot) {
        return StrictMath.pow(meanRoot, opticalGain);
    }

    /** R^(1/n) of one place, from the density of the ink there above the paper. */
    public double root(double inkDensity) {
        return StrictMath.exp(-LN_10 / opticalGain * (density + inkDensity));
    }

    /**
     * CIE lightness of a reflectance, CIE 15:2004 8.2.1.1 with its exact constants.
     *
     * @param reflectance Y relative to a perfect white, 0 to 1
     * @return L*, 0 to 100
     */
    public static double lightness(double reflectance) {
        return reflectance > 216.0 / 24_389 ? 116 * StrictMath.cbrt(reflectance) - 16 : 24_389.0 / 27 * reflectance;
    }

    /** The same sheet with another spread of light. */
    public Paper withOpticalGain(double other) {
        return new Paper(density, other);
    }
}
