package greyground.plan;

import greyground.quantity.Refusal;

/**
 * How light on the plate changes with distance, place, age and what lies in between. Each method gives the factor by which a
 * found exposure time is multiplied, or the light that is left.
 */
public final class Lamp {
    private Lamp() {}

    /**
     * Inverse square law: (now / then)^2. Holds for a source small against its distance, not for tubes nearer than about
     * their own length.
     */
    public static double distanceFactor(double thenMillimetres, double nowMillimetres) {
        double ratio = nowMillimetres / thenMillimetres;
        return ratio * ratio;
    }

    /** Light left at an age: I0 exp(-t / tau), with tau from the hours after which 80 % is left. */
    public static double lightLeft(double hours, double hoursToFourFifths) {
        return StrictMath.exp(-hours / decayHours(hoursToFourFifths));
    }

    /** Time constant tau = hours / ln(1 / 0.8). */
    public static double decayHours(double hoursToFourFifths) {
        Refusal.checkRange("hours to 80 % light", hoursToFourFifths, 1, 1_000_000, "h", "ask the lamp's data sheet");
        return hoursToFourFifths / StrictMath.log(1 / 0.8);
    }

    /** Factor for a lamp that was {@code hoursThen} old when the exposure was found and is {@code hoursNow} old. */
    public static double ageingFactor(double hoursThen, double hoursNow, double hoursToFourFifths) {
        return lightLeft(hoursThen, hoursToFourFifths) / lightLeft(hoursNow, hoursToFourFifths);
    }

    /** Factor for printing through film, glass or cover sheet of the stated ultraviolet density: 10^D. */
    public static double baseFactor(double uvDensity) {
        return StrictMath.pow(10, uvDensity);
    }
}
