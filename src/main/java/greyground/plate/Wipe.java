package greyground.plate;

import greyground.plate.edge.Grid;
import greyground.plate.edge.ParabolicEnvelope;
import greyground.quantity.Refusal;

/**
 * Wiping: a pad whose underside is a paraboloid bridges narrow wells and dips into wide ones. The ink left stands as high as
 * the pad could nowhere reach lower: the closing of the copper's surface by the paraboloid.
 *
 * @param padRadiusMillimetres radius of curvature of the pad's underside, 0.01 to 100; fitted from a bar gauge, r = w^2 / 8h
 * @param plateToneMicrometres ink film that wiping leaves everywhere, 0 to 5
 */
public record Wipe(double padRadiusMillimetres, double plateToneMicrometres) {
    public Wipe {
        Refusal.checkRange("wiping pad radius", padRadiusMillimetres, 0.01, 100, "mm", "fit it from a bar gauge");
        Refusal.checkRange("plate tone", plateToneMicrometres, 0, 5, "µm", "0 to 0.3 µm is a clean wipe");
    }

    /** Width of a flat-floored trench whose floor the pad just touches, {@code sqrt(8 r h)}. */
    public double criticalWidthMicrometres(double depthMicrometres) {
        return Math.sqrt(8 * padRadiusMillimetres * 1000 * depthMicrometres);
    }

    /**
     * Ink left in the wells, without plate tone.
     *
     * @param depth of the copper below the plate's surface, in micrometres
     * @return ink film in micrometres, 0 to the depth
     */
    public float[] ink(float[] depth, Grid grid) {
        grid.check("the copper", depth.length);
        double steepness = grid.pitchMicrometres() * grid.pitchMicrometres() / (2000 * padRadiusMillimetres);
        float[] level = depth.clone();
        // How deep the pad's apex comes over each place, then how deep any part of the pad comes at each place.
        ParabolicEnvelope.lower(level, grid, steepness);
        ParabolicEnvelope.upper(level, grid, steepness);
        for (int i = 0; i < level.length; i++) {
            level[i] = Math.max(0, depth[i] - level[i]);
        }
        return level;
    }

    /** Another pad. */
    public Wipe withPadRadius(double millimetres) {
        return new Wipe(millimetres, plateToneMicrometres);
    }

    /** A wipe that leaves another film of ink everywhere. */
    public Wipe withPlateTone(double micrometres) {
        return new Wipe(padRadiusMillimetres, micrometres);
    }
}
