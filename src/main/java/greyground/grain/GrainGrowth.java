package greyground.grain;

import java.util.Arrays;
import java.util.function.IntUnaryOperator;

/**
 * Grows dots from half coverage downwards (and, on the mirrored field, lands): at every level of a fixed ladder the
 * threshold of the field is bent, smoothly, until the blurred black is even, so that no level has clouds. A pixel's
 * coverage lies between the two levels that it falls between, in the field's own order. What {@link FirstDots} gave out
 * stays black throughout.
 *
 * <p>The bending is feedback through a Gaussian of half a spacing, which passes the clouds (below half the principal
 * frequency) and hardly sees the dots themselves. Owned by one thread.
 */
final class GrainGrowth {
    /** Found by trial: near half coverage all necks open at nearly the same level, and a stronger gain oscillates. */
    private static final float GAIN = 0.35f;

    private static final double BLUR_IN_SPACINGS = 0.5;
    private static final int ROUNDS_AT_HALF = 14;
    private static final int ROUNDS = 4;
    private static final float[] LEVELS = {
        .46f, .42f, .38f, .34f, .30f, .26f, .22f, .19f, .16f, .135f, .115f, .1f, .085f
    };

    // What a pixel is when they are listed.
    private static final int NEITHER = 0;
    private static final int OPEN = 1;
    private static final int SETTLED = 2;

    private final int side;
    private final int block;
    private final int cells;
    private final double deviation;
    private final LowPass lowPass;
    private final float[] black;
    private final float[] settled;
    private int[] open = new int[0];
    private int[] openCell = new int[0];
    private int opened;

    /**
     * @param side of the tile in pixels, a multiple of {@code block}
     * @param spacing of dots in pixels
     * @param block side in pixels of the squares that share one threshold
     */
    GrainGrowth(int side, double spacing, int block) {
        this.side = side;
        this.block = block;
        this.cells = side / block;
        this.deviation = BLUR_IN_SPACINGS * spacing / block;
        this.lowPass = new LowPass(cells);
        this.black = new float[cells * cells];
        this.settled = new float[cells * cells];
    }

    /**
     * Bends the threshold at half coverage.
     *
     * @param field from 0, first black, to 1, evenly spread over the tile
     * @param reserved 1 where a first dot will stand, 2 where a last land will, else 0
     * @return for each block what to add to 0.5
     */
    float[] halfway(float[] field, byte[] reserved) {
        float[] bend = new float[cells * cells];
        list(pixel -> reserved[pixel] == 0 ? OPEN : reserved[pixel] == 1 ? SETTLED : NEITHER);
        for (int round = 0; round < ROUNDS_AT_HALF; round++) {
            even(field, bend, 0.5f);
        }
        return bend;
    }

    /** Whether a pixel is black at half coverage. */
    boolean blackHalfway(float[] field, byte[] reserved, float[] bend, int x, int y) {
        int pixel = y * side + x;
        return reserved[pixel] == 1
                || (reserved[pixel] == 0 && field[pixel] < 0.5f + bend[y / block * cells + x / block]);
    }

    /**
     * Finds the coverage at which each pixel that is black at half coverage turns black.
     *
     * @param field as for {@link #halfway}
     * @param inside whether a pixel is black at half coverage
     * @param first the first dots
     * @param bendAtHalf what {@link #halfway} returned
     * @param coverage filled where {@code inside}: above 0, at most 0.5
     */
    void grow(float[] field, boolean[] inside, FirstDots first, float[] bendAtHalf, float[] coverage) {
        float area = (float) side * side;
        float least = first.pixels() / area;
        list(pixel -> {
            if (first.turn(pixel) >= 0) {
                coverage[pixel] = (first.turn(pixel) + 0.5f) / area;
                return SETTLED;
            }
            return inside[pixel] ? OPEN : NEITHER;
        });
        float[] bend = bendAtHalf.clone();
        float[] bendBefore = bendAtHalf.clone();
        float before = 0.5f;
        int level = 0;
        for (boolean last = false; !last; level++) {
            last = level == LEVELS.length || LEVELS[level] < least * 1.03f;
            float next = last ? least : LEVELS[level];
            for (int round = 0; !last && round < ROUNDS; round++) {
                even(field, bend, next);
            }
            int kept = 0;
            for (int k = 0; k < opened; k++) {
                int pixel = open[k];
                int cell = openCell[k];
                float value = field[pixel];
                float high = before + bendBefore[cell];
                float low = last ? 0 : next + bend[cell];
                if (value >= low) {
                    float share = high > low ? Math.min((value - low) / (high - low), 1) : 1;
                    coverage[pixel] = next + (before - next) * share;
                } else {
                    open[kept] = pixel;
                    openCell[kept++] = cell;
                }
            }
            opened = kept;
            before = next;
            System.arraycopy(bend, 0, bendBefore, 0, bend.length);
        }
    }

    /** Lists the pixels whose coverage is still open and counts the settled ones by block. */
    private void list(IntUnaryOperator kind) {
        Arrays.fill(settled, 0);
        opened = 0;
        if (open.length == 0) {
            open = new int[side * side];
            openCell = new int[side * side];
        }
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                int cell = y / block * cells + x / block;
                int of = kind.applyAsInt(y * side + x);
                if (of == OPEN) {
                    open[opened] = y * side + x;
                    openCell[opened++] = cell;
                } else if (of == SETTLED) {
                    settled[cell]++;
                }
            }
        }
    }

    /** One round of feedback at one level. */
    private void even(float[] field, float[] bend, float level) {
        System.arraycopy(settled, 0, black, 0, black.length);
        for (int k = 0; k < opened; k++) {
            int cell = openCell[k];
            black[cell] += field[open[k]] < level + bend[cell] ? 1 : 0;
        }
        lowPass.blur(black, deviation);
        float perPixel = 1f / (block * block);
        for (int i = 0; i < bend.length; i++) {
            bend[i] += GAIN * (level - black[i] * perPixel);
        }
    }
}
