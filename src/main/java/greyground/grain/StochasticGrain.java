package greyground.grain;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;

/**
 * Makes the tile of a clustered random grain (green noise, after Lau, Arce and Gallagher 1998, from memory): dots and
 * lands that appear at their least size, never shrink, and stand evenly at every tone.
 *
 * <p>Sites of dots and of lands settle into a disordered checkerboard ({@link GrainSites}); dots are born on theirs from
 * white on and lands on theirs from black on ({@link FirstDots}); both grow to meet at half coverage
 * ({@link GrainGrowth}). The two ends don't touch, so they run side by side. A fine film is worked out on a coarser grid
 * and enlarged ({@link FineGrain}).
 *
 * <p>The same spacing, seed, resolution and least width give the same tile on every machine and any number of threads.
 */
public final class StochasticGrain {
    /** What a resist holds and washes out, science of the dry film: assumed until a workshop measures its own. */
    public static final double LEAST_WIDTH_MICROMETRES = 40;

    private static final double TILE_MICROMETRES = 10_050;
    private static final double TILE_SPACINGS = 55;
    private static final int MOST_PIXELS = 4096;

    /** A least dot may be this share of the spacing wide, so that lands of the same width fit between dots. */
    private static final double MOST_WIDTH_IN_SPACINGS = 1.0 / 3;

    /** A least dot may cover this share of its own area, else coverage below it has too few dots to be even. */
    private static final double MOST_LEAST_COVERAGE = 0.2;

    private static final double LEAST_SPACING_PIXELS = 4;

    /** Spacing in pixels of the grid on which grain is worked out is at least this, below twice this. */
    private static final double WORKING_SPACING = 9;

    private StochasticGrain() {}

    /** Makes the tile with the least width of {@link #LEAST_WIDTH_MICROMETRES}. */
    public static ThresholdTile tile(Grain.Stochastic grain, Resolution resolution) {
        return tile(grain, resolution, LEAST_WIDTH_MICROMETRES);
    }

    /**
     * Makes the tile. Its side is 10 mm or 55 spacings, whichever is more, but at most 4096 pixels.
     *
     * @param leastWidthMicrometres that every dot and land keeps, 1 to 500; taken as a third of the spacing where it is more
     * @throws Refusal if the resolution can't hold such dots at such a spacing
     */
    public static ThresholdTile tile(Grain.Stochastic grain, Resolution resolution, double leastWidthMicrometres) {
        Refusal.checkRange("least width", leastWidthMicrometres, 1, 500, "µm", "40 µm suits most films");
        double pitch = resolution.pitchMicrometres();
        double spacing = grain.spacingMicrometres() / pitch;
        double least = Math.min(leastWidthMicrometres, MOST_WIDTH_IN_SPACINGS * grain.spacingMicrometres()) / pitch;
        int leastPixels = LeastDot.holding(least).pixels();
        if (spacing < LEAST_SPACING_PIXELS || leastPixels > MOST_LEAST_COVERAGE * spacing * spacing) {
            throw tooFine(grain, resolution, leastWidthMicrometres);
        }
        int enlargement = Math.max(1, (int) (spacing / WORKING_SPACING));
        double working = spacing / enlargement;
        int block = working < 7.5 ? 1 : 2;
        double wanted = Math.max(TILE_MICROMETRES / pitch / enlargement, TILE_SPACINGS * working);
        int most = MOST_PIXELS / enlargement;
        int side = (int) Math.min(Math.ceil(wanted), most);
        side -= side % block;
        int count = (int) Math.max(4, Math.round(side * (double) side / (working * working)));
        WorkedGrain worked = WorkedGrain.of(side, count, block, least / enlargement, grain.seed());
        float[] coverage = enlargement == 1
                ? worked.coverage()
                : FineGrain.enlarged(worked, enlargement, LeastDot.holding(least), grain.seed());
        int pixels = side * enlargement;
        return ThresholdTile.fromOrder(pixels, pixels, BlackeningOrder.of(coverage, grain.seed()));
    }

    private static Refusal tooFine(Grain.Stochastic grain, Resolution resolution, double leastWidthMicrometres) {
        double pitch = resolution.pitchMicrometres();
        double spacing = grain.spacingMicrometres();
        double possible = Math.max(spacing, LEAST_SPACING_PIXELS * pitch);
        while (LeastDot.holding(Math.min(leastWidthMicrometres, MOST_WIDTH_IN_SPACINGS * possible) / pitch)
                                .pixels()
                        > MOST_LEAST_COVERAGE * possible * possible / (pitch * pitch)
                && possible < 10_000) {
            possible += 1;
        }
        return Refusal.use("grain spacing is " + Refusal.plain(spacing) + " µm, " + Refusal.plain(spacing / pitch)
                + " pixels at " + Refusal.plain(resolution.dotsPerInch()) + " dpi; dots "
                + Refusal.plain(Math.min(leastWidthMicrometres, MOST_WIDTH_IN_SPACINGS * spacing))
                + " µm wide need at least " + Refusal.plain(Math.ceil(possible))
                + " µm there: choose a coarser grain or a finer film");
    }
}
