package greyground.tone;

/**
 * The sRGB coding of light (IEC 61966-2-1:1999); its lights are {@link Primaries#SRGB}.
 *
 * <p>The branch point is 0.04045; the older 0.03928 comes from a draft.
 */
public final class Srgb {
    private Srgb() {}

    /**
     * Linear light of a code.
     *
     * @param code 0 to 1, a stored value divided by its largest
     */
    public static double decode(double code) {
        return code <= 0.04045 ? code / 12.92 : StrictMath.pow((code + 0.055) / 1.055, 2.4);
    }

    /**
     * Code of linear light.
     *
     * @param linear 0 to 1
     */
    public static double encode(double linear) {
        return linear <= 0.0031308 ? 12.92 * linear : 1.055 * StrictMath.pow(linear, 1 / 2.4) - 0.055;
    }
}
