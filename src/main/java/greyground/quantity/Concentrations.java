package greyground.quantity;

import java.util.Map;

/** Reads what is dissolved in a bath: {@code "20g/L"}, {@code "20 g/l"}. A bare number is refused. */
public final class Concentrations {
    private static final Map<String, Double> GRAMS_PER_LITRE = Map.of("g/l", 1.0, "mg/l", 1e-3);

    private Concentrations() {}

    /**
     * Reads grams to the litre.
     *
     * @param what the trade's name of the thing measured, used when refusing
     * @return 0 to 1000
     */
    public static double parseGramsPerLitre(String what, String text) {
        double grams = Measure.parse(what, text, "a concentration", "write a number and g/L, such as 20g/L")
                .in(GRAMS_PER_LITRE, what, text, "g/L");
        return Refusal.checkRange(what, grams, 0, 1000, "g/L", "check the number and its unit");
    }
}
