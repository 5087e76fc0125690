package greyground.tone;

/** Munsell value of a grey card to its luminance (ASTM D1535-08, equation 2). */
public final class Munsell {
    private Munsell() {}

    /**
     * Luminance 0..1 relative to a perfect white; the older scale relative to smoked magnesium oxide is 1.0257 times this.
     *
     * @param value Munsell V, 0 (black) to 10 (white)
     */
    public static double luminance(double value) {
        double percent =
                value * (1.1914 + value * (-0.22533 + value * (0.23352 + value * (-0.020484 + value * 0.00081939))));
        return percent / 100;
    }
}
