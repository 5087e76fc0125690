package greyground.quantity;

import java.util.Map;

/**
 * Optical density, D = -log10 T (transmittance) or -log10 R (reflectance factor); functional notation of ISO 5-1:2009.
 *
 * <p>Densities of stacked sheets add as their transmittances multiply (no light between the sheets; good to about 0.02 for
 * ink on clear film, common practice).
 *
 * @param optical 0 (lets all light through) to 10
 */
public record Density(double optical) {
    /** One step of the usual 21-step wedge; its exposure ratio is 10^0.15 = 1.412538, not quite the square root of 2. */
    public static final double PER_WEDGE_STEP = 0.15;

    /** One stop: log10 2. */
    public static final double PER_STOP = StrictMath.log10(2);

    private static final Map<String, Double> OPTICAL_PER_UNIT = Map.of(
            "", 1.0, "d", 1.0, "stop", PER_STOP, "stops", PER_STOP, "step", PER_WEDGE_STEP, "steps", PER_WEDGE_STEP);

    public Density {
        Refusal.checkRange("density", optical, 0, 10, "D", "films reach 4.5, prints 2.2");
    }

    /**
     * Reads {@code "1.35"}, {@code "1.35 D"}, {@code "4.5 stops"} or {@code "9 steps"} (of 0.15).
     *
     * @param what the trade's name of the thing measured, used when refusing
     */
    public static Density parse(String what, String text) {
        double optical = Measure.parse(what, text, "a density", "write a number, such as 1.35 or 4.5stops")
                .in(OPTICAL_PER_UNIT, what, text, "D, stops or steps, or nothing for density");
        return new Density(Refusal.checkRange(what, optical, 0, 10, "D", "films reach 4.5, prints 2.2"));
    }

    @Override
    public String toString() {
        return Refusal.plain(optical) + " D";
    }
}
