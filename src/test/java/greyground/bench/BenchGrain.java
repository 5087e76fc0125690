package greyground.bench;

import greyground.grain.ThresholdTile;
import java.util.Arrays;
import java.util.Random;

/** Band-passed noise ranked into thresholds: clusters like a real grain's, good enough to time and to weigh bits with. */
final class BenchGrain {
    private BenchGrain() {}

    /** A tile of side {@code side} with clusters about {@code spacingPixels} apart. */
    static ThresholdTile tile(int side, double spacingPixels) {
        Random random = new Random(7);
        float[] noise = new float[side * side];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = random.nextFloat() - 0.5f;
        }
        float[] fine = noise;
        float[] coarse = noise;
        int fineReach = Math.max(1, (int) Math.round(spacingPixels / 5));
        int coarseReach = Math.max(2, (int) Math.round(spacingPixels / 2.2));
        for (int pass = 0; pass < 3; pass++) {
            fine = blur(fine, side, fineReach);
            coarse = blur(coarse, side, coarseReach);
        }
        long[] ranked = new long[noise.length];
        for (int i = 0; i < noise.length; i++) {
            int key = Float.floatToIntBits(fine[i] - coarse[i] + 8f);
            ranked[i] = (long) key << 32 | i;
        }
        Arrays.sort(ranked);
        int[] order = new int[noise.length];
        for (int turn = 0; turn < ranked.length; turn++) {
            order[(int) ranked[turn]] = turn;
        }
        return ThresholdTile.fromOrder(side, side, order);
    }

    private static float[] blur(float[] in, int side, int reach) {
        float[] out = in;
        for (int axis = 0; axis < 2; axis++) {
            float[] from = out;
            float[] to = new float[in.length];
            int step = axis == 0 ? 1 : side;
            int line = axis == 0 ? side : 1;
            for (int a = 0; a < side; a++) {
                double sum = 0;
                for (int b = -reach; b <= reach; b++) {
                    sum += from[a * line + Math.floorMod(b, side) * step];
                }
                for (int b = 0; b < side; b++) {
                    to[a * line + b * step] = (float) (sum / (2 * reach + 1));
                    sum += from[a * line + Math.floorMod(b + reach + 1, side) * step];
                    sum -= from[a * line + Math.floorMod(b - reach, side) * step];
                }
            }
            out = to;
        }
        return out;
    }
}
