package greyground.quantity;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number and a unit, as people type them: the one parser behind {@link Lengths}, {@link Durations} and every {@link Unit}.
 * A decimal comma is taken as a point; a space before the unit and the case of its letters do not matter.
 *
 * @param number as typed, with its sign
 * @param unit in lower case, empty when none was typed
 */
record Measure(double number, String unit) {
    // Nine digits before the point reach far past any plate; longer runs are typing slips and would only overflow.
    private static final Pattern SHAPE =
            Pattern.compile("([+\\-−]?)([0-9]{1,9}(?:[.,][0-9]*)?|[.,][0-9]+)\\s*([^0-9\\s.,+\\-−][^0-9]*)?");
    private static final int SHOWN_CHARACTERS = 40;

    /**
     * Reads a measure, or refuses.
     *
     * @param what the trade's name of the quantity
     * @param kind what was expected, with its article, for example "a length"
     * @param remedy how to write one, for example "write a number and a unit, such as 25mm"
     */
    static Measure parse(String what, String text, String kind, String remedy) {
        Matcher matcher = SHAPE.matcher(text.strip());
        if (!matcher.matches()) {
            throw Refusal.use(what + " " + quoted(text) + " is not " + kind + ": " + remedy);
        }
        double size = Double.parseDouble(matcher.group(2).replace(',', '.'));
        double number = matcher.group(1).isEmpty() || matcher.group(1).equals("+") ? size : -size;
        String unit = matcher.group(3) == null ? "" : matcher.group(3).strip();
        return new Measure(number, unit.toLowerCase(Locale.ROOT));
    }

    /**
     * The number in the unit whose scale is 1.
     *
     * @param scales from unit to factor; an entry under "" makes the unit optional
     */
    double in(Map<String, Double> scales, String what, String text, String units) {
        Double scale = scales.get(unit);
        if (scale == null) {
            String fault = unit.isEmpty() ? "has no unit" : "has the unknown unit " + quoted(unit);
            throw Refusal.use(what + " " + quoted(text) + " " + fault + ": add " + units);
        }
        return number * scale;
    }

    /** What was typed, in quotes and cut short, so that a pasted page cannot fill the message. */
    static String quoted(String text) {
        String line = text.strip();
        return line.length() <= SHOWN_CHARACTERS
                ? "\"" + line + "\""
                : "\"" + line.substring(0, SHOWN_CHARACTERS) + "...\"";
    }

    /**
     * Splits a pair at its comma or semicolon. A comma between two digits is a decimal comma, so the first value must end in
     * its unit.
     *
     * @return two texts, or one when there is nothing to split
     */
    static String[] pair(String text) {
        return text.split("\\s*;\\s*|(?<=[^0-9\\s])\\s*,\\s*", 2);
    }
}
