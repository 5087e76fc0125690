package greyground.plan;

/**
 * How deep a resist hardens: Cd = Dp ln(E / Ec) (Jacobs 1992, as given by Gibson, Rosen and Stucker, Additive Manufacturing
 * Technologies, chapter 4). Light falls off in the film as 10^(-A z / h) (Beer and Lambert). An inter-laboratory study
 * (PMC10986335) found Dp to vary sevenfold and Ec seventyfold for one resin: fit them in the shop.
 *
 * @param penetrationMicrometres Dp, depth at which 1/e of the light is left, above 0
 * @param criticalDose Ec, dose that just hardens, above 0
 */
public record WorkingCurve(double penetrationMicrometres, double criticalDose) {
    /** Dp = h / (A ln 10) for a film of decadic absorbance A over thickness h. */
    public static WorkingCurve ofFilm(double thicknessMicrometres, double absorbance, double criticalDose) {
        return new WorkingCurve(thicknessMicrometres / (absorbance * Math.log(10)), criticalDose);
    }

    /** Hardened depth in micrometres, 0 below the critical dose. */
    public double hardenedMicrometres(double dose) {
        return Math.max(0, penetrationMicrometres * Math.log(dose / criticalDose));
    }

    /** Dose on the film's face that hardens it down to the copper. */
    public double doseToCopper(double thicknessMicrometres) {
        return criticalDose * Math.exp(thicknessMicrometres / penetrationMicrometres);
    }
}
