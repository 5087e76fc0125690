package greyground.colour;

import greyground.tone.Adaptation;
import greyground.tone.Primaries;
import greyground.tone.Srgb;

/**
 * Tristimulus values of the CIE 1931 observer under D50, a perfect white's Y being 1.
 *
 * @param x usually 0 to 0.9642
 * @param y luminance, usually 0 to 1
 * @param z usually 0 to 0.8249
 */
public record Xyz(double x, double y, double z) {
    /** The perfect white. */
    public static final Xyz WHITE = new Xyz(Adaptation.D50.x(), Adaptation.D50.y(), Adaptation.D50.z());

    private static final double[][] FROM_SRGB = Primaries.SRGB.toD50();
    private static final double[][] TO_SRGB = Adaptation.inverse(FROM_SRGB);

    /**
     * Of linear light in the lights of sRGB (IEC 61966-2-1:1999), adapted from D65 by Bradford's transform.
     *
     * @param rgb red, green and blue, 0 to 1 each where a screen can show them
     */
    public static Xyz ofLight(double... rgb) {
        return of(Adaptation.times(FROM_SRGB, rgb));
    }

    /**
     * Of a colour as screens are told it.
     *
     * @param code 0xRRGGBB in sRGB
     */
    public static Xyz ofCode(int code) {
        return ofLight(light(code >> 16), light(code >> 8), light(code));
    }

    private static double light(int code) {
        return Srgb.decode((code & 0xFF) / 255.0);
    }

    static Xyz of(double[] xyz) {
        return new Xyz(xyz[0], xyz[1], xyz[2]);
    }

    /** Linear light in the lights of sRGB: red, green, blue; outside 0 to 1 where no screen of that kind shows the colour. */
    public double[] light() {
        return Adaptation.times(TO_SRGB, values());
    }

    double[] values() {
        return new double[] {x, y, z};
    }

    /** The same seen on a paper that is taken for white (the scaling of profiles' relative intent, from memory: ICC.1). */
    public Xyz over(Xyz paper) {
        return new Xyz(x / paper.x * WHITE.x, y / paper.y * WHITE.y, z / paper.z * WHITE.z);
    }
}
