package greyground.quantity;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A request that can't be met, said in one line for the person who asked: what, the value, the allowed range, what to do.
 *
 * <p>It is the only exception that carries words for the user; every layer throws it and only the surfaces ({@code cli},
 * {@code desk}) catch it. {@link Kind#USE} means the request itself is wrong (exit status 2), {@link Kind#FAILURE} that the
 * request was sound and the work failed (exit status 1).
 */
public final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Who can mend it: the person who typed the request, or whatever stands outside the program. */
    public enum Kind {
        /** The request is wrong: an unknown word, a value out of range, two options that exclude each other. */
        USE,
        /** The request is sound, but a file, a disk or the art stands in the way. */
        FAILURE
    }

    private final Kind kind;

    private Refusal(Kind kind, String message, @Nullable Throwable cause) {
        super(message.replaceAll("\\s*[\\r\\n]+\\s*", " "), cause, true, true);
        this.kind = kind;
    }

    /** Says that the request is wrong. {@code message} is one line, without a full stop needed. */
    public static Refusal use(String message) {
        return new Refusal(Kind.USE, message, null);
    }

    /** Says that the work failed. */
    public static Refusal failure(String message) {
        return new Refusal(Kind.FAILURE, message, null);
    }

    /** Says that the work failed because of {@code cause}, which is kept for whoever debugs, never shown. */
    public static Refusal failure(String message, Throwable cause) {
        return new Refusal(Kind.FAILURE, message, cause);
    }

    /**
     * Returns {@code value} if it lies in [least, most], else refuses with all four numbers.
     *
     * @param what the trade's name of the quantity, for example "plate width"
     * @param unit the unit as printed, for example "mm"; empty for a pure number
     * @param remedy what to do, for example "give the plate's own size"
     */
    public static double checkRange(String what, double value, double least, double most, String unit, String remedy) {
        if (value >= least && value <= most) {
            return value;
        }
        String gap = unit.isEmpty() ? "" : " " + unit;
        throw use(what + " is " + plain(value) + gap + "; it must lie between " + plain(least) + " and " + plain(most)
                + gap + ": " + remedy);
    }

    /** Prints a number as a person would write it: at most four decimals, none that say nothing. */
    public static String plain(double value) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        String text = String.format(Locale.ROOT, "%.4f", value);
        return text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    public Kind kind() {
        return kind;
    }
}
