package greyground.plan;

import greyground.quantity.Refusal;
import greyground.workshop.BathFigures;
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
    public Bite {
        if (!(copperAtStart < copperLimit)) {
            throw Refusal.use("bath holds " + Refusal.plain(copperAtStart) + " g/L copper; it must lie between 0 and "
                    + Refusal.plain(copperLimit) + " g/L, where the bite stops: make a fresh bath");
        }
    }

    /** The bite of the requested plate in the workshop's bath as it stands. */
    public static Bite of(Workshop workshop, PlanRequest request) {
        BathFigures bath = workshop.bath();
        double warmth = BathArithmetic.temperatureFactor(
                bath.rateTemperatureCelsius().value(),
                bath.temperatureCelsius().value(),
                bath.activationKilojoulesPerMole().value());
        double perMicrometre = BathArithmetic.copperGrams(request.plateSquareCentimetres(), request.openShare(), 1)
                / bath.litres().value();
        return new Bite(
                bath.rateMicrometresPerMinute().value() * warmth,
                bath.copperGramsPerLitre().value(),
                bath.copperLimitGramsPerLitre().value(),
                perMicrometre,
                bath.etchFactor().value());
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
}
