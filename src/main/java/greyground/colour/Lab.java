package greyground.colour;

import greyground.tone.Lightness;
import greyground.tone.Srgb;

/**
 * A colour in CIELAB (CIE 15:2004, 8.2.1.1) under D50.
 *
 * @param lightness L*, 0 to 100
 * @param a from green, below 0, to red
 * @param b from blue, below 0, to yellow
 */
public record Lab(double lightness, double a, double b) {
    private static final double CHROMA_OF_25 = StrictMath.pow(25, 7);

    /** Rounding of the arc tangent must not decide on which side of half a turn two hues lie (tested with the published pairs 10 and 14). */
    private static final double HALF_TURN = 180 + 1e-9;

    /** Of a colour under D50. */
    public static Lab of(Xyz colour) {
        // X and Z over white are the luminances of other lightnesses.
        double lightness = Lightness.ofLuminance(colour.y());
        return new Lab(
                lightness,
                500 / 116.0 * (Lightness.ofLuminance(colour.x() / Xyz.WHITE.x()) - lightness),
                200 / 116.0 * (lightness - Lightness.ofLuminance(colour.z() / Xyz.WHITE.z())));
    }

    /** The colour under D50. */
    public Xyz xyz() {
        return new Xyz(
                Lightness.toLuminance(lightness + a * 116 / 500) * Xyz.WHITE.x(),
                Lightness.toLuminance(lightness),
                Lightness.toLuminance(lightness - b * 116 / 200) * Xyz.WHITE.z());
    }

    /** Distance from the grey of the same lightness, C*. */
    public double chroma() {
        return StrictMath.hypot(a, b);
    }

    /** Hue angle in degrees, 0 to 360; 0 for a grey. */
    public double hueDegrees() {
        return degrees(b, a);
    }

    private static double degrees(double b, double a) {
        double degrees = StrictMath.toDegrees(StrictMath.atan2(b, a));
        return degrees < 0 ? degrees + 360 : degrees;
    }

    /** The same hue and lightness with another chroma. */
    public Lab withChroma(double other) {
        double factor = chroma() == 0 ? 0 : other / chroma();
        return new Lab(lightness, a * factor, b * factor);
    }

    /**
     * How far two colours lie apart, CIEDE2000 with all three weights 1 (CIE 142-2001; equations as in Sharma, Wu and Dalal 2005, The CIEDE2000
     * Color-Difference Formula). It is made for small differences, under 5 (from memory: CIE 142); 1 is about the least that is seen side by
     * side.
     */
    public double difference(Lab other) {
        double weight = 0.5 * (1 - StrictMath.sqrt(saturation((chroma() + other.chroma()) / 2)));
        double a1 = (1 + weight) * a;
        double a2 = (1 + weight) * other.a;
        double c1 = StrictMath.hypot(a1, b);
        double c2 = StrictMath.hypot(a2, other.b);
        double h1 = c1 == 0 ? 0 : degrees(b, a1);
        double h2 = c2 == 0 ? 0 : degrees(other.b, a2);
        boolean grey = c1 * c2 == 0;
        double turn = h2 - h1;
        boolean near = Math.abs(turn) <= HALF_TURN;
        double folded = grey ? 0 : near ? turn : turn > 0 ? turn - 360 : turn + 360;
        double middle =
                grey ? h1 + h2 : near ? (h1 + h2) / 2 : h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2;
        double meanLightness = (lightness + other.lightness) / 2;
        double meanChroma = (c1 + c2) / 2;
        double t = 1
                - 0.17 * cosine(middle - 30)
                + 0.24 * cosine(2 * middle)
                + 0.32 * cosine(3 * middle + 6)
                - 0.20 * cosine(4 * middle - 63);
        double offset = (meanLightness - 50) * (meanLightness - 50);
        double byLightness = (other.lightness - lightness) / (1 + 0.015 * offset / StrictMath.sqrt(20 + offset));
        double byChroma = (c2 - c1) / (1 + 0.045 * meanChroma);
        double byHue = 2
                * StrictMath.sqrt(c1 * c2)
                * StrictMath.sin(StrictMath.toRadians(folded / 2))
                / (1 + 0.015 * meanChroma * t);
        double blue = 30 * StrictMath.exp(-((middle - 275) / 25) * ((middle - 275) / 25));
        double rotation = -StrictMath.sin(StrictMath.toRadians(2 * blue)) * 2 * StrictMath.sqrt(saturation(meanChroma));
        return StrictMath.sqrt(Math.max(
                0, byLightness * byLightness + byChroma * byChroma + byHue * byHue + rotation * byChroma * byHue));
    }

    /** C^7 / (C^7 + 25^7). */
    private static double saturation(double chroma) {
        double seventh = StrictMath.pow(chroma, 7);
        return seventh / (seventh + CHROMA_OF_25);
    }

    private static double cosine(double degrees) {
        return StrictMath.cos(StrictMath.toRadians(degrees));
    }

    /**
     * As a screen is told it, 0xRRGGBB in sRGB. What no such screen shows keeps lightness and hue and loses chroma: channels cut off by
     * themselves would turn the hue.
     */
    public int code() {
        double least = 0;
        double most = chroma();
        if (!onScreen(xyz().light())) {
            for (int step = 0; step < 20; step++) {
                double middle = (least + most) / 2;
                if (onScreen(withChroma(middle).xyz().light())) {
                    least = middle;
                } else {
                    most = middle;
                }
            }
            most = least;
        }
        int code = 0;
        for (double light : withChroma(most).xyz().light()) {
            code = code << 8 | (int) Math.round(255 * Srgb.encode(Math.max(0, Math.min(1, light))));
        }
        return code;
    }

    /** Whether a screen of sRGB shows a colour of linear light; half a code's step past its ends is no loss. */
    public static boolean onScreen(double[] light) {
        for (double each : light) {
            if (each < -0.5 / 255 / 12.92 || each > 1 + 0.5 / 255) {
                return false;
            }
        }
        return true;
    }
}
