package greyground.quantity;

import java.util.Map;

/**
 * Reads lengths as people type them: a number and a unit of {@code mm}, {@code cm}, {@code in}, {@code µm} or {@code um}.
 * A decimal comma is taken as a point. A bare number is refused: a plate of "200" could be millimetres or inches.
 */
public final class Lengths {
    /** One inch in millimetres, exact by the international yard and pound agreement of 1959. */
    public static final double MILLIMETRES_PER_INCH = 25.4;

    /** User units of a page in an inch (ISO 32000-1:2008, 8.3.2.3: 1/72 inch by default). */
    public static final double POINTS_PER_INCH = 72;

    private static final double LONGEST_MILLIMETRES = 1_000_000;
    private static final String UNITS = "mm, cm, in or µm";
    // Two characters look like the micro sign: U+00B5 and the Greek letter U+03BC; keyboards give either.
    private static final Map<String, Double> MILLIMETRES_PER_UNIT = Map.ofEntries(
            Map.entry("mm", 1.0),
            Map.entry("cm", 10.0),
            Map.entry("m", 1000.0),
            Map.entry("in", MILLIMETRES_PER_INCH),
            Map.entry("inch", MILLIMETRES_PER_INCH),
            Map.entry("inches", MILLIMETRES_PER_INCH),
            Map.entry("\"", MILLIMETRES_PER_INCH),
            Map.entry("um", 1e-3),
            Map.entry("\u00b5m", 1e-3),
            Map.entry("\u03bcm", 1e-3));

    private Lengths() {}

    /**
     * Reads one length, for example {@code "12.5mm"} or {@code "0,5 in"}.
     *
     * @param what the trade's name of the length, used when refusing
     * @return millimetres, 0 to 1 000 000
     */
    public static double parseMillimetres(String what, String text) {
        double millimetres = parseSignedMillimetres(what, text);
        if (millimetres < 0) {
            throw Refusal.use(what + " " + Measure.quoted(text) + " is negative; it must be 0 or more: drop the minus");
        }
        return millimetres;
    }

    /**
     * Reads one length that may point either way, for example {@code "-3mm"}.
     *
     * @return millimetres, -1 000 000 to 1 000 000
     */
    public static double parseSignedMillimetres(String what, String text) {
        Measure measure =
                Measure.parse(what, text, "a length", "write a number and a unit, such as 25mm, 2.5cm, 1in or 180um");
        double millimetres = measure.in(MILLIMETRES_PER_UNIT, what, text, UNITS);
        return Refusal.checkRange(
                what, millimetres, -LONGEST_MILLIMETRES, LONGEST_MILLIMETRES, "mm", "check the number and its unit");
    }

    /** Reads one length, for example {@code "180um"}, as micrometres, not negative. */
    public static double parseMicrometres(String what, String text) {
        return parseMillimetres(what, text) * 1000;
    }
}
