package greyground.tone;

/**
 * Printed area from density and back: Murray-Davies (Murray 1936) and its extension by Yule and Nielsen (1951).
 *
 * <p>Every density above paper is divided by n: D = D0 - n log10(1 - a (1 - 10^(-(Ds - D0)/n))). With n = 1 no light spreads
 * in the paper, which is Murray-Davies; n = 2 is complete diffusion; 1.7 is suggested when nothing is known (Pearson 1981).
 * n can fit above 2 when physical growth is left in the readings.
 */
public final class ToneValue {
    private ToneValue() {}

    /**
     * Density of a tint.
     *
     * @param area printed share, 0 to 1
     * @param paper density of bare paper
     * @param solid density of solid ink, above {@code paper}
     * @param n optical gain, 1 or more
     */
    public static double density(double area, double paper, double solid, double n) {
        return paper - n * StrictMath.log10(1 - area * inked(paper, solid, n));
    }

    /**
     * Printed share of a tint, 0 at the paper's density and 1 at the solid's; outside these it is not a share.
     *
     * @param density of the tint
     */
    public static double area(double density, double paper, double solid, double n) {
        return (1 - StrictMath.pow(10, -(density - paper) / n)) / inked(paper, solid, n);
    }

    private static double inked(double paper, double solid, double n) {
        return 1 - StrictMath.pow(10, -(solid - paper) / n);
    }
}
