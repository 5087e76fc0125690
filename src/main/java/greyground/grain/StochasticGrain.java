package greyground.grain;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import java.util.Arrays;
import java.util.concurrent.CompletableFuture;

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
        GrainSites sites = GrainSites.relaxed(count, side, grain.seed());
        float[] coverage = coverage(sites, block, LeastDot.holding(least / enlargement), grain.seed());
        if (enlargement > 1) {
            coverage = FineGrain.enlarged(sites, coverage, enlargement, LeastDot.holding(least), grain.seed());
        }
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

    /**
     * Works out when each pixel turns black, row by row, 0 to 1.
     *
     * @param block side of the squares that share a threshold in {@link GrainGrowth}; divides the tile's side
     * @param least what each dot and land holds from the first
     */
    private static float[] coverage(GrainSites sites, int block, LeastDot least, long seed) {
        int side = (int) sites.side;
        int count = sites.count;
        double spacing = side / Math.sqrt(count);
        float[] field = GrainField.evenlySpread(sites, side, spacing);
        byte[] reserved = new byte[side * side];
        FirstPixels[] first = FirstPixels.of(sites, side, spacing, field, least, seed, reserved);
        CompletableFuture<FirstDots> landsBorn = CompletableFuture.supplyAsync(() -> FirstDots.born(
                Arrays.copyOfRange(sites.x, count, 2 * count),
                Arrays.copyOfRange(sites.y, count, 2 * count),
                side,
                first[1],
                seed + 1));
        CompletableFuture<FirstDots> dotsBorn = CompletableFuture.supplyAsync(() ->
                FirstDots.born(Arrays.copyOf(sites.x, count), Arrays.copyOf(sites.y, count), side, first[0], seed));
        GrainGrowth growth = new GrainGrowth(side, spacing, block);
        float[] bend = growth.halfway(field, reserved);
        boolean[] black = new boolean[side * side];
        boolean[] white = new boolean[side * side];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                boolean isBlack = growth.blackHalfway(field, reserved, bend, x, y);
                black[y * side + x] = isBlack;
                white[y * side + x] = !isBlack;
            }
        }
        float[] lands = new float[side * side];
        FirstDots landsFirst = landsBorn.join();
        CompletableFuture<Void> landsGrown = CompletableFuture.runAsync(() -> {
            float[] bendBack = new float[bend.length];
            for (int i = 0; i < bend.length; i++) {
                bendBack[i] = -bend[i];
            }
            new GrainGrowth(side, spacing, block).grow(GrainField.mirrored(field), white, landsFirst, bendBack, lands);
            UnbrokenDots.join(lands, white, side, first[1], count, 0.5f);
        });
        float[] coverage = new float[side * side];
        FirstDots dotsFirst = dotsBorn.join();
        growth.grow(field, black, dotsFirst, bend, coverage);
        UnbrokenDots.join(coverage, black, side, first[0], count, 0.5f);
        landsGrown.join();
        for (int i = 0; i < coverage.length; i++) {
            coverage[i] = black[i] ? coverage[i] : 1 - lands[i];
        }
        return coverage;
    }
}
