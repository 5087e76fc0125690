package greyground.plate;

import greyground.plate.edge.DoseEdge;
import greyground.plate.edge.EdgeDistance;
import greyground.plate.edge.Grid;
import greyground.quantity.Refusal;

/**
 * The photopolymer film on the copper. Light hardens it from the top; what is not hardened through to the copper lifts.
 *
 * @param thicknessMicrometres as exposed, after any thinning, 1 to 200
 * @param testedThicknessMicrometres at which a dose ratio of 1 just hardens through, 1 to 200
 * @param absorbancePerMicrometre decadic, in the lamp's light, 0 to 0.5
 * @param contrastGamma retained thickness per decade of dose, 0.2 to 50
 * @param smallestOpeningMicrometres width below which an opening doesn't wash out, 0 to 500
 * @param smallestLandMicrometres width below which hardened film washes away, 0 to 500
 * @param leastHoldMicrometres width of copper below which a land's resist lets go in the bite, 0 to 100
 */
public record Resist(
        double thicknessMicrometres,
        double testedThicknessMicrometres,
        double absorbancePerMicrometre,
        double contrastGamma,
        double smallestOpeningMicrometres,
        double smallestLandMicrometres,
        double leastHoldMicrometres) {
    public Resist {
        Refusal.checkRange("resist thickness", thicknessMicrometres, 1, 200, "µm", "dry film is 15 to 50 µm");
        Refusal.checkRange("tested thickness", testedThicknessMicrometres, 1, 200, "µm", "give that of the wedge test");
        Refusal.checkRange("resist absorbance", absorbancePerMicrometre, 0, 0.5, "per µm", "0.4 over 30 µm is 0.0133");
        Refusal.checkRange("resist contrast", contrastGamma, 0.2, 50, "", "1 / (0.15 x steps between clean and held)");
        Refusal.checkRange(
                "smallest opening", smallestOpeningMicrometres, 0, 500, "µm", "read it from a test of holes");
        Refusal.checkRange("smallest land", smallestLandMicrometres, 0, 500, "µm", "read it from a test of dots");
        Refusal.checkRange("least hold", leastHoldMicrometres, 0, 100, "µm", "5 to 10 µm is usual");
    }

    /**
     * Dose ratio that hardens this thickness through to the copper: by Beer's law the bottom gets 10^-A of the top, so
     * thinning from h to h' lowers the dose by 10^(a (h - h')).
     */
    public double throughCureDoseRatio() {
        return StrictMath.pow(10, absorbancePerMicrometre * (thicknessMicrometres - testedThicknessMicrometres));
    }

    /** Share of thickness kept after developing, {@code clamp(1 + gamma log10(E / E100), 0, 1)}; E100 hardens through. */
    public double retained(double doseRatio) {
        if (!(doseRatio > 0)) {
            return 0;
        }
        double kept = 1 + contrastGamma * StrictMath.log10(doseRatio / throughCureDoseRatio());
        return Math.max(0, Math.min(1, kept));
    }

    /**
     * What stands on the copper after developing: hardened through, less what development can't keep.
     *
     * @param edge of the dose that hardens through
     * @return true where resist holds
     */
    boolean[] developed(DoseEdge edge, Grid grid) {
        boolean[] hard = new boolean[grid.area()];
        for (int i = 0; i < hard.length; i++) {
            hard[i] = edge.reached(i);
        }
        if (smallestOpeningMicrometres > grid.pitchMicrometres()) {
            float[] inside = EdgeDistance.micrometres(hard, true, edge, grid, smallestOpeningMicrometres / 2);
            Openness.shutNarrow(hard, false, inside, smallestOpeningMicrometres, grid);
        }
        if (smallestLandMicrometres > grid.pitchMicrometres()) {
            float[] inside = EdgeDistance.micrometres(hard, false, edge, grid, smallestLandMicrometres / 2);
            Openness.shutNarrow(hard, true, inside, smallestLandMicrometres, grid);
        }
        return hard;
    }

    /** The same film with another least width of openings and of lands. */
    public Resist withSmallest(double openingMicrometres, double landMicrometres) {
        return new Resist(
                thicknessMicrometres,
                testedThicknessMicrometres,
                absorbancePerMicrometre,
                contrastGamma,
                openingMicrometres,
                landMicrometres,
                leastHoldMicrometres);
    }
}
