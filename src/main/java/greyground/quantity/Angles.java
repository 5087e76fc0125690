package greyground.quantity;

import java.util.Map;

/** Reads angles: {@code "45"}, {@code "45°"}, {@code "-7.5 deg"}. A bare number is degrees; the trade uses nothing else. */
public final class Angles {
    private static final Map<String, Double> DEGREES_PER_UNIT =
            Map.of("", 1.0, "°", 1.0, "deg", 1.0, "degree", 1.0, "degrees", 1.0);

    private Angles() {}

    /**
     * Reads an angle.
     *
     * @param what the trade's name of the angle, used when refusing
     * @return degrees, -360 to 360
     */
    public static double parseDegrees(String what, String text) {
        double degrees = Measure.parse(what, text, "an angle", "write degrees, such as 45 or 7.5deg")
                .in(DEGREES_PER_UNIT, what, text, "deg, or nothing");
        return Refusal.checkRange(what, degrees, -360, 360, "degrees", "one turn is enough");
    }
}
