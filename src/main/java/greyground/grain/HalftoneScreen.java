package greyground.grain;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;

/**
 * A regular screen: its tile and its real geometry.
 *
 * <p>Round dots follow {@code cos u + cos v}: round up to about a quarter black, square and touching at the corners at
 * half (a checkerboard), round holes above. Lines follow {@code cos u}. Pixels turn black in the order of that height,
 * so every tone's coverage is exact whatever the shape.
 *
 * @param tile thresholds
 * @param geometry real ruling and angle
 */
public record HalftoneScreen(ThresholdTile tile, HalftoneGeometry geometry) {
    // Where cells lie alike on the pixels they would grow in the same order; steps of the plane's most even additive
    // sequence (powers of the plastic number; from memory) deal the next pixel to cells far apart in turn.
    private static final double STEP_ACROSS = 0.7548776662466927;
    private static final double STEP_DOWN = 0.5698402909980532;
    private static final int TIES = 4096;

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
        int[] order = BlackeningOrder.of(coverage, place -> tie(geometry, place % side, place / side));
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

    private static int tie(HalftoneGeometry geometry, int x, int y) {
        int side = geometry.side();
        long u = (long) geometry.wavesAcross() * x + (long) geometry.wavesDown() * y;
        long v = (long) geometry.wavesDown() * x - (long) geometry.wavesAcross() * y;
        double at = Math.floorDiv(u + side / 2, side) * STEP_ACROSS + Math.floorDiv(v + side / 2, side) * STEP_DOWN;
        return (int) ((at - Math.floor(at)) * TIES);
    }
}
