package greyground.plate;

import greyground.quantity.Refusal;

/**
 * The lamp as the resist sees it through the gap between ink and resist.
 *
 * @param gapMicrometres distance of the ink from the resist, 0 to 2000: a cover sheet when the ink is down, base and cover
 *     when it is up
 * @param halfAngleDegrees half the angle that the lamp fills, 0 to 80
 * @param refractiveIndex of what fills the gap, 1 (air) to 2
 */
public record Light(double gapMicrometres, double halfAngleDegrees, double refractiveIndex) {
    public Light {
        Refusal.checkRange("contact gap", gapMicrometres, 0, 2000, "µm", "about 20 µm with the ink side down");
        Refusal.checkRange("lamp half angle", halfAngleDegrees, 0, 80, "degrees", "10 degrees is a good point source");
        Refusal.checkRange("refractive index", refractiveIndex, 1, 2, "", "1 for air, about 1.65 for polyester film");
    }

    /** Full width B of the half-shadow of a straight edge: {@code 2 g tan(t)}, {@code sin t = sin(theta) / n} (Snell). */
    public double penumbraMicrometres() {
        double inside = StrictMath.asin(StrictMath.sin(StrictMath.toRadians(halfAngleDegrees)) / refractiveIndex);
        return 2 * gapMicrometres * StrictMath.tan(inside);
    }

    /**
     * Standard deviation of the Gaussian that stands for the half-shadow: B / sqrt(12), that of a lamp whose edge shadow is
     * a straight ramp of width B. A round, evenly bright lamp would have B / 4; a bank of tubes is nearer the ramp one way
     * and has no bound the other, so one round Gaussian serves all.
     */
    public double blurMicrometres() {
        return penumbraMicrometres() / Math.sqrt(12);
    }
}
