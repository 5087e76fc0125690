package greyground.plan;

import greyground.quantity.Refusal;
import greyground.workshop.Workshop;

/**
 * How much longer after a proof. The proof says how deep the plate is; depth over the depth that the bath should have reached in
 * that time says how this bath really bites; and the rest of the way is planned at that rate, in the bath as it is now.
 *
 * @param minutesSoFar in the bath until the proof
 * @param depthMicrometres that the proof measured
 * @param wantedMicrometres depth wanted
 * @param rateOverPlan depth reached over the depth that the workshop's numbers foretold for that time
 * @param bath the bath as it is now, at the rate found
 * @param minutesMore that reach the wanted depth; 0 when the plate is deep enough
 */
public record BiteAgain(
        double minutesSoFar,
        double depthMicrometres,
        double wantedMicrometres,
        double rateOverPlan,
        Bite bath,
        double minutesMore) {
    /**
     * Plans the second bite.
     *
     * @param then the workshop as it was for the first bite: its copper is what the bath held before
     * @param now the workshop with the bath's present temperature and copper
     * @param minutesSoFar 0.1 to 10 000
     * @param depthMicrometres measured on plate or proof, 0.1 to 1000
     * @param wantedMicrometres 0.5 to 300
     */
    public static BiteAgain of(
            Workshop then,
            Workshop now,
            PlanRequest request,
            double minutesSoFar,
            double depthMicrometres,
            double wantedMicrometres) {
        Refusal.checkRange("minutes bitten so far", minutesSoFar, 0.1, 10_000, "min", "add up the bite log");
        Refusal.checkRange("depth at the proof", depthMicrometres, 0.1, 1000, "µm", "measure it in a wide bar's edge");
        Refusal.checkRange("wanted depth", wantedMicrometres, 0.5, 300, "µm", "20 to 50 µm is a deep aquatint");
        double rate = depthMicrometres / Bite.of(then, request).depthAfter(minutesSoFar);
        Bite planned = Bite.of(now, request);
        Bite bath = new Bite(
                planned.freshRate() * rate,
                planned.copperAtStart(),
                planned.copperLimit(),
                planned.copperPerMicrometre(),
                planned.etchFactor());
        double more = Math.max(0, wantedMicrometres - depthMicrometres);
        return new BiteAgain(
                minutesSoFar, depthMicrometres, wantedMicrometres, rate, bath, more == 0 ? 0 : bath.minutesTo(more));
    }

    /** Copper in the bath after the first bite, in grams to the litre: what it held and what this plate gave it. */
    public static double copperAfterFirst(Workshop then, PlanRequest request, double depthMicrometres) {
        return Bite.of(then, request).copperAfter(depthMicrometres);
    }

    /** Depth that a solid of the stated density on the proof tells, paper included. */
    public static double depthOfProof(Workshop workshop, double solidDensity) {
        return BitePlan.depthFor(workshop, solidDensity);
    }
}
