package greyground.quantity;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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
    PERCENT("%", 1, Unit::percent),
    /** A fraction, 0 to 1, that people read in percent. */
    SHARE("%", 1, (what, text) -> percent(what, text) / 100, "%", 100, 1),
    DEGREES("\u00b0", 2, Unit::degrees),
    SECONDS("s", 1, Durations::parseSeconds),
    MINUTES("min", 1, (what, text) -> Durations.parseSeconds(what, text) / 60),
    CELSIUS("\u00b0C", 1, Unit::celsius),
    BAUME("\u00b0B\u00e9", 1),
    GRAMS("g/L", 1, Unit::grams),
    WEIGHT("g", 1),
    RATE("\u00b5m/min", 2),
    /** Optical density, D = -log10 T (transmittance) or -log10 R (reflectance factor); functional notation of ISO 5-1:2009. */
    DENSITY("D", 2, Unit::density),
    STEPS("steps", 0),
    /** CIE 1976 lightness. */
    LIGHTNESS("L*", 1),
    RATIO("", 2),
    PER_MICROMETRE("per \u00b5m", 3),
    COUNT("", 0);

    private static final Pattern BARE = Pattern.compile("\\s*[+\\-\u2212]?[0-9.,]+\\s*");

    private static final Map<String, Double> DEGREES_PER_UNIT =
            Map.of("", 1.0, "\u00b0", 1.0, "deg", 1.0, "degree", 1.0, "degrees", 1.0);
    private static final Map<String, Double> DEGREES_OF_HEAT = Stream.of(
                    "c", "\u00b0c", "\u00b0 c", "degc", "celsius", "f", "\u00b0f", "\u00b0 f", "degf", "fahrenheit")
            .collect(Collectors.toMap(unit -> unit, unit -> 1.0));
    private static final double STOP = StrictMath.log10(2);
    private static final Map<String, Double> DENSITY_PER_UNIT =
            Map.of("", 1.0, "d", 1.0, "stop", STOP, "stops", STOP, "step", 0.15, "steps", 0.15);

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
                .in(
                        symbol.isEmpty() ? Map.of("", 1.0) : Map.of("", 1.0, symbol.toLowerCase(Locale.ROOT), 1.0),
                        what,
                        text,
                        symbol.isEmpty() ? "nothing" : symbol + ", or nothing");
    }

    /** The sign must be typed, but for nothing: "0.7" could be seven tenths or seven thousandths. */
    private static double percent(String what, String text) {
        if (text.strip().equals("0")) {
            return 0;
        }
        return Measure.parse(what, text, "a percentage", "write a number and %, such as 0.7%")
                .in(Map.of("%", 1.0, "percent", 1.0, "\u2030", 0.1), what, text, "%");
    }

    /** A bare number is degrees; the trade uses nothing else. */
    private static double degrees(String what, String text) {
        double degrees = Measure.parse(what, text, "an angle", "write degrees, such as 45 or 7.5deg")
                .in(DEGREES_PER_UNIT, what, text, "deg, or nothing");
        return Refusal.checkRange(what, degrees, -360, 360, "degrees", "one turn is enough");
    }

    private static double celsius(String what, String text) {
        Measure measure = Measure.parse(what, text, "a temperature", "write a number and C or F, such as 20C or 68F");
        double number = measure.in(DEGREES_OF_HEAT, what, text, "C or F");
        double celsius = measure.unit().contains("f") ? (number - 32) * 5 / 9 : number;
        return Refusal.checkRange(what, celsius, -20, 150, "\u00b0C", "check the number and its unit");
    }

    private static double grams(String what, String text) {
        double grams = Measure.parse(what, text, "a concentration", "write a number and g/L, such as 20g/L")
                .in(Map.of("g/l", 1.0, "mg/l", 1e-3), what, text, "g/L");
        return Refusal.checkRange(what, grams, 0, 1000, "g/L", "check the number and its unit");
    }

    /** In stops (log10 2), or in steps of the usual 21-step wedge: 0.15, an exposure ratio of 10^0.15 = 1.412538. */
    private static double density(String what, String text) {
        return Measure.parse(what, text, "a density", "write a number, such as 1.35 or 4.5stops")
                .in(DENSITY_PER_UNIT, what, text, "D, stops or steps, or nothing for density");
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
