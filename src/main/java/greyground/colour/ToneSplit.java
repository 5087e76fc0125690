package greyground.colour;

import greyground.quantity.Refusal;

/**
 * One tone shared between two plates of one hue, whose densities over paper add: the pale plate begins at white with the whole rise of
 * density and ends at black with none, {@code D1 (1 - (1 - D / (D1 + D2))^q)} with {@code q = (D1 + D2) / D1}; the dark one prints the rest. Both
 * rise all the way and both end full (closed form of ours; docs/sources.md).
 *
 * @param paleDensity D1, full tone of the pale plate over paper, above 0
 * @param darkDensity D2, of the dark one, above 0
 */
public record ToneSplit(double paleDensity, double darkDensity) {
    public ToneSplit {
        if (!(paleDensity > 0 && darkDensity > 0)) {
            throw Refusal.use("plates of density " + Refusal.plain(paleDensity) + " and " + Refusal.plain(darkDensity)
                    + " over paper share no tones; each must print something: choose other inks");
        }
    }

    /** Density of both full tones over one another. */
    public double fullDensity() {
        return paleDensity + darkDensity;
    }

    /**
     * What the pale plate prints of a tone.
     *
     * @param density over paper, 0 to {@link #fullDensity}
     */
    public double pale(double density) {
        double q = fullDensity() / paleDensity;
        return paleDensity * (1 - StrictMath.pow(Math.max(0, 1 - density / fullDensity()), q));
    }

    /** What the dark plate prints of it. */
    public double dark(double density) {
        return density - pale(density);
    }
}
