package greyground.tone;

import greyground.quantity.Refusal;
import java.util.Arrays;

/**
 * How much of a colour's red, green and blue light its grey is made of, in linear light of {@link Primaries#SRGB}. A grey keeps its luminance
 * whatever the weights.
 *
 * @param red 0 to 1
 * @param green 0 to 1
 * @param blue 0 to 1; with the others 1
 */
public record ColourWeights(double red, double green, double blue) {
    /** How far three typed numbers may be from 1 in all: a third of each is 33 %. */
    private static final double ROUNDING = 0.02;

    public ColourWeights {
        Refusal.checkRange("weight of red", red, 0, 1, "", "give shares of one grey, such as 0.3,0.6,0.1");
        Refusal.checkRange("weight of green", green, 0, 1, "", "give shares of one grey, such as 0.3,0.6,0.1");
        Refusal.checkRange("weight of blue", blue, 0, 1, "", "give shares of one grey, such as 0.3,0.6,0.1");
        double sum = red + green + blue;
        if (!(Math.abs(sum - 1) <= ROUNDING)) {
            throw Refusal.use("weights of red, green and blue are " + Refusal.plain(red) + ", " + Refusal.plain(green)
                    + " and " + Refusal.plain(blue) + ", " + Refusal.plain(sum)
                    + " in all; they must make 1, so that greys stay what they are: such as 0.3,0.6,0.1");
        }
    }

    /** X of a colour over that of the connection space's white. */
    public static ColourWeights ofX() {
        return ofRow(0, Adaptation.D50.x());
    }

    /** Z of a colour over that of the connection space's white. */
    public static ColourWeights ofZ() {
        return ofRow(2, Adaptation.D50.z());
    }

    private static ColourWeights ofRow(int row, double white) {
        double[] lights = Primaries.SRGB.toD50()[row];
        return new ColourWeights(lights[0] / white, lights[1] / white, lights[2] / white);
    }

    /** What red, green and blue of 1 add, in all exactly 1. */
    public double[] shares() {
        double sum = red + green + blue;
        return new double[] {red / sum, green / sum, blue / sum};
    }

    /**
     * What X and Z, each relative to the white of the profile connection space, add to luminance where they differ from Y: the grey of a
     * colour is {@code Y + a (X/Xn - Y) + b (Z/Zn - Y)}, which for greys is Y itself, to the last bit.
     *
     * @return a and b
     */
    public double[] besideLuminance() {
        double[][] fromXyz = Adaptation.inverse(Primaries.SRGB.toD50());
        double[] shares = shares();
        double ofX = 0;
        double ofZ = 0;
        for (int light = 0; light < 3; light++) {
            ofX += shares[light] * fromXyz[light][0];
            ofZ += shares[light] * fromXyz[light][2];
        }
        return new double[] {ofX * Adaptation.D50.x(), ofZ * Adaptation.D50.z()};
    }

    /**
     * The same for the lights of an RGB coding: what red adds where it differs from green, and blue where it differs from green.
     *
     * @param toXyz the lights' XYZ under D50, one column a light
     * @return of red and of blue
     */
    public double[] besideLuminance(double[][] toXyz) {
        double[] beside = besideLuminance();
        return Arrays.stream(new int[] {0, 2})
                .mapToDouble(light -> beside[0] * (toXyz[0][light] / Adaptation.D50.x() - toXyz[1][light])
                        + beside[1] * (toXyz[2][light] / Adaptation.D50.z() - toXyz[1][light]))
                .toArray();
    }
}
