package greyground.plan;

/** What a ferric chloride bath does to copper in a given time: rate by temperature and copper load, copper dissolved. */
public final class BathArithmetic {
    /** Copper, g/cm3. */
    private static final double COPPER_GRAMS_PER_CUBIC_CENTIMETRE = 8.96;

    /** R in J/(mol K), exact since the SI of 2019: the product of the Avogadro and Boltzmann constants. */
    private static final double GAS_CONSTANT = 8.31446261815324;

    private static final double KELVIN_AT_ZERO_CELSIUS = 273.15;

    private BathArithmetic() {}

    /**
     * Rate in micrometres per minute from a rate constant in mg Cu kg H2O / (cm2 s mol) and a molality: 600 000 k m / 8960. Bryce
     * and Berk 1995 found k = 0.2039, 0.3083, 0.3362 at 30, 40, 50 C in a stirred bath, valid below about 1 mol/kg; studio baths are
     * three to four times stronger and slower than this line says.
     */
    public static double diluteRate(double rateConstant, double molesPerKilogramOfWater) {
        return 600_000 * rateConstant * molesPerKilogramOfWater / (COPPER_GRAMS_PER_CUBIC_CENTIMETRE * 1000);
    }

    /** How many times faster at {@code now} than at {@code then}: exp(Ea/R (1/Tthen - 1/Tnow)) (Arrhenius). */
    public static double temperatureFactor(double thenCelsius, double nowCelsius, double kilojoulesPerMole) {
        double then = 1 / (thenCelsius + KELVIN_AT_ZERO_CELSIUS);
        double now = 1 / (nowCelsius + KELVIN_AT_ZERO_CELSIUS);
        return Math.exp(kilojoulesPerMole * 1000 / GAS_CONSTANT * (then - now));
    }

    /**
     * Activation energy in kJ/mol by least squares of ln rate against 1/T.
     *
     * @param celsius two temperatures or more, not all the same
     * @param rates one for each, any unit, above 0
     */
    public static double activationKilojoulesPerMole(double[] celsius, double[] rates) {
        double meanInverse = 0;
        double meanLog = 0;
        for (int i = 0; i < celsius.length; i++) {
            meanInverse += 1 / (celsius[i] + KELVIN_AT_ZERO_CELSIUS) / celsius.length;
            meanLog += Math.log(rates[i]) / celsius.length;
        }
        double covariance = 0;
        double variance = 0;
        for (int i = 0; i < celsius.length; i++) {
            double inverse = 1 / (celsius[i] + KELVIN_AT_ZERO_CELSIUS) - meanInverse;
            covariance += inverse * (Math.log(rates[i]) - meanLog);
            variance += inverse * inverse;
        }
        return -covariance / variance * GAS_CONSTANT / 1000;
    }

    /**
     * How fast a used bath bites against a fresh one: 1 - Cu / limit, not below 0. A straight line from memory, in keeping with an
     * etch-machine maker's advice to change the bath at 50 g/L, when the time has doubled.
     */
    public static double copperFactor(double copperGramsPerLitre, double limitGramsPerLitre) {
        return Math.max(0, 1 - copperGramsPerLitre / limitGramsPerLitre);
    }

    /** Grams of copper that a bite takes: plate area x open share x depth x 8.96 g/cm3. */
    public static double copperGrams(double plateSquareCentimetres, double openShare, double depthMicrometres) {
        return plateSquareCentimetres * openShare * depthMicrometres * 1e-4 * COPPER_GRAMS_PER_CUBIC_CENTIMETRE;
    }

    /** Depth over undercut (etch factor, Allen, Horne and Stevens 1982) gives the opening's width after the bite: w0 + 2 h / F. */
    public static double openingAfterBite(double openingMicrometres, double depthMicrometres, double etchFactor) {
        return openingMicrometres + 2 * depthMicrometres / etchFactor;
    }

    /** What is left of a land: L - 2 h / F; zero or less means that it is gone. */
    public static double landAfterBite(double landMicrometres, double depthMicrometres, double etchFactor) {
        return landMicrometres - 2 * depthMicrometres / etchFactor;
    }

    /** Deepest bite that leaves {@code leastLand} of a land: F (L - Lmin) / 2, not below 0. */
    public static double deepestBite(double landMicrometres, double leastLandMicrometres, double etchFactor) {
        return Math.max(0, etchFactor * (landMicrometres - leastLandMicrometres) / 2);
    }
}
