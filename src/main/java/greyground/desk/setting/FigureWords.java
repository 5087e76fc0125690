package greyground.desk.setting;

import greyground.quantity.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A number of the workshop as its station names it.
 *
 * @param label its name
 * @param unit what it counts
 */
public record FigureWords(String label, Unit unit) {
    /** A number that no station sets, but a test plate tells. */
    private static final String GAIN = "ink.yuleNielsenFactor";

    /** How the names of numbers end in a file, and what such a number counts; of two that fit the longer stands first. */
    private static final List<Map.Entry<String, Unit>> ENDS = List.of(
            Map.entry("MicrometresPerMinute", Unit.RATE),
            Map.entry("PerMicrometre", Unit.PER_MICROMETRE),
            Map.entry("GramsPerLitre", Unit.GRAMS),
            Map.entry("DegreesBaume", Unit.BAUME),
            Map.entry("Micrometres", Unit.MICROMETRES),
            Map.entry("Millimetres", Unit.MILLIMETRES),
            Map.entry("Celsius", Unit.CELSIUS),
            Map.entry("Degrees", Unit.DEGREES),
            Map.entry("Seconds", Unit.SECONDS),
            Map.entry("Minutes", Unit.MINUTES),
            Map.entry("Density", Unit.DENSITY),
            Map.entry("Percent", Unit.PERCENT));

    /**
     * Finds the name of a number.
     *
     * @param path in the workshop's file, such as "bath.etchFactor"
     */
    public static FigureWords of(String path) {
        return ShopSettings.ALL.stream()
                .filter(number -> number.path().equals(path))
                .findFirst()
                .map(number -> new FigureWords(number.label(), number.range().unit()))
                .orElseGet(() -> path.equals(GAIN) ? new FigureWords("Optical gain", Unit.RATIO) : spoken(path));
    }

    /** What no station shows: its last name in words, of which the end may be the unit. */
    private static FigureWords spoken(String path) {
        String name = path.substring(path.lastIndexOf('.') + 1);
        Unit unit = Unit.RATIO;
        for (Map.Entry<String, Unit> end : ENDS) {
            if (name.endsWith(end.getKey())) {
                unit = end.getValue();
                name = name.substring(0, name.length() - end.getKey().length());
                break;
            }
        }
        String words = name.replaceAll("([A-Z])", " $1");
        return new FigureWords(
                words.substring(0, 1).toUpperCase(Locale.ROOT)
                        + words.substring(1).toLowerCase(Locale.ROOT),
                unit);
    }

    public String value(double value) {
        return unit.words(value, false);
    }

    public String withUnit(double value) {
        String symbol = unit.symbol(false);
        return value(value) + (symbol.isEmpty() ? "" : " " + symbol);
    }
}
