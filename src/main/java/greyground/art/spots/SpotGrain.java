package greyground.art.spots;

import java.util.Arrays;

/** The grain beside a hole: what a window's L* has that a Gaussian of it lacks, taken from whichever side is most like the hole's rim. */
final class SpotGrain {
    /** Of the Gaussian, in pixels. */
    private static final double SIGMA = 1.5;

    /** Where it ends. */
    static final int REACH = 5;

    /** Pixels of the rim whose grain is matched. */
    private static final int RIM = 4;

    private static final double[] GAUSSIAN = gaussian();

    private final int width;
    private final int height;
    private final boolean[] hole;
    private final double[] field;
    private final double[] grain;
    private final boolean[] seen;

    /**
     * Looks at a window.
     *
     * @param field of L*, its hole filled
     * @param hole pixels of it
     */
    SpotGrain(double[] field, int width, int height, boolean[] hole) {
        this.width = width;
        this.height = height;
        this.hole = hole;
        this.field = Arrays.copyOf(field, field.length);
        this.grain = new double[field.length];
        double[] across = new double[field.length];
        for (int i = 0; i < field.length; i++) {
            across[i] = blurred(field, i, i % width, width, 1);
        }
        for (int i = 0; i < field.length; i++) {
            grain[i] = field[i] - blurred(across, i, i / width, height, width);
        }
        this.seen = SpotHealing.rim(hole, width, height, RIM);
    }

    private static double[] gaussian() {
        double[] weights = new double[REACH + 1];
        double sum = 0;
        for (int i = 0; i <= REACH; i++) {
            weights[i] = StrictMath.exp(-i * i / (2 * SIGMA * SIGMA));
            sum += i == 0 ? weights[i] : 2 * weights[i];
        }
        for (int i = 0; i <= REACH; i++) {
            weights[i] /= sum;
        }
        return weights;
    }

    /** At the window's edge the last pixel goes on. */
    private static double blurred(double[] values, int at, int place, int size, int step) {
        double sum = GAUSSIAN[0] * values[at];
        for (int k = 1; k <= REACH; k++) {
            sum += GAUSSIAN[k]
                    * (values[at - Math.min(k, place) * step] + values[at + Math.min(k, size - 1 - place) * step]);
        }
        return sum;
    }

    /** Adds the grain of a place at least 1.5 of the hole's widths away to a hole, as strong as it is at the rim. */
    void into(double[] filled, double reach) {
        int away = (int) Math.ceil(3 * reach);
        int slant = (int) Math.ceil(3 * reach / Math.sqrt(2));
        int[][] ways = {
            {away, 0},
            {-away, 0},
            {0, away},
            {0, -away},
            {slant, slant},
            {-slant, -slant},
            {slant, -slant},
            {-slant, slant}
        };
        double rim = strength(0, 0, seen);
        double least = Double.POSITIVE_INFINITY;
        int[] best = {0, 0};
        for (int[] way : ways) {
            if (fits(way)) {
                double other = strength(way[0], way[1], hole);
                double unlike = Math.abs(other - rim) + Math.abs(mean(way[0], way[1]) - mean(0, 0)) / 10;
                if (unlike < least) {
                    least = unlike;
                    best = way;
                }
            }
        }
        double there = least == Double.POSITIVE_INFINITY ? 0 : strength(best[0], best[1], hole);
        if (there == 0) {
            return;
        }
        double scale = Math.min(2, rim / there);
        for (int i = 0; i < hole.length; i++) {
            if (hole[i]) {
                filled[i] += scale * grain[i + best[1] * width + best[0]];
            }
        }
    }

    /** Whether the hole, moved, lies within the window and beside itself. */
    private boolean fits(int[] way) {
        for (int i = 0; i < hole.length; i++) {
            if (hole[i]) {
                int x = i % width + way[0];
                int y = i / width + way[1];
                if (x < 0 || y < 0 || x >= width || y >= height || hole[y * width + x]) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Median of the grain's amounts, wherever a set of pixels lies when it is moved, but not in the hole. */
    private double strength(int across, int down, boolean[] set) {
        double[] amounts = new double[set.length];
        int count = 0;
        for (int i = 0; i < set.length; i++) {
            if (set[i]) {
                amounts[count++] = Math.abs(grain[i + down * width + across]);
            }
        }
        Arrays.sort(amounts, 0, count);
        return count == 0 ? 0 : amounts[count / 2];
    }

    private double mean(int across, int down) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < hole.length; i++) {
            if (hole[i]) {
                sum += field[i + down * width + across];
                count++;
            }
        }
        return sum / count;
    }
}
