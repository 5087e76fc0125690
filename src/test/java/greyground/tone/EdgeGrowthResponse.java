package greyground.tone;

import greyground.quantity.Refusal;

/**
 * A plate known only by how far its edges move: film coverage grows by the edge shift ({@link DotGrowth}), the grown area
 * prints with optical gain ({@link ToneValue}), and the density becomes lightness ({@link Lightness}).
 *
 * <p>Two limits are given and not derived: openings below the least coverage do not wash out and print as bare paper, and
 * past the ceiling open bite begins, where this law has nothing to say and holds the ceiling's tone.
 *
 * @param growth the pattern on the film
 * @param edgeShiftMicrometres of bite, film printer, exposure and ink together, -200 to 200, outwards positive
 * @param opticalGain Yule-Nielsen n, 1 to 4
 * @param paperDensity of bare paper, 0 to 0.5
 * @param solidDensity of full ink at the ceiling's depth, above the paper's, at most 3
 * @param leastCoverage smallest film coverage that washes out and bites, 0 to below the ceiling
 * @param ceilingCoverage film coverage past which the bite is open, at most 1
 */
public record EdgeGrowthResponse(
        DotGrowth growth,
        double edgeShiftMicrometres,
        double opticalGain,
        double paperDensity,
        double solidDensity,
        double leastCoverage,
        double ceilingCoverage)
        implements PlateResponse {
    public EdgeGrowthResponse {
        Refusal.checkRange(
                "edge shift", edgeShiftMicrometres, -200, 200, "um", "5 to 30 is usual; measure a test plate");
        Refusal.checkRange("optical gain n", opticalGain, 1, 4, "", "1.7 when nothing is known");
        Refusal.checkRange("paper density", paperDensity, 0, 0.5, "D", "0.03 to 0.1 is usual");
        Refusal.checkRange("solid ink density", solidDensity, paperDensity + 0.1, 3, "D", "1.3 to 1.9 is usual");
        Refusal.checkRange("least coverage", leastCoverage, 0, 0.9, "", "0.01 to 0.05 is usual");
        Refusal.checkRange(
                "open-bite ceiling",
                ceilingCoverage,
                leastCoverage + 0.05,
                1,
                "",
                "0.8 to 0.9 is usual without aquatint");
    }

    @Override
    public double lightness(double coverage) {
        if (coverage <= 0 || coverage < leastCoverage) {
            return Lightness.ofDensity(paperDensity);
        }
        double area = growth.grown(Math.min(coverage, ceilingCoverage), edgeShiftMicrometres);
        return Lightness.ofDensity(ToneValue.density(area, paperDensity, solidDensity, opticalGain));
    }

    /** From the least coverage to the ceiling, or to where growth has already closed every land, whichever is first. */
    @Override
    public UsableCoverage usable() {
        double low = leastCoverage;
        double high = ceilingCoverage;
        double full = growth.grown(high, edgeShiftMicrometres);
        for (int i = 0; i < 60 && growth.grown(low, edgeShiftMicrometres) < full; i++) {
            double middle = (low + high) / 2;
            if (growth.grown(middle, edgeShiftMicrometres) < full) {
                low = middle;
            } else {
                high = middle;
            }
        }
        if (high - leastCoverage < 0.01) {
            throw Refusal.use("an edge shift of " + Refusal.plain(edgeShiftMicrometres) + " um closes every land of "
                    + growth.name() + "; it must leave some open: choose a coarser grain or bite less");
        }
        return new UsableCoverage(leastCoverage, high);
    }

    @Override
    public String name() {
        return "edge growth " + Refusal.plain(edgeShiftMicrometres) + " um, n " + Refusal.plain(opticalGain);
    }
}
