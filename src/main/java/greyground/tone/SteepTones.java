package greyground.tone;

import java.util.Optional;

/**
 * Tones that hang on less film than can be trusted: there is a gap between them for all that a film printer can hold. It opens where the resist
 * lets no dots through and then all at once, as the coarse openings of a halftone do.
 *
 * @param lightest L* at the gap's light end
 * @param darkest L* at its dark end
 * @param leastCoverage film coverage at the light end
 * @param mostCoverage at the dark end
 * @param most lightness that one {@link #FILM_STEP} jumps over where it is steepest, in L*
 */
public record SteepTones(double lightest, double darkest, double leastCoverage, double mostCoverage, double most) {
    /**
     * To this a film's coverage can be trusted: of dots of 5 % and 60 lines/cm, an edge that lies 2 \u00b5m off is 0.0095 (2 \u221a(\u03c0 a) \u03b4 / p); of
     * continuous tone from density 0.1 to 2.6 it is 0.025 of density. Assumed.
     */
    public static final double FILM_STEP = 0.01;

    /** Lightness that a step may jump over: what is less is unsure, and still a tone (assumed). */
    public static final double GAP = 5;

    private static final int STRIDES = 4;

    /** The widest gap of a response's usable tones; empty where there is none. */
    public static Optional<SteepTones> of(PlateResponse response) {
        UsableCoverage usable = response.usable();
        double stride = FILM_STEP / STRIDES;
        int count = (int) Math.floor((usable.most() - usable.least()) / stride + 1e-9);
        double[] lightness = new double[count + 1];
        for (int i = 0; i <= count; i++) {
            lightness[i] = response.lightness(Math.min(usable.most(), usable.least() + i * stride));
        }
        SteepTones widest = null;
        for (int i = 0; i + STRIDES <= count; i++) {
            int from = i;
            double most = 0;
            for (; i + STRIDES <= count && lightness[i] - lightness[i + STRIDES] > GAP; i++) {
                most = Math.max(most, lightness[i] - lightness[i + STRIDES]);
            }
            int to = Math.min(count, i - 1 + STRIDES);
            if (most > 0
                    && (widest == null || lightness[from] - lightness[to] > widest.lightest() - widest.darkest())) {
                widest = new SteepTones(
                        lightness[from],
                        lightness[to],
                        usable.least() + from * stride,
                        usable.least() + to * stride,
                        most);
            }
        }
        return Optional.ofNullable(widest);
    }

    /** Whether a wish falls into the gap. */
    public boolean holds(double wish) {
        return wish < lightest && wish > darkest;
    }
}
