package greyground.plate;

import greyground.plate.edge.Grid;
import greyground.quantity.Refusal;

/**
 * A bite in ferric chloride: how deep, and how far sideways under the resist.
 *
 * @param depthMicrometres of open copper, h, 0 to 1000
 * @param etchFactor depth over undercut, 0.5 to 10
 */
public record Bath(double depthMicrometres, double etchFactor) implements Wells {
    public Bath {
        Refusal.checkRange("depth of the bite", depthMicrometres, 0, 1000, "µm", "20 to 50 is a deep aquatint");
        Refusal.checkRange("etch factor", etchFactor, 0.5, 10, "", "1 to 2 in a still tray, 1.5 to 3.5 sprayed");
    }

    /** How far the bite reaches under the resist, u = h / F (etch factor: Allen, Horne and Stevens 1982). */
    public double undercutMicrometres() {
        return depthMicrometres / etchFactor;
    }

    /** Floor depth at a distance beyond the mask's edge: a quarter ellipse, {@code h sqrt(1 - (d/u)^2)} up to u, then 0. */
    public double floorMicrometres(double beyondEdgeMicrometres) {
        double share = beyondEdgeMicrometres / undercutMicrometres();
        return share < 1 ? depthMicrometres * Math.sqrt(1 - share * share) : 0;
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
        float full = (float) depthMicrometres;
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

    /** The same depth with another undercut. */
    public Bath withEtchFactor(double other) {
        return new Bath(depthMicrometres, other);
    }
}
