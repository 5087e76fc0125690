package greyground.quantity;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A flat rectangle's size, for plates, sheets and paper.
 *
 * @param widthMillimetres across, above 0 and at most 10 000
 * @param heightMillimetres down, above 0 and at most 10 000
 */
public record Size(double widthMillimetres, double heightMillimetres) {
    private static final Pattern PAIR = Pattern.compile("(.+?)\\s*[xX×]\\s*(.+)");
    private static final Pattern UNIT = Pattern.compile(".*?([A-Za-zµμ\"]+)\\s*");

    public Size {
        Refusal.checkRange("width", widthMillimetres, 0.01, 10_000, "mm", "give the real size");
        Refusal.checkRange("height", heightMillimetres, 0.01, 10_000, "mm", "give the real size");
    }

    /**
     * Reads {@code "200x250mm"}, {@code "8 x 10 in"} or {@code "20cm x 250mm"}; a unit after the second number alone holds
     * for both.
     *
     * @param what the trade's name of the size, used when refusing
     */
    public static Size parse(String what, String text) {
        Matcher pair = PAIR.matcher(text);
        if (!pair.matches()) {
            throw Refusal.use(what + " \"" + text
                    + "\" is not a size: write width x height and a unit, such as 200x250mm or 8x10in");
        }
        String first = pair.group(1);
        Matcher unit = UNIT.matcher(pair.group(2));
        if (unit.matches() && !UNIT.matcher(first).matches()) {
            first += unit.group(1);
        }
        double width = Lengths.parseMillimetres(what + " width", first);
        double height = Lengths.parseMillimetres(what + " height", pair.group(2));
        Refusal.checkRange(what + " width", width, 0.01, 10_000, "mm", "give the real size");
        Refusal.checkRange(what + " height", height, 0.01, 10_000, "mm", "give the real size");
        return new Size(width, height);
    }

    /** The same rectangle on its side. */
    public Size turned() {
        return new Size(heightMillimetres, widthMillimetres);
    }

    @Override
    public String toString() {
        return Refusal.plain(widthMillimetres) + " x " + Refusal.plain(heightMillimetres) + " mm";
    }
}
