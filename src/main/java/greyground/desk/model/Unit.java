package greyground.desk.model;

/** What a setting counts, and how it is shown where people measure in inches. Values are kept metric. */
public enum Unit {
    MILLIMETRES("mm", 2, "in", 1 / 25.4, 3),
    MICROMETRES("µm", 1),
    LINES("lines/cm", 1, "lines/in", 2.54, 1),
    DOTS("dpi", 0),
    PERCENT("%", 1),
    DEGREES("°", 2),
    SECONDS("s", 1),
    MINUTES("min", 1),
    CELSIUS("°C", 1),
    BAUME("°Bé", 1),
    GRAMS("g/L", 1),
    RATE("µm/min", 2),
    DENSITY("D", 2),
    STEPS("steps", 0),
    RATIO("", 2),
    PER_MICROMETRE("per µm", 3),
    COUNT("", 0);

    private final String symbol;
    private final int decimals;
    private final String inchSymbol;
    private final double perMetric;
    private final int inchDecimals;

    Unit(String symbol, int decimals) {
        this(symbol, decimals, symbol, 1, decimals);
    }

    Unit(String symbol, int decimals, String inchSymbol, double perMetric, int inchDecimals) {
        this.symbol = symbol;
        this.decimals = decimals;
        this.inchSymbol = inchSymbol;
        this.perMetric = perMetric;
        this.inchDecimals = inchDecimals;
    }

    public String symbol(boolean inches) {
        return inches ? inchSymbol : symbol;
    }

    public double shown(double metric, boolean inches) {
        return inches ? metric * perMetric : metric;
    }

    public double metric(double shown, boolean inches) {
        return inches ? shown / perMetric : shown;
    }

    /** A value as it is read, without its unit. */
    public String words(double metric, boolean inches) {
        int places = inches ? inchDecimals : decimals;
        String text = String.format(java.util.Locale.ROOT, "%." + places + "f", shown(metric, inches));
        String plain = places > 0 ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
        return plain.equals("-0") ? "0" : plain;
    }
}
