package greyground.plate;

import greyground.plate.edge.Distance;
import greyground.plate.edge.Grid;
import greyground.plate.edge.Rim;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Removes whatever is narrower than a width: a morphological opening by a disc, as two distance transforms. What remains
 * is every place that a disc of that width covers without leaving the set.
 */
public final class Openness {
    /** Pixels up to which a place's surroundings are searched: a disc of some hundred centres. */
    private static final double MOST_SEARCHED = 6;

    private Openness() {}

    /**
     * Turns narrow parts of a set over to its complement.
     *
     * @param mask the pixels; changed in place
     * @param marked which mark the set bears
     * @param inside distance of each place from the complement's edge, in micrometres, told at least up to half the width
     * @param widthMicrometres least width that stays; below one pixel nothing changes
     */
    public static void shutNarrow(boolean[] mask, boolean marked, float[] inside, double widthMicrometres, Grid grid) {
        double radius = widthMicrometres / 2;
        double pitch = grid.pitchMicrometres();
        if (widthMicrometres <= pitch) {
            return;
        }
        // The ridge of a line passes up to half a pixel beside the nearest centre: a quarter on average.
        double least = radius - 0.25 * pitch;
        boolean[] core = new boolean[mask.length];
        for (int i = 0; i < core.length; i++) {
            core[i] = mask[i] == marked && inside[i] >= least;
        }
        // A whole pixel more than the disc, so that it never shaves a wide part's edge, which runs between pixels and
        // would
        // be moved to midway between them; a spur keeps up to a pixel too much.
        double reach = radius / pitch + 1;
        if (reach <= MOST_SEARCHED) {
            shutFarFrom(core, mask, marked, grid, nearestFirst(reach));
            return;
        }
        float[] away = Distance.squaredPixels(core, true, grid);
        for (int i = 0; i < mask.length; i++) {
            if (mask[i] == marked && away[i] > reach * reach) {
                mask[i] = !marked;
            }
        }
    }

    /** Looks round each doubtful place; most find the core at once, so that no transform is needed. */
    private static void shutFarFrom(boolean[] core, boolean[] mask, boolean marked, Grid grid, int[][] steps) {
        int width = grid.width();
        int height = grid.height();
        int rim = Arrays.stream(steps).mapToInt(step -> step[0]).max().orElse(0);
        int[] strides =
                Arrays.stream(steps).mapToInt(step -> step[1] * width + step[0]).toArray();
        IntStream.range(0, height).parallel().forEach(y -> {
            boolean farFromRims = y >= rim && y < height - rim;
            for (int x = 0; x < width; x++) {
                int i = y * width + x;
                if (mask[i] == marked && !core[i]) {
                    boolean inside = farFromRims && x >= rim && x < width - rim;
                    if (!(inside ? meets(core, i, strides) : meets(core, x, y, grid, steps))) {
                        mask[i] = !marked;
                    }
                }
            }
        });
    }

    private static boolean meets(boolean[] core, int from, int[] strides) {
        for (int stride : strides) {
            if (core[from + stride]) {
                return true;
            }
        }
        return false;
    }

    private static boolean meets(boolean[] core, int x, int y, Grid grid, int[][] steps) {
        int width = grid.width();
        int height = grid.height();
        boolean wrapped = grid.rim() == Rim.WRAPPED;
        for (int[] step : steps) {
            int across = x + step[0];
            int down = y + step[1];
            if (wrapped) {
                across = Math.floorMod(across, width);
                down = Math.floorMod(down, height);
            } else if (across < 0 || across >= width || down < 0 || down >= height) {
                continue;
            }
            if (core[down * width + across]) {
                return true;
            }
        }
        return false;
    }

    /** Steps to every pixel centre within a reach. */
    private static int[][] nearestFirst(double reach) {
        int most = (int) reach;
        List<int[]> steps = new ArrayList<>();
        for (int y = -most; y <= most; y++) {
            for (int x = -most; x <= most; x++) {
                if (x * x + y * y <= reach * reach) {
                    steps.add(new int[] {x, y});
                }
            }
        }
        steps.sort(Comparator.comparingInt(step -> step[0] * step[0] + step[1] * step[1]));
        return steps.toArray(int[][]::new);
    }
}
