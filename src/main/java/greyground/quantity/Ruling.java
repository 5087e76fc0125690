package greyground.quantity;

/**
 * How fine a halftone is.
 *
 * @param linesPerCentimetre 5 to 400
 */
public record Ruling(double linesPerCentimetre) {
    public Ruling {
        Refusal.checkRange(
                "halftone ruling", linesPerCentimetre, 5, 400, "lines/cm", "copper and film carry 20 to 110 lines/cm");
    }

    /** Distance of neighbouring dots, 10 000 / ruling micrometres. */
    public double pitchMicrometres() {
        return 10_000 / linesPerCentimetre;
    }
}
