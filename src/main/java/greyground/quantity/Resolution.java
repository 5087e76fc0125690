package greyground.quantity;

/**
 * How finely a film printer lays its dots, the same in both directions.
 *
 * @param dotsPerInch 60 to 20 000
 */
public record Resolution(double dotsPerInch) {
    public Resolution {
        Refusal.checkRange(
                "film resolution", dotsPerInch, 60, 20_000, "dpi", "give the printer's own resolution, such as 1440");
    }

    /** Centre-to-centre distance of film pixels, 25 400 / dpi micrometres. */
    public double pitchMicrometres() {
        return 25_400 / dotsPerInch;
    }

    /** The nearest whole number of film pixels to a length. */
    public int pixels(double millimetres) {
        return Math.toIntExact(Math.round(millimetres * dotsPerInch / Lengths.MILLIMETRES_PER_INCH));
    }

    /** The length that a number of film pixels covers. */
    public double millimetres(double pixels) {
        return pixels * Lengths.MILLIMETRES_PER_INCH / dotsPerInch;
    }
}
