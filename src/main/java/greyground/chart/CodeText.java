package greyground.chart;

import greyground.quantity.Refusal;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.zip.CRC32;

/**
 * What a corner code says: all of a recipe, the chart's id and the code's own place, in {@value #LENGTH} capital letters and digits,
 * as many as the code holds. Numbers are written to the base 36.
 *
 * <p>GG1, kind (1), width (5), height (5), bevel (3), seed (4), code coverage and module (2), id (5), place (1).
 * Coverage in percent and module share a number: coverage + 100 x (steps of the module above the least).
 *
 * @param recipe of the plate
 * @param id of its layout, so that a program that lays it out otherwise notices
 * @param place of the code on the plate
 */
public record CodeText(Recipe recipe, String id, int place) {
    /** Characters. */
    public static final int LENGTH = 29;

    /** How every one begins. */
    public static final String START = "GG1";

    private static final int ID_LENGTH = 5;
    private static final int BASE = 36;
    private static final int HUNDRED = 100;
    private static final Pattern SHAPE = Pattern.compile("GG1[FSECI][0-9A-Z]{24}[0-9]");

    /** Whether a text found in a scan looks like one of ours. */
    public static boolean isOurs(String text) {
        return SHAPE.matcher(text).matches();
    }

    /** Reads a code's text. */
    public static CodeText read(String text) {
        if (!isOurs(text)) {
            String shown = text.length() > 60 ? text.substring(0, 60) + "..." : text;
            throw Refusal.use("the code says \"" + shown.replaceAll("\\p{Cntrl}", "?") + "\"; a test plate's code is "
                    + START + " and " + (LENGTH - START.length()) + " capital letters and digits: scan a test plate");
        }
        Recipe.Kind kind = Recipe.Kind.FULL;
        for (Recipe.Kind each : Recipe.Kind.values()) {
            kind = each.letter() == text.charAt(3) ? each : kind;
        }
        int codes = number(text, 21, 23);
        Recipe recipe = new Recipe(
                kind,
                number(text, 4, 9),
                number(text, 9, 14),
                number(text, 14, 17),
                number(text, 17, 21),
                codes % HUNDRED,
                Recipe.LEAST_MODULE + codes / HUNDRED * Recipe.MODULE_STEP);
        return new CodeText(recipe, text.substring(23, 28), text.charAt(28) - '0');
    }

    /** The text itself. */
    public String text() {
        return START
                + recipe.kind().letter()
                + digits(recipe.widthMicrometres(), 5)
                + digits(recipe.heightMicrometres(), 5)
                + digits(recipe.bevelMicrometres(), 3)
                + digits(recipe.seed(), 4)
                + digits(recipe.codePercent() + HUNDRED * moduleSteps(), 2)
                + id
                + place;
    }

    private int moduleSteps() {
        return (recipe.codeModuleMicrometres() - Recipe.LEAST_MODULE) / Recipe.MODULE_STEP;
    }

    /** The id of a layout spelled out: a check sum to the base 36 (CRC-32 of ISO/IEC 3309, as the platform gives it). */
    static String idOf(String layout) {
        CRC32 sum = new CRC32();
        sum.update(layout.getBytes(StandardCharsets.UTF_8));
        return digits(sum.getValue() % (long) StrictMath.pow(BASE, ID_LENGTH), ID_LENGTH);
    }

    private static int number(String text, int from, int to) {
        return Integer.parseInt(text.substring(from, to), BASE);
    }

    private static String digits(long number, int length) {
        String figures = Long.toString(number, BASE).toUpperCase(Locale.ROOT);
        return "0".repeat(length - figures.length()) + figures;
    }
}
