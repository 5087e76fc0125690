package greyground.tone;

/**
 * Stray light in a scanner or eye: a reading is R' = (1 - f) R + f Rbar, where Rbar is the mean reflectance of what
 * surrounds the patch. With f = 0.01 and white surroundings no reading passes density 2.
 *
 * @param fraction f, 0 to below 1
 * @param surround Rbar, 0 to 1
 */
public record Flare(double fraction, double surround) {
    /** Density that is read for a true density. */
    public double readDensity(double trueDensity) {
        double reading = (1 - fraction) * StrictMath.pow(10, -trueDensity) + fraction * surround;
        return -StrictMath.log10(reading);
    }

    /** True density of a reading; not a number where the reading is darker than flare allows. */
    public double trueDensity(double readDensity) {
        double light = (StrictMath.pow(10, -readDensity) - fraction * surround) / (1 - fraction);
        return light > 0 ? -StrictMath.log10(light) : Double.NaN;
    }
}
