package greyground.quantity;

/**
 * The values that a number may have: said once, beside what it guards, for constructors, files, options and rows of the window.
 *
 * @param least in the unit that the number is kept in
 * @param most the same
 * @param unit how people read it
 * @param remedy what is usual or where to look, as a refusal ends
 */
public record Range(double least, double most, Unit unit, String remedy) {
    /** Returns {@code value} if it lies within, else refuses, naming it by {@code what}, with both ends. */
    public double check(String what, double value) {
        Refusal.checkRange(
                what,
                unit.shown(value, false),
                unit.shown(least, false),
                unit.shown(most, false),
                unit == Unit.DEGREES ? unit.typed() : unit.symbol(false),
                remedy);
        return value;
    }

    /** Both ends with their unit, such as "0 to 6 mm". */
    public String words(boolean inches) {
        String symbol = unit.symbol(inches);
        return unit.words(least, inches) + " to " + unit.words(most, inches) + (symbol.isEmpty() ? "" : " " + symbol);
    }
}
