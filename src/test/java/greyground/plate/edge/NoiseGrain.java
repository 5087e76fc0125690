package greyground.plate.edge;

import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * A stochastic grain simple enough for tests: white noise between two Gaussians, ranked, so that coverage is exact. Its
 * power peaks at one cycle to the spacing.
 */
public final class NoiseGrain implements FilmPatches {
    private final int size;
    private final double pitch;
    private final double spacing;
    private final long seed;
    private final int[] rank;

    public NoiseGrain(double dotsPerInch, double spacingMicrometres, double patchMillimetres, long seed) {
        this.pitch = 25_400 / dotsPerInch;
        this.spacing = spacingMicrometres;
        this.seed = seed;
        this.size = (int) Math.round(patchMillimetres * 1000 / pitch);
        Grid grid = new Grid(size, size, pitch, Rim.WRAPPED);
        Random random = new Random(seed);
        float[] noise = new float[grid.area()];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) random.nextGaussian();
        }
        // exp(-2 (pi s f)^2) - exp(-2 (1.6 pi s f)^2) peaks at f = 0.1747 / s.
        double sigma = 0.1747 * spacingMicrometres;
        float[] fine = Softening.gaussian(noise, grid, sigma);
        float[] coarse = Softening.gaussian(noise, grid, 1.6 * sigma);
        Integer[] order = IntStream.range(0, noise.length).boxed().toArray(Integer[]::new);
        Arrays.sort(order, (a, b) -> Float.compare(fine[b] - coarse[b], fine[a] - coarse[a]));
        rank = new int[noise.length];
        for (int i = 0; i < order.length; i++) {
            rank[order[i]] = i;
        }
    }

    @Override
    public FilmPatch at(double coverage) {
        int blackest = (int) Math.round(coverage * rank.length);
        return patch(size, pitch, i -> rank[i] < blackest);
    }

    @Override
    public String name() {
        return "test grain " + spacing + " um, " + size + " px of " + pitch + " um, seed " + seed;
    }

    /** Packs a square tile. */
    public static FilmPatch patch(int size, double pitch, java.util.function.IntPredicate black) {
        int bytesPerRow = (size + 7) / 8;
        byte[] packed = new byte[bytesPerRow * size];
        for (int y = 0; y < size; y++) {
            for (int x = 0; x < size; x++) {
                if (black.test(y * size + x)) {
                    packed[y * bytesPerRow + (x >> 3)] |= (byte) (0x80 >> (x & 7));
                }
            }
        }
        return FilmPatch.tile(size, size, pitch, packed);
    }
}
