package greyground.desk.model;

import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.Locale;

/** Sentences as the window says them. */
public final class DeskWords {
    private DeskWords() {}

    /** A finding as it stands in a list: with a capital. */
    public static String of(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** The same as a whole sentence: with a capital and a stop. */
    public static String sentence(String words) {
        String begun = of(words.strip());
        return begun.isEmpty() || begun.matches("(?s).*[.?!:]") ? begun : begun + ".";
    }

    /** A place that is pointed at: of the art in its pixels, else in millimetres or inches. */
    public static String place(Station station, double x, double y, boolean inches) {
        return station == Station.ART ? String.format(Locale.ROOT, "%.0f, %.0f px", x, y) : lengths(inches, ", ", x, y);
    }

    /** A length in millimetres as the window measures now, such as "30.0 mm". */
    public static String length(double millimetres, boolean inches) {
        return String.format(
                Locale.ROOT,
                inches ? "%.3f %s" : "%.1f %s",
                Unit.MILLIMETRES.shown(millimetres, inches),
                Unit.MILLIMETRES.symbol(inches));
    }

    /** Two lengths in millimetres as the window measures now, such as "30.0, 20.0 mm". */
    public static String lengths(boolean inches, String between, double one, double other) {
        String each = inches ? "%.3f" : "%.1f";
        return String.format(
                Locale.ROOT,
                each + between + each + " %s",
                Unit.MILLIMETRES.shown(one, inches),
                Unit.MILLIMETRES.shown(other, inches),
                Unit.MILLIMETRES.symbol(inches));
    }

    /**
     * Why work came to nothing, in one line.
     *
     * @param what was to be made, such as "film"
     */
    public static String fault(Throwable failed, String what) {
        return failed instanceof Refusal refusal
                ? String.valueOf(refusal.getMessage())
                : failed instanceof OutOfMemoryError
                        ? "there is not enough memory for this " + what + ": give Java more (-Xmx2g)"
                        : "an unforeseen fault; the " + what + " is not finished, please report what you did";
    }
}
