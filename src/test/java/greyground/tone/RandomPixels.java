package greyground.tone;

import greyground.quantity.Refusal;

/**
 * Square pixels strewn at random, overlaps counted once (Boolean model): a' = 1 - (1 - g)^((S + 2 delta)^2 / S^2).
 *
 * @param pixelMicrometres side S of a pixel, 1 to 1000
 */
public record RandomPixels(double pixelMicrometres) implements DotGrowth {
    public RandomPixels {
        Refusal.checkRange("pixel", pixelMicrometres, 1, 1000, "um", "give the film pixel or the cluster's side");
    }

    @Override
    public double grown(double coverage, double edgeShiftMicrometres) {
        if (coverage <= 0 || coverage >= 1) {
            return coverage <= 0 ? 0 : 1;
        }
        return 1 - StrictMath.pow(1 - coverage, areaRatio(edgeShiftMicrometres));
    }

    /** Growth of pixels that all stand alone, g (S + 2 delta)^2 / S^2: the limit of small coverage, not held to 1. */
    public double grownApart(double coverage, double edgeShiftMicrometres) {
        return coverage * areaRatio(edgeShiftMicrometres);
    }

    private double areaRatio(double shift) {
        double side = Math.max(0, pixelMicrometres + 2 * shift) / pixelMicrometres;
        return side * side;
    }

    @Override
    public String name() {
        return "random pixels, " + Refusal.plain(pixelMicrometres) + " um";
    }
}
