package greyground.quantity;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads lengths as people type them: a number and a unit of {@code mm}, {@code cm}, {@code in}, {@code µm} or {@code um}.
 * A decimal comma is taken as a point. A bare number is refused: a plate of "200" could be millimetres or inches.
 */
public final class Lengths {
    /** One inch in millimetres, exact by the international yard and pound agreement of 1959. */
    public static final double MILLIMETRES_PER_INCH = 25.4;

    private static final Pattern LENGTH =
            Pattern.compile("\\s*([0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)\\s*([A-Za-zµμ\"]*)\\s*");
    private static final Map<String, Double> MILLIMETRES_PER_UNIT = Map.of(
            "mm",
            1.0,
            "cm",
            10.0,
            "in",
            MILLIMETRES_PER_INCH,
            "\"",
            MILLIMETRES_PER_INCH,
            "um",
            1e-3,
            "µm",
            1e-3,
            "μm",
            1e-3);

    private Lengths() {}

    /**
     * Reads one length, for example {@code "12.5mm"} or {@code "0,5 in"}.
     *
     * @param what the trade's name of the length, used when refusing
     * @return millimetres, not negative
     */
    public static double parseMillimetres(String what, String text) {
        Matcher matcher = LENGTH.matcher(text);
        if (!matcher.matches()) {
            throw Refusal.use(what + " \"" + text
                    + "\" is not a length: write a number and a unit, such as 25mm, 2.5cm, 1in or 180um");
        }
        String unit = matcher.group(2).toLowerCase(Locale.ROOT);
        Double scale = MILLIMETRES_PER_UNIT.get(unit);
        if (scale == null) {
            String fault = unit.isEmpty() ? "has no unit" : "has the unknown unit \"" + matcher.group(2) + "\"";
            throw Refusal.use(what + " \"" + text + "\" " + fault + ": add mm, cm, in or um");
        }
        return Double.parseDouble(matcher.group(1).replace(',', '.')) * scale;
    }
}
