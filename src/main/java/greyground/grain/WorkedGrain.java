package greyground.grain;

import java.util.Arrays;
import java.util.concurrent.CompletableFuture;

/** A stochastic grain on the grid where it is worked out: where its sites are and when each pixel turns black. */
final class WorkedGrain {
    private final int side;
    private final GrainSites sites;
    private final float[] coverage;

    private WorkedGrain(int side, GrainSites sites, float[] coverage) {
        this.side = side;
        this.sites = sites;
        this.coverage = coverage;
    }

    /** Pixels along the square tile's side. */
    int side() {
        return side;
    }

    /** Sites of dots and lands. */
    GrainSites sites() {
        return sites;
    }

    /** The coverage at which each pixel turns black, row by row, 0 to 1; not a copy. */
    float[] coverage() {
        return coverage;
    }

    /**
     * Works out a grain.
     *
     * @param count of dots, and of lands
     * @param block side of the squares that share a threshold in {@link GrainGrowth}; divides {@code side}
     * @param leastDiameter in pixels of the disc that each dot and land holds from the first
     */
    static WorkedGrain of(int side, int count, int block, double leastDiameter, long seed) {
        double spacing = side / Math.sqrt(count);
        GrainSites sites = GrainSites.relaxed(count, side, seed);
        float[] field = GrainField.evenlySpread(sites, side, spacing);
        byte[] reserved = new byte[side * side];
        LeastDot least = LeastDot.holding(leastDiameter);
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
        return new WorkedGrain(side, sites, coverage);
    }
}
