package greyground.plan;

import greyground.quantity.Refusal;

/**
 * What a negative resist keeps after a dose: nothing up to the gel dose E0, everything from E100, in between a straight line in
 * log dose of slope gamma = 1 / log10(E100 / E0) (textbook contrast curve; IUPAC Recommendations 2020, Pure Appl. Chem. 92, 1861,
 * gives the same slope from the half-thickness dose).
 *
 * @param gelDose E0, any unit, above 0
 * @param throughCureDose E100, same unit, above E0
 */
public record ResistCurve(double gelDose, double throughCureDose) {
    public ResistCurve {
        if (!(gelDose > 0 && gelDose < throughCureDose && Double.isFinite(throughCureDose))) {
            throw Refusal.use("gel dose is " + gelDose + " and through-cure dose " + throughCureDose
                    + "; gel dose must lie between 0 and through-cure dose: correct the workshop's resist");
        }
    }

    /** Slope gamma. */
    public double gamma() {
        return 1 / Math.log10(throughCureDose / gelDose);
    }

    /** Share of the thickness that stays after a dose, 0 to 1. */
    public double retained(double dose) {
        return Math.min(1, Math.max(0, gamma() * Math.log10(dose / gelDose)));
    }

    /** Gamma from the dose that leaves half the thickness: 1 / (2 log10(E0.5 / E0)) (IUPAC 2020). */
    public static double gammaFromHalf(double gelDose, double halfDose) {
        return 1 / (2 * Math.log10(halfDose / gelDose));
    }

    /** Gamma from a wedge: 1 / (0.15 n), n = steps between the first clean one and the one fully held. */
    public static double gammaFromWedge(double stepsBetween) {
        return 1 / (StepWedge.DENSITY_PER_STEP * stepsBetween);
    }

    /**
     * Density over clear film that a black must have, so that the film under it washes out: the density of the step just held,
     * plus the whole contrast range 1 / gamma, plus a margin.
     */
    public static double requiredBlackDensity(double heldStepDensity, double gamma, double marginDensity) {
        return heldStepDensity + 1 / gamma + marginDensity;
    }
}
