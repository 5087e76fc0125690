package greyground.quantity;

/** Reads temperatures of baths and rooms: {@code "20C"}, {@code "20 °C"}, {@code "68F"}. A bare number is refused. */
public final class Temperatures {
    private Temperatures() {}

    /**
     * Reads a temperature.
     *
     * @param what the trade's name of the thing measured, used when refusing
     * @return degrees Celsius, -20 to 150
     */
    public static double parseCelsius(String what, String text) {
        Measure measure = Measure.parse(what, text, "a temperature", "write a number and C or F, such as 20C or 68F");
        double celsius = switch (measure.unit()) {
            case "c", "°c", "° c", "degc", "celsius" -> measure.number();
            case "f", "°f", "° f", "degf", "fahrenheit" -> (measure.number() - 32) * 5 / 9;
            default ->
                throw Refusal.use(what + " " + Measure.quoted(text) + " "
                        + (measure.unit().isEmpty()
                                ? "has no unit"
                                : "has the unknown unit " + Measure.quoted(measure.unit()))
                        + ": add C or F");
        };
        return Refusal.checkRange(what, celsius, -20, 150, "°C", "check the number and its unit");
    }
}
