package greyground.quantity;

import java.util.Map;

/**
 * How finely a film printer lays its dots, the same in both directions.
 *
 * @param dotsPerInch 60 to 20 000
 */
public record Resolution(double dotsPerInch) {
    /** Resolutions of film printers. */
    public static final Range DOTS =
            new Range(60, 20_000, Unit.DOTS, "give the printer's own resolution, such as 1440");

    public Resolution {
        DOTS.check("film resolution", dotsPerInch);
    }

    private static final Map<String, Double> PER_INCH =
            Map.of("", 1.0, "dpi", 1.0, "ppi", 1.0, "dots/in", 1.0, "dots/cm", 2.54, "dpcm", 2.54);

    /**
     * Reads {@code "1440"}, {@code "1440dpi"} or {@code "567 dots/cm"}; a bare number is dots per inch.
     *
     * @param what the trade's name of the resolution, used when refusing
     */
    public static Resolution parse(String what, String text) {
        return new Resolution(Measure.parse(what, text, "a resolution", "write dots per inch, such as 1440 or 1440dpi")
                .in(PER_INCH, what, text, "dpi or dots/cm, or nothing for dpi"));
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
