package greyground.grain;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;

/**
 * A regular screen: its tile and its real geometry.
 *
 * <p>Round dots follow {@code cos u + cos v}: round up to about a quarter black, square and touching at the corners at
 * half (a checkerboard), round holes above. Lines follow {@code cos u}. Pixels turn black in the order of that height, each cell
 * taking its even share ({@link ScreenCells}), so every tone's coverage is exact whatever the shape, and even over the film.
 *
 * @param tile thresholds
 * @param geometry real ruling and angle
 */
public record HalftoneScreen(ThresholdTile tile, HalftoneGeometry geometry) {
    /**
     * Makes the screen.
     *
     * @throws Refusal if the film can't carry the ruling
     */
    public static HalftoneScreen of(Grain.Halftone halftone, Resolution resolution) {
        HalftoneGeometry geometry = HalftoneGeometry.fit(halftone, resolution);
        int side = geometry.side();
        int across = Math.floorMod(geometry.wavesAcross(), side);
        int down = Math.floorMod(geometry.wavesDown(), side);
        boolean round = halftone.shape() == Grain.DotShape.ROUND;
        float[] wave = wave(side);
        float[] coverage = new float[side * side];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                // Waves run along (across, down) and, for dots, at right angles to it; whole numbers keep the phase
                // exact.
                float u = wave[(int) (((long) across * x + (long) down * y) % side)];
                float v = round ? wave[(int) (((long) down * x + (long) (side - across) * y) % side)] : u;
                coverage[y * side + x] = 0.5f - 0.25f * (u + v);
            }
        }
        int[] order = new ScreenCells(geometry).order(coverage);
        return new HalftoneScreen(ThresholdTile.fromOrder(side, side, order), geometry);
    }

    /** One period over {@code side} steps; mirrored steps agree to the last bit, so that dots are symmetrical. */
    private static float[] wave(int side) {
        float[] wave = new float[side];
        for (int i = 0; i <= side / 2; i++) {
            wave[i] = (float) StrictMath.cos(2 * Math.PI * i / side);
            wave[(side - i) % side] = wave[i];
        }
        return wave;
    }
}
