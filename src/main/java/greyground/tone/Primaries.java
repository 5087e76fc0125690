package greyground.tone;

import java.util.stream.DoubleStream;

/**
 * The three lights of an RGB coding and their white, by CIE 1931 chromaticity.
 *
 * <p>Art has one luminance, whether it says its colours by a profile, by chromaticities or not at all: that of the profile
 * connection space, Y under D50 with white at 1, to which other whites are adapted by the Bradford transform (ICC.1:2010,
 * Annex E).
 */
public record Primaries(
        double redX,
        double redY,
        double greenX,
        double greenY,
        double blueX,
        double blueY,
        double whiteX,
        double whiteY) {
    /** Those of IEC 61966-2-1, sRGB (the same as ITU-R BT.709-6), under D65. */
    public static final Primaries SRGB = new Primaries(0.64, 0.33, 0.30, 0.60, 0.15, 0.06, 0.3127, 0.3290);

    /** @throws IllegalArgumentException if these lights make no white: on one line, white without light, or no numbers */
    public Primaries {
        // Twice the triangle's area; imaginary lights outside the spectrum are allowed, since real codings have them.
        double area = (greenX - redX) * (blueY - redY) - (blueX - redX) * (greenY - redY);
        double sum = redX + redY + greenX + greenY + blueX + blueY + whiteX + whiteY;
        if (!(Math.abs(area) > 1e-4 && whiteX > 0 && whiteY > 0.01 && whiteX + whiteY < 1 && Math.abs(sum) < 100)) {
            throw new IllegalArgumentException("primaries that make no white");
        }
    }

    /** XYZ of linear red, green and blue of 1 under D50, one column a light; their sum is its white. */
    public double[][] toD50() {
        double[][] lights = {
            {redX, greenX, blueX}, {redY, greenY, blueY}, {1 - redX - redY, 1 - greenX - greenY, 1 - blueX - blueY}
        };
        Adaptation.White white = Adaptation.White.ofChromaticity(whiteX, whiteY);
        double[] amounts = Adaptation.times(Adaptation.inverse(lights), white.xyz());
        double[][] adapted = Adaptation.matrix(white, Adaptation.D50);
        double[][] xyz = new double[3][3];
        for (int light = 0; light < 3; light++) {
            for (int row = 0; row < 3; row++) {
                for (int k = 0; k < 3; k++) {
                    xyz[row][light] += adapted[row][k] * lights[k][light] * amounts[light];
                }
            }
        }
        return xyz;
    }

    /** What linear red, green and blue of 1 add to luminance, each 0 to 1 for real lights; together 1. */
    public double[] luminances() {
        double[] luminances = toD50()[1];
        double sum = DoubleStream.of(luminances).sum();
        return DoubleStream.of(luminances).map(y -> y / sum).toArray();
    }
}
