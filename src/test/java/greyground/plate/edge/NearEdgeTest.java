package greyground.plate.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.Openness;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is measured near an edge alone must be what the envelope over the whole plane measures. */
class NearEdgeTest {
    @ParameterizedTest
    @EnumSource(Rim.class)
    void agreesWithTheEnvelopeAsFarAsItReaches(Rim rim) {
        Random random = new Random(11);
        for (int[] size : new int[][] {{1, 1}, {3, 40}, {61, 2}, {97, 83}, {300, 45}}) {
            Grid grid = new Grid(size[0], size[1], 8.8, rim);
            float[] dose = new float[grid.area()];
            for (int i = 0; i < dose.length; i++) {
                dose[i] = (float) Math.exp(random.nextGaussian());
            }
            dose = Softening.gaussian(dose, grid, 14);
            float[] sorted = dose.clone();
            Arrays.sort(sorted);
            for (double share : new double[] {0, 0.02, 0.5, 0.98}) {
                double threshold = sorted[(int) (share * (sorted.length - 1))];
                boolean[] mask = new boolean[dose.length];
                for (int i = 0; i < mask.length; i++) {
                    mask[i] = dose[i] >= threshold;
                }
                for (double most : new double[] {5, 30, 200}) {
                    compare(mask, dose, threshold, grid, most);
                }
            }
        }
    }

    private static void compare(boolean[] mask, float[] dose, double threshold, Grid grid, double most) {
        for (boolean marked : new boolean[] {true, false}) {
            float[] exact = EdgeDistance.micrometres(mask, marked, new DoseEdge(dose, threshold), grid);
            float[] near = EdgeDistance.micrometres(mask, marked, new DoseEdge(dose, threshold), grid, most);
            for (int i = 0; i < exact.length; i++) {
                if (exact[i] <= most) {
                    assertEquals(exact[i], near[i], 1e-4 * (1 + exact[i]), grid + " at " + i + " up to " + most);
                } else {
                    assertTrue(near[i] > most, grid + " at " + i + ": " + near[i] + " for " + exact[i]);
                }
            }
        }
    }

    /** Opening by searching and by transform: the same rule, place by place, found by brute force. */
    @ParameterizedTest
    @EnumSource(Rim.class)
    void narrowPartsAreShutAsTheRuleSays(Rim rim) {
        Random random = new Random(4);
        Grid grid = new Grid(70, 52, 5, rim);
        float[] noise = new float[grid.area()];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) random.nextGaussian();
        }
        noise = Softening.gaussian(noise, grid, 12);
        for (double width : new double[] {8, 20, 45, 90}) {
            boolean[] mask = new boolean[noise.length];
            for (int i = 0; i < mask.length; i++) {
                mask[i] = noise[i] > 0;
            }
            boolean[] before = mask.clone();
            float[] inside = Distance.micrometres(mask, false, grid);
            Openness.shutNarrow(mask, true, inside, width, grid);
            double reach = width / 2 / grid.pitchMicrometres() + 1;
            for (int i = 0; i < mask.length; i++) {
                boolean kept = before[i] && coreWithin(before, inside, i, width, reach, grid);
                assertEquals(kept, mask[i], "width " + width + " at " + i);
            }
        }
    }

    private static boolean coreWithin(boolean[] mask, float[] inside, int at, double width, double reach, Grid grid) {
        double least = width / 2 - 0.25 * grid.pitchMicrometres();
        for (int i = 0; i < mask.length; i++) {
            if (mask[i] && inside[i] >= least) {
                int dx = Math.abs(i % grid.width() - at % grid.width());
                int dy = Math.abs(i / grid.width() - at / grid.width());
                if (grid.rim() == Rim.WRAPPED) {
                    dx = Math.min(dx, grid.width() - dx);
                    dy = Math.min(dy, grid.height() - dy);
                }
                if (dx * dx + dy * dy <= reach * reach) {
                    return true;
                }
            }
        }
        return false;
    }
}
