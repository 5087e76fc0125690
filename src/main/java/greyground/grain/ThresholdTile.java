package greyground.grain;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;

/**
 * Thresholds at film resolution, repeated over the film in both directions.
 *
 * <p>A film pixel of coverage {@code c} (0..65 535) is black where {@code c > threshold}. Thresholds lie in 0..65 534 and
 * fill that range evenly, so a uniform tone covers its own share of the tile to within one pixel; 0 is wholly clear and
 * 65 535 solid.
 */
public final class ThresholdTile {
    /** Counts the ways in which tiles have been made: raise it with any change that moves a threshold, for tiles are kept under it. */
    public static final int ALGORITHM = 1;

    private final int width;
    private final int height;
    private final char[] thresholds;

    /**
     * Wraps a copy of the thresholds.
     *
     * @param width pixels across, 1 to 16 384
     * @param height pixels down, 1 to 16 384
     * @param thresholds row by row, {@code width * height} of them, each at most 65 534
     */
    public ThresholdTile(int width, int height, char[] thresholds) {
        if (width < 1 || height < 1 || width > 16_384 || height > 16_384 || thresholds.length != width * height) {
            throw Refusal.use("a threshold tile of " + width + " x " + height + " pixels with " + thresholds.length
                    + " thresholds; sides must be 1 to 16384 and the count their product");
        }
        for (char threshold : thresholds) {
            if (threshold > 65_534) {
                throw Refusal.use("a threshold is 65535; it must be at most 65534, so that solid black stays solid");
            }
        }
        this.width = width;
        this.height = height;
        this.thresholds = thresholds.clone();
    }

    /**
     * Makes a tile from an order of blackening.
     *
     * @param order for each pixel, row by row, its turn to turn black: a permutation of 0..width*height-1
     */
    public static ThresholdTile fromOrder(int width, int height, int[] order) {
        char[] thresholds = new char[order.length];
        for (int i = 0; i < order.length; i++) {
            thresholds[i] = (char) ((long) order[i] * 65_535 / order.length);
        }
        return new ThresholdTile(width, height, thresholds);
    }

    /**
     * Makes the tile that lays a grain on a film.
     *
     * @throws Refusal if the resolution can't hold the grain, or the grain is continuous tone, which needs no thresholds
     */
    public static ThresholdTile of(Grain grain, Resolution resolution) {
        if (grain instanceof Grain.Stochastic stochastic) {
            return StochasticGrain.tile(stochastic, resolution);
        }
        if (grain instanceof Grain.Halftone halftone) {
            return HalftoneScreen.of(halftone, resolution).tile();
        }
        throw Refusal.use("continuous tone has no grain: choose a stochastic grain or a halftone for a film of dots");
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    /** The threshold at a film place; any place is allowed, the tile repeats. */
    public int threshold(int x, int y) {
        return thresholds[Math.floorMod(y, height) * width + Math.floorMod(x, width)];
    }

    /** Copies {@code count} thresholds of film row {@code y}, from film column {@code x} on, into {@code into}. */
    public void copyRow(int x, int y, int count, char[] into) {
        int row = Math.floorMod(y, height) * width;
        int column = Math.floorMod(x, width);
        int written = 0;
        while (written < count) {
            int run = Math.min(width - column, count - written);
            System.arraycopy(thresholds, row + column, into, written, run);
            written += run;
            column = 0;
        }
    }
}
