package greyground.quantity;

import java.util.Map;

/** Reads shares written in percent. The sign must be typed: "0.7" could be seven tenths or seven thousandths. */
public final class Percents {
    private static final Map<String, Double> PERCENT_PER_UNIT = Map.of("%", 1.0, "percent", 1.0, "‰", 0.1);

    private Percents() {}

    /**
     * Reads a percentage.
     *
     * @param what the trade's name of the share, used when refusing
     * @return percent, -100 to 100
     */
    public static double parsePercent(String what, String text) {
        return Refusal.checkRange(what, read(what, text), -100, 100, "%", "check the number");
    }

    /** The same for a share whose own range is checked where it is used. */
    static double read(String what, String text) {
        return Measure.parse(what, text, "a percentage", "write a number and %, such as 0.7%")
                .in(PERCENT_PER_UNIT, what, text, "%");
    }
}
