package greyground.grain;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;

/**
 * A screen of hard black dots for a separate exposure: a stochastic grain held at one coverage.
 *
 * @param tile the grain's thresholds
 * @param coverage of the film, 1 to 65 534: the film is {@code tile} under this one tone
 */
public record AquatintScreen(ThresholdTile tile, int coverage) {
    /** About half the surface stays land, 40 to 60 % (common practice). */
    public static final double USUAL_BLACK_SHARE = 0.5;

    public AquatintScreen {
        if (coverage < 1 || coverage > 65_534) {
            throw Refusal.use("aquatint coverage is " + coverage + " of 65535; it must lie between 1 and 65534");
        }
    }

    /**
     * Makes the screen.
     *
     * @param blackShare of the film, 0.05 to 0.95
     * @throws Refusal if the share is out of range or the resolution can't hold the grain
     */
    public static AquatintScreen of(Grain.Stochastic grain, double blackShare, Resolution resolution) {
        Refusal.checkRange("aquatint black share", blackShare, 0.05, 0.95, "", "0.45 to 0.55 is usual");
        return new AquatintScreen(StochasticGrain.tile(grain, resolution), (int) Math.round(blackShare * 65_535));
    }

    /** Whether the film is black at a place; any place is allowed. */
    public boolean black(int x, int y) {
        return coverage > tile.threshold(x, y);
    }
}
