package greyground.plan;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import greyground.workshop.BathFigures;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;

/**
 * How one plate goes down in one bath while the copper it loses slows the bath. With rate v0 (1 - Cu / limit) and copper rising by
 * k g/L for each micrometre, depth is h(t) = (room / k)(1 - exp(-v0 k t / limit)), room = limit - copper at the start: the solution
 * of dh/dt = v0 (room - k h) / limit. The straight-line slowing is from memory.
 *
 * @param freshRate micrometres per minute of a fresh bath at this temperature, above 0
 * @param copperAtStart g/L
 * @param copperLimit g/L at which the bite stops, above {@code copperAtStart}
 * @param copperPerMicrometre g/L that the bath gains for each micrometre of depth, 0 or more
 * @param etchFactor depth over undercut
 */
public record Bite(
        double freshRate, double copperAtStart, double copperLimit, double copperPerMicrometre, double etchFactor) {
    /** Minutes in the bath until a proof, all bites together. */
    public static final Range SO_FAR = new Range(0.1, 10_000, Unit.MINUTES, "add up the bite log");

    /** Depths that are asked for. */
    public static final Range WANTED = new Range(0.5, 300, Unit.MICROMETRES, "20 to 50 µm is a deep aquatint");

    /** Depths that plate or proof may show. */
    public static final Range PROVED = new Range(0.1, 1000, Unit.MICROMETRES, "measure it in a wide bar's edge");

    /** R in J/(mol K), exact since the SI of 2019: the product of the Avogadro and Boltzmann constants. */
    private static final double GAS_CONSTANT = 8.31446261815324;

    private static final double KELVIN_AT_ZERO_CELSIUS = 273.15;

    public Bite {
        if (!(copperAtStart < copperLimit)) {
            throw Refusal.use("bath holds " + Refusal.plain(copperAtStart) + " g/L copper; it must lie between 0 and "
                    + Refusal.plain(copperLimit) + " g/L, where the bite stops: make a fresh bath");
        }
    }

    /** The bite of the requested plate in the workshop's bath as it stands, to the workshop's usual depth. */
    public static Bite of(Workshop workshop, PlanRequest request) {
        return of(workshop, request, workshop.usualDepthMicrometres());
    }

    /**
     * The same to another depth. On the way there copper is taken as evenly as that depth takes it in all.
     *
     * @param depthMicrometres wanted, or reached
     */
    public static Bite of(Workshop workshop, PlanRequest request, double depthMicrometres) {
        BathFigures bath = workshop.bath();
        double warmth = temperatureFactor(
                bath.rateTemperatureCelsius().value(),
                bath.temperatureCelsius().value(),
                bath.activationKilojoulesPerMole().value());
        double perMicrometre = CopperLoss.grams(
                        request.plateSquareCentimetres(), request.loss().takenAt(depthMicrometres))
                / bath.litres().value();
        return new Bite(
                bath.rateMicrometresPerMinute().value() * warmth,
                bath.copperGramsPerLitre().value(),
                bath.copperLimitGramsPerLitre().value(),
                perMicrometre,
                bath.etchFactor().value());
    }

    /** The same bath that bites so many times as fast. */
    Bite faster(double times) {
        return new Bite(freshRate * times, copperAtStart, copperLimit, copperPerMicrometre, etchFactor);
    }

    /**
     * A workshop whose bath holds what it held before and what a plate has given it since.
     *
     * @param then the workshop before the plate's first bite
     * @param now the same with the bath as it is otherwise
     */
    public static Workshop after(Workshop then, Workshop now, PlanRequest request, double depthMicrometres) {
        return now.with(
                "bath.copperGramsPerLitre",
                Figure.assumed(
                        of(then, request, depthMicrometres).copperAfter(depthMicrometres),
                        "before the first bite, and what this plate has given it since"));
    }

    /** Rate as the plate goes in, micrometres per minute. */
    public double rateAtStart() {
        return freshRate * (copperLimit - copperAtStart) / copperLimit;
    }

    /** Depth in micrometres after minutes in the bath. */
    public double depthAfter(double minutes) {
        double x = freshRate * copperPerMicrometre * minutes / copperLimit;
        // (1 - exp(-x)) / x tends to 1; below this the quotient would lose digits.
        double slowing = x < 1e-9 ? 1 : -StrictMath.expm1(-x) / x;
        return rateAtStart() * minutes * slowing;
    }

    /** Minutes to a depth; refuses a depth that this bath can't reach before its copper stops it. */
    public double minutesTo(double depthMicrometres) {
        double x = copperPerMicrometre * depthMicrometres / (copperLimit - copperAtStart);
        if (!(x < 1)) {
            throw Refusal.use("wanted depth is " + Refusal.plain(depthMicrometres)
                    + " µm; in this bath it must lie between 0 and "
                    + Refusal.plain((copperLimit - copperAtStart) / copperPerMicrometre)
                    + " µm, where its copper stops it: use more litres or a fresh bath");
        }
        double slowing = x < 1e-9 ? 1 : -StrictMath.log1p(-x) / x;
        return depthMicrometres / rateAtStart() * slowing;
    }

    /** Copper in the bath after a depth, g/L. */
    public double copperAfter(double depthMicrometres) {
        return copperAtStart + copperPerMicrometre * depthMicrometres;
    }

    /** How far the bath creeps under each edge at a depth, micrometres. */
    public double undercut(double depthMicrometres) {
        return depthMicrometres / etchFactor;
    }

    /** How many times faster at {@code now} than at {@code then}: exp(Ea/R (1/Tthen - 1/Tnow)) (Arrhenius). */
    static double temperatureFactor(double thenCelsius, double nowCelsius, double kilojoulesPerMole) {
        double then = 1 / (thenCelsius + KELVIN_AT_ZERO_CELSIUS);
        double now = 1 / (nowCelsius + KELVIN_AT_ZERO_CELSIUS);
        return StrictMath.exp(kilojoulesPerMole * 1000 / GAS_CONSTANT * (then - now));
    }
}
