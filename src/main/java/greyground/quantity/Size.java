package greyground.quantity;

import java.util.Optional;
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
    private static final Pattern SHEET = Pattern.compile("(?i)([AB])(10|[0-9])(?:\\s+(landscape))?");
    private static final Pattern UNIT = Pattern.compile(".*?([A-Za-zµμ\"]+)\\s*");

    private static final Range SIDE = new Range(0.01, 10_000, Unit.MILLIMETRES, "give the real size");

    public Size {
        SIDE.check("width", widthMillimetres);
        SIDE.check("height", heightMillimetres);
    }

    /**
     * Reads {@code "200x250mm"}, {@code "8 x 10 in"} or {@code "20cm x 250mm"}; a unit after the second number alone holds
     * for both. {@code "A5"} and {@code "B4 landscape"} are the sheets of ISO 216, upright unless told.
     *
     * @param what the trade's name of the size, used when refusing
     */
    public static Size parse(String what, String text) {
        Optional<Size> named = named(text);
        if (named.isPresent()) {
            return named.get();
        }
        Matcher pair = PAIR.matcher(text);
        if (!pair.matches()) {
            throw Refusal.use(what + " \"" + text
                    + "\" is not a size: write width x height and a unit, such as 200x250mm, 8x10in or A5");
        }
        String first = pair.group(1);
        Matcher unit = UNIT.matcher(pair.group(2));
        if (unit.matches() && !UNIT.matcher(first).matches()) {
            first += unit.group(1);
        }
        double width = Lengths.parseMillimetres(what + " width", first);
        double height = Lengths.parseMillimetres(what + " height", pair.group(2));
        SIDE.check(what + " width", width);
        SIDE.check(what + " height", height);
        return new Size(width, height);
    }

    /** A sheet by its name alone, such as "A5" or "B4 landscape"; empty for whatever else is typed. */
    public static Optional<Size> named(String text) {
        Matcher sheet = SHEET.matcher(text.strip());
        if (!sheet.matches()) {
            return Optional.empty();
        }
        Size upright = iso216(sheet.group(1), Integer.parseInt(sheet.group(2)));
        return Optional.of(sheet.group(3) == null ? upright : upright.turned());
    }

    /** A sheet of ISO 216:2007: A0 is 841 x 1189 mm, B0 1000 x 1414, and each next one half of it, rounded down to millimetres. */
    private static Size iso216(String series, int number) {
        boolean a = series.equalsIgnoreCase("A");
        int width = a ? 841 : 1000;
        int height = a ? 1189 : 1414;
        for (int i = 0; i < number; i++) {
            int half = height / 2;
            height = width;
            width = half;
        }
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
