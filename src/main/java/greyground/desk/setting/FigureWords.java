package greyground.desk.setting;

import greyground.quantity.Unit;
import java.util.Locale;

/**
 * A number of the workshop as its station names it.
 *
 * @param label its name
 * @param unit what it counts
 */
public record FigureWords(String label, Unit unit) {
    /** A number that no station sets, but a test plate tells. */
    private static final String GAIN = "ink.yuleNielsenFactor";

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
                .orElseGet(() -> new FigureWords(path.equals(GAIN) ? "Optical gain" : spoken(path), Unit.RATIO));
    }

    /** What no station shows: its last name, in words. */
    private static String spoken(String path) {
        String name = path.substring(path.lastIndexOf('.') + 1).replaceAll("([A-Z])", " $1");
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1).toLowerCase(Locale.ROOT);
    }

    public String value(double value) {
        return unit.words(value, false);
    }

    public String withUnit(double value) {
        String symbol = unit.symbol(false);
        return value(value) + (symbol.isEmpty() ? "" : " " + symbol);
    }
}
