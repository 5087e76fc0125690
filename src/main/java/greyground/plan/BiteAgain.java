package greyground.plan;

import greyground.workshop.Workshop;

/**
 * How much longer after a proof. The proof says how deep the plate is; depth over the depth that the bath should have reached in
 * that time says how this bath really bites; and the rest of the way is planned at that rate, in the bath as it is now.
 *
 * @param minutesSoFar in the bath until the proof
 * @param depthMicrometres that the proof measured
 * @param wantedMicrometres depth wanted
 * @param rateOverPlan depth reached over the depth that the workshop's numbers predicted for that time
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
        Bite.SO_FAR.check("minutes bitten so far", minutesSoFar);
        Bite.PROVED.check("depth at the proof", depthMicrometres);
        Bite.WANTED.check("wanted depth", wantedMicrometres);
        double rate =
                depthMicrometres / Bite.of(then, request, depthMicrometres).depthAfter(minutesSoFar);
        Bite bath = Bite.of(now, request, wantedMicrometres).faster(rate);
        double more = Math.max(0, wantedMicrometres - depthMicrometres);
        return new BiteAgain(
                minutesSoFar, depthMicrometres, wantedMicrometres, rate, bath, more == 0 ? 0 : bath.minutesTo(more));
    }
}
