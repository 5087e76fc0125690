package greyground.tone;

/**
 * CIE 1976 lightness L* and luminance Y relative to a white of 1 (CIE 15:2004, 8.2.1.1).
 *
 * <p>The constants are the exact fractions 216/24389 and 24389/27, so that the two branches meet at L* = 8 without a seam
 * (Lindbloom 2003, A Continuity Study of the CIE L* Function). Strict arithmetic: every machine gets the same bits.
 */
public final class Lightness {
    private static final double EPSILON = 216.0 / 24389;
    private static final double KAPPA = 24389.0 / 27;

    private Lightness() {}

    /**
     * L* of a luminance: 116 Y^(1/3) - 16 above 216/24389, else 24389/27 Y.
     *
     * @param luminance 0 or more, 1 is white
     */
    public static double ofLuminance(double luminance) {
        return luminance > EPSILON ? 116 * StrictMath.cbrt(luminance) - 16 : KAPPA * luminance;
    }

    /**
     * dL* over dY at a luminance: 116/3 Y^(-2/3) above 216/24389, else 24389/27.
     *
     * @param luminance 0 or more, 1 is white
     */
    public static double slope(double luminance) {
        return luminance > EPSILON ? 116.0 / 3 / StrictMath.cbrt(luminance) / StrictMath.cbrt(luminance) : KAPPA;
    }

    /**
     * Luminance of an L*: ((L* + 16) / 116)^3 above 8, else 27/24389 L*.
     *
     * @param lightness 0 or more, 100 is white
     */
    public static double toLuminance(double lightness) {
        if (lightness <= KAPPA * EPSILON) {
            return lightness / KAPPA;
        }
        double root = (lightness + 16) / 116;
        return root * root * root;
    }

    /** L* of a visual density above perfect white, for neutral patches. */
    public static double ofDensity(double density) {
        return ofLuminance(StrictMath.pow(10, -density));
    }

    /** Visual density of an L* above 0, for neutral patches. */
    public static double toDensity(double lightness) {
        return -StrictMath.log10(toLuminance(lightness)) + 0.0;
    }
}
