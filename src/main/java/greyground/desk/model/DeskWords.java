package greyground.desk.model;

import greyground.quantity.Refusal;
import java.util.Locale;

/** Sentences as the window says them. */
public final class DeskWords {
    private DeskWords() {}

    /** A finding as it stands in a list: with a capital. */
    public static String of(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
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
