package greyground.film.sheet;

import greyground.quantity.Refusal;
import java.util.Locale;

/**
 * A sheet of paper or film in a printer, standing upright, and the part of it that the printer reaches. Millimetres.
 *
 * @param name as the printer calls it
 * @param printableLeft from the paper's left edge
 * @param printableTop from its upper edge
 */
public record PrintPaper(
        String name,
        double width,
        double height,
        double printableLeft,
        double printableTop,
        double printableWidth,
        double printableHeight) {
    public PrintPaper {
        if (!(width > 0 && height > 0 && printableWidth > 0 && printableHeight > 0)) {
            throw Refusal.use("paper " + name + " measures " + width + " x " + height
                    + " mm, of which nothing can be printed: choose another");
        }
    }

    /** The printable part in words, the paper's name last. */
    public String reach() {
        return String.format(Locale.ROOT, "%.1f x %.1f mm of %s", printableWidth, printableHeight, name);
    }
}
