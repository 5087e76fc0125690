package greyground.quantity;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** What a number counts: how it is shown, also where people measure in inches, and how it is typed. Values are kept metric. */
@SuppressWarnings("ImmutableEnumChecker") // ways of reading hold nothing that changes
public enum Unit {
    MILLIMETRES("mm", 2, Lengths::parseSignedMillimetres, "in", 1 / Lengths.MILLIMETRES_PER_INCH, 3),
    MICROMETRES("\u00b5m", 1, (what, text) -> Lengths.parseSignedMillimetres(what, text) * 1000),
    LINES(
            "lines/cm",
            1,
            (what, text) -> Ruling.parse(what, text).linesPerCentimetre(),
            "lines/in",
            Lengths.MILLIMETRES_PER_INCH / 10,
            1),
    DOTS("dpi", 0, (what, text) -> Resolution.parse(what, text).dotsPerInch()),
    PERCENT("%", 1, Percents::read),
    /** A fraction, 0 to 1, that people read in percent. */
    SHARE("%", 1, (what, text) -> Percents.read(what, text) / 100, "%", 100, 1),
    DEGREES("\u00b0", 2, Angles::parseDegrees),
    SECONDS("s", 1, Durations::parseSeconds),
    MINUTES("min", 1, (what, text) -> Durations.parseSeconds(what, text) / 60),
    CELSIUS("\u00b0C", 1, Temperatures::parseCelsius),
    BAUME("\u00b0B\u00e9", 1),
    GRAMS("g/L", 1, Concentrations::parseGramsPerLitre),
    RATE("\u00b5m/min", 2),
    DENSITY("D", 2),
    STEPS("steps", 0),
    RATIO("", 2),
    PER_MICROMETRE("per \u00b5m", 3),
    COUNT("", 0);

    private static final Pattern BARE = Pattern.compile("\\s*[+\\-\u2212]?[0-9.,]+\\s*");

    private final String symbol;
    private final int decimals;
    private final Typed typed;
    private final String inchSymbol;
    private final double perInchKept;
    private final int inchDecimals;

    /** Reads a number with its unit, or refuses. */
    @FunctionalInterface
    private interface Typed {
        double read(String what, String text);
    }

    Unit(String symbol, int decimals) {
        this(symbol, decimals, (what, text) -> plain(symbol, what, text));
    }

    Unit(String symbol, int decimals, Typed typed) {
        this(symbol, decimals, typed, symbol, 1, decimals);
    }

    Unit(String symbol, int decimals, Typed typed, String inchSymbol, double perInchKept, int inchDecimals) {
        this.symbol = symbol;
        this.decimals = decimals;
        this.typed = typed;
        this.inchSymbol = inchSymbol;
        this.perInchKept = perInchKept;
        this.inchDecimals = inchDecimals;
    }

    private static double plain(String symbol, String what, String text) {
        return Measure.parse(what, text, "a number", "write digits")
                .in(Map.of("", 1.0, symbol.toLowerCase(Locale.ROOT), 1.0), what, text, symbol + ", or nothing");
    }

    private static boolean bare(String text) {
        return BARE.matcher(text).matches();
    }

    public String symbol(boolean inches) {
        return inches ? inchSymbol : symbol;
    }

    /** The symbol in ASCII, as it is typed and as a terminal shows it. */
    public String typed() {
        return this == DEGREES
                ? "degrees"
                : symbol.replace('\u00b5', 'u').replace("\u00b0", "").replace('\u00e9', 'e');
    }

    public double shown(double kept, boolean inches) {
        return inches || this == SHARE ? kept * perInchKept : kept;
    }

    public double metric(double shown, boolean inches) {
        return inches || this == SHARE ? shown / perInchKept : shown;
    }

    /** A value as it is read, without its unit. */
    public String words(double kept, boolean inches) {
        int places = inches ? inchDecimals : decimals;
        String text = String.format(Locale.ROOT, "%." + places + "f", shown(kept, inches));
        String plain = places > 0 ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
        return plain.equals("-0") ? "0" : plain;
    }

    /** A value as {@link #parse} reads it, to a ten-thousandth: "180um". */
    public String text(double kept) {
        return Refusal.plain(shown(kept, false)) + typed();
    }

    /**
     * Reads a value with its unit, such as "12in"; without one only where the trade knows but one unit.
     *
     * @param what the trade's name of the quantity, used when refusing
     */
    public double parse(String what, String text) {
        return typed.read(what, text);
    }

    /** The same beside a shown unit, which a number without one takes. */
    public double parse(String what, String text, boolean inches) {
        return bare(text)
                ? metric(Measure.parse(what, text, "a number", "write digits").number(), inches)
                : parse(what, text);
    }
}
