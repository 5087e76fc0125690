package greyground.art.colour;

/** The two coded scales that art without a profile of its own may use, as linear luminance 0..1. */
final class Lightness {
    /** ITU-R BT.709-6: what linear red, green and blue add to luminance. */
    private static final double[] WEIGHTS = {0.2126, 0.7152, 0.0722};

    private Lightness() {}

    static double[] weights() {
        return WEIGHTS.clone();
    }

    /** IEC 61966-2-1: linear light of an sRGB sample, both 0..1. */
    static double linear(double coded) {
        return coded <= 0.04045 ? coded / 12.92 : Math.pow((coded + 0.055) / 1.055, 2.4);
    }

    /** CIE 15:2004, 8.2.1.1, inverted: Y of L* 0..100, with the exact fractions that meet at L* 8. */
    static double luminance(double lightness) {
        double root = (lightness + 16) / 116;
        return lightness > 8 ? root * root * root : lightness * 27 / 24_389;
    }

    /** CIE 15:2004, 8.2.1.1: L* 0..100 of Y 0..1. */
    static double lightness(double luminance) {
        return luminance > 216 / 24_389.0 ? 116 * Math.cbrt(luminance) - 16 : luminance * 24_389 / 27;
    }
}
