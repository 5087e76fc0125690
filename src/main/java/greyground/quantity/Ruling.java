package greyground.quantity;

import java.util.Map;

/**
 * How fine a halftone is.
 *
 * @param linesPerCentimetre 5 to 400
 */
public record Ruling(double linesPerCentimetre) {
    /** Rulings that a film carries. */
    public static final Range LINES = new Range(5, 400, Unit.LINES, "copper and film carry 20 to 110 lines/cm");

    public Ruling {
        LINES.check("halftone ruling", linesPerCentimetre);
    }

    private static final Map<String, Double> PER_CENTIMETRE = Map.ofEntries(
            Map.entry("", 1.0),
            Map.entry("/cm", 1.0),
            Map.entry("l/cm", 1.0),
            Map.entry("lpc", 1.0),
            Map.entry("lines/cm", 1.0),
            Map.entry("/in", 1 / 2.54),
            Map.entry("lpi", 1 / 2.54),
            Map.entry("lines/in", 1 / 2.54));

    /**
     * Reads {@code "60"}, {@code "60 lines/cm"} or {@code "150 lpi"}; a bare number is lines per centimetre.
     *
     * @param what the trade's name of the ruling, used when refusing
     */
    public static Ruling parse(String what, String text) {
        return new Ruling(Measure.parse(what, text, "a ruling", "write lines per centimetre, such as 60, or 150lpi")
                .in(PER_CENTIMETRE, what, text, "lines/cm or lpi"));
    }

    /** Distance of neighbouring dots, 10 000 / ruling micrometres. */
    public double pitchMicrometres() {
        return 10_000 / linesPerCentimetre;
    }
}
