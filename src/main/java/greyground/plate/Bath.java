package greyground.plate;

import greyground.plate.edge.Grid;
import greyground.quantity.Refusal;

/**
 * A bite in ferric chloride: how deep, and how far sideways under the resist.
 *
 * @param ratedMicrometresPerMinute depth rate of the fresh bath at its rated temperature and strength, 0.001 to 100; from a
 *     test strip
 * @param ratedCelsius temperature of that test, 0 to 60
 * @param temperatureCelsius temperature of this bite, 0 to 60
 * @param activationKilojoulesPerMole how steeply the rate rises with temperature, 0 to 100
 * @param ratedBaume strength of that test, degrees Baume (heavy, modulus 145), 10 to 50
 * @param strengthBaume strength of this bite, 10 to 50
 * @param ratePerBaume share by which one more degree changes the rate, -0.5 to 0.5; below 0 at studio strengths
 * @param copperGramsPerLitre copper dissolved in the bath by now, 0 to 200
 * @param spentCopperGramsPerLitre at which the bath would stop, 1 to 300
 * @param etchFactor depth over undercut, 0.5 to 10
 * @param minutes bitten so far, 0 to 1000
 */
public record Bath(
        double ratedMicrometresPerMinute,
        double ratedCelsius,
        double temperatureCelsius,
        double activationKilojoulesPerMole,
        double ratedBaume,
        double strengthBaume,
        double ratePerBaume,
        double copperGramsPerLitre,
        double spentCopperGramsPerLitre,
        double etchFactor,
        double minutes)
        implements Wells {
    // CODATA 2018, exact since the 2019 SI.
    private static final double GAS_CONSTANT = 8.31446261815324;
    private static final double KELVIN_AT_ZERO_CELSIUS = 273.15;

    public Bath {
        Refusal.checkRange("bite rate", ratedMicrometresPerMinute, 0.001, 100, "µm/min", "a still tray gives 0.8 to 2");
        Refusal.checkRange("rated bath temperature", ratedCelsius, 0, 60, "C", "give that of the test strip");
        Refusal.checkRange("bath temperature", temperatureCelsius, 0, 60, "C", "20 to 25 C is usual");
        Refusal.checkRange("activation energy", activationKilojoulesPerMole, 0, 100, "kJ/mol", "10 to 60, start at 35");
        Refusal.checkRange("rated bath strength", ratedBaume, 10, 50, "degrees Baume", "give that of the test strip");
        Refusal.checkRange("bath strength", strengthBaume, 10, 50, "degrees Baume", "40 to 42 is usual");
        Refusal.checkRange("rate per degree Baume", ratePerBaume, -0.5, 0.5, "", "-0.05 is 5 % slower a degree");
        Refusal.checkRange("copper in the bath", copperGramsPerLitre, 0, 200, "g/L", "change the bath at about 50");
        Refusal.checkRange("copper of a spent bath", spentCopperGramsPerLitre, 1, 300, "g/L", "about 100");
        Refusal.checkRange("etch factor", etchFactor, 0.5, 10, "", "1 to 2 in a still tray, 1.5 to 3.5 sprayed");
        Refusal.checkRange("bite", minutes, 0, 1000, "min", "10 to 40 min is usual");
    }

    /** A bite of known depth, whatever bath made it: 1 um/min at rated conditions for {@code depthMicrometres} minutes. */
    public static Bath ofDepth(double depthMicrometres, double etchFactor) {
        return new Bath(1, 20, 20, 35, 42, 42, 0, 0, 100, etchFactor, depthMicrometres);
    }

    /** The same bath for another time. */
    public Bath withMinutes(double otherMinutes) {
        return new Bath(
                ratedMicrometresPerMinute,
                ratedCelsius,
                temperatureCelsius,
                activationKilojoulesPerMole,
                ratedBaume,
                strengthBaume,
                ratePerBaume,
                copperGramsPerLitre,
                spentCopperGramsPerLitre,
                etchFactor,
                otherMinutes);
    }

    /**
     * Depth rate of this bite: Arrhenius in temperature, exponential in strength over a few degrees, falling evenly to
     * nothing as copper fills the bath. Bryce and Berk 1995 find a maximum near 2 mol/kg, below every studio strength, so
     * more Baume bites slower there; how much is the shop's own figure.
     */
    public double micrometresPerMinute() {
        double warmth = activationKilojoulesPerMole
                * 1000
                / GAS_CONSTANT
                * (1 / (ratedCelsius + KELVIN_AT_ZERO_CELSIUS) - 1 / (temperatureCelsius + KELVIN_AT_ZERO_CELSIUS));
        double strength = StrictMath.log1p(ratePerBaume) * (strengthBaume - ratedBaume);
        double fresh = Math.max(0, 1 - copperGramsPerLitre / spentCopperGramsPerLitre);
        return ratedMicrometresPerMinute * StrictMath.exp(warmth + strength) * fresh;
    }

    /** Depth of open copper, h. */
    public double depthMicrometres() {
        return micrometresPerMinute() * minutes;
    }

    /** How far the bite reaches under the resist, u = h / F (etch factor: Allen, Horne and Stevens 1982). */
    public double undercutMicrometres() {
        return depthMicrometres() / etchFactor;
    }

    /** Floor depth at a distance beyond the mask's edge: a quarter ellipse, {@code h sqrt(1 - (d/u)^2)} up to u, then 0. */
    public double floorMicrometres(double beyondEdgeMicrometres) {
        double share = beyondEdgeMicrometres / undercutMicrometres();
        return share < 1 ? depthMicrometres() * Math.sqrt(1 - share * share) : 0;
    }

    /**
     * Copper bitten away at each pixel. Where a land's copper is left narrower than the resist can hold, the resist has let
     * go before the end and its top sinks for the time that remained, F (u + hold/2 - d).
     *
     * @param beyondEdge distance of each place from the nearest open copper, in micrometres, 0 where it is open
     * @param leastHoldMicrometres width of copper below which resist lets go
     * @return micrometres below the plate's surface
     */
    float[] depth(float[] beyondEdge, double leastHoldMicrometres, Grid grid) {
        float[] depth = beyondEdge.clone();
        double undercut = undercutMicrometres();
        float full = (float) depthMicrometres();
        boolean[] left = new boolean[depth.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = depth[i] > undercut;
        }
        boolean[] held = left;
        if (leastHoldMicrometres > grid.pitchMicrometres()) {
            held = left.clone();
            float[] inside = new float[depth.length];
            for (int i = 0; i < inside.length; i++) {
                inside[i] = (float) (depth[i] - undercut);
            }
            Openness.shutNarrow(held, true, inside, leastHoldMicrometres, grid);
        }
        for (int i = 0; i < depth.length; i++) {
            double beyond = depth[i];
            if (beyond == 0) {
                depth[i] = full;
            } else if (!left[i]) {
                depth[i] = (float) floorMicrometres(beyond);
            } else if (!held[i]) {
                double sunk = etchFactor * (undercut + leastHoldMicrometres / 2 - beyond);
                depth[i] = (float) Math.max(0, Math.min(full, sunk));
            } else {
                depth[i] = 0;
            }
        }
        return depth;
    }
}
