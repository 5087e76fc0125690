package greyground.grain;

import greyground.quantity.Refusal;

/**
 * A screen of hard black dots for a separate exposure: a stochastic grain held at one coverage.
 *
 * @param tile the grain's thresholds
 * @param coverage of the film, 1 to 65 534: the film is {@code tile} under this one tone
 */
public record AquatintScreen(ThresholdTile tile, int coverage) {
    public AquatintScreen {
        if (coverage < 1 || coverage > 65_534) {
            throw Refusal.use("aquatint coverage is " + coverage + " of 65535; it must lie between 1 and 65534");
        }
    }
}
