package greyground.plan;

/** What a ferric chloride bath does to copper in a given time: rate by temperature and copper load, copper dissolved. */
public final class BathArithmetic {
    /** Copper, g/cm3. */
    private static final double COPPER_GRAMS_PER_CUBIC_CENTIMETRE = 8.96;

    /** R in J/(mol K), exact since the SI of 2019: the product of the Avogadro and Boltzmann constants. */
    private static final double GAS_CONSTANT = 8.31446261815324;

    private static final double KELVIN_AT_ZERO_CELSIUS = 273.15;

    private BathArithmetic() {}

    /** How many times faster at {@code now} than at {@code then}: exp(Ea/R (1/Tthen - 1/Tnow)) (Arrhenius). */
    public static double temperatureFactor(double thenCelsius, double nowCelsius, double kilojoulesPerMole) {
        double then = 1 / (thenCelsius + KELVIN_AT_ZERO_CELSIUS);
        double now = 1 / (nowCelsius + KELVIN_AT_ZERO_CELSIUS);
        return StrictMath.exp(kilojoulesPerMole * 1000 / GAS_CONSTANT * (then - now));
    }

    /** Grams of copper that a bite takes: plate area x open share x depth x 8.96 g/cm3. */
    public static double copperGrams(double plateSquareCentimetres, double openShare, double depthMicrometres) {
        return plateSquareCentimetres * openShare * depthMicrometres * 1e-4 * COPPER_GRAMS_PER_CUBIC_CENTIMETRE;
    }
}
