package greyground.desk.model;

import greyground.quantity.Refusal;
import java.util.Locale;

/** Sentences that were written for a terminal, as the window says them. */
public final class DeskWords {
    private DeskWords() {}

    /** A number or a name of the plan, with the micro sign. */
    public static String value(String words) {
        return words.replaceAll("(?<=[0-9]) um\\b", " \u00b5m");
    }

    /** With the window's own ways in place of a command's options, and the micro sign. */
    public static String of(String words) {
        String told = value(words)
                .replace("or use --fit whole", "or show it whole (Film, Picture)")
                .replace("greyground plan with --search-exposure looks", "'greyground plan --search-exposure' looks");
        return told.isEmpty() ? told : told.substring(0, 1).toUpperCase(Locale.ROOT) + told.substring(1);
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
