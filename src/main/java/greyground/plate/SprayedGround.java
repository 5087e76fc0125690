package greyground.plate;

import greyground.plate.edge.Grid;
import greyground.plate.edge.Rim;
import greyground.quantity.Refusal;
import java.util.Arrays;

/**
 * An aquatint sprayed on the plate: round grains of one size that fall anywhere and may overlap, the Boolean model. Where
 * they cover the share L, {@code L = 1 - exp(-lambda pi rho^2)} with lambda grains to the area; the chords of bare copper
 * between them are exponential with mean {@code 1 / (2 rho lambda)}.
 *
 * <p>The grains are a function of seed and place on the plate, so any window of a plate sees the same ones.
 *
 * @param landFraction L, share covered, 0.01 to 0.95
 * @param grainMicrometres 2 rho, diameter of a grain, 2 to 500
 * @param seed chooses one of many equivalent grounds
 */
public record SprayedGround(double landFraction, double grainMicrometres, long seed) {
    public SprayedGround {
        Refusal.checkRange("aquatint land fraction", landFraction, 0.01, 0.95, "", "0.4 to 0.6 is usual");
        Refusal.checkRange("aquatint grain", grainMicrometres, 2, 500, "µm", "30 to 80 µm is a medium grain");
    }

    /** Grains to the square micrometre, lambda. */
    public double grainsPerSquareMicrometre() {
        double radius = grainMicrometres / 2;
        return -StrictMath.log1p(-landFraction) / (Math.PI * radius * radius);
    }

    /**
     * Which pixels grains cover. Grains fall in square cells about one grain wide, each with its own Poisson count; on a
     * wrapped grid the cells are stretched to fit a whole number and the ground repeats with it.
     *
     * @param leftMicrometres of the grid's left edge on the plate
     * @param topMicrometres of the grid's top edge on the plate
     */
    public boolean[] grains(Grid grid, double leftMicrometres, double topMicrometres) {
        boolean[] covered = new boolean[grid.area()];
        double pitch = grid.pitchMicrometres();
        double acrossMicrometres = grid.width() * pitch;
        double downMicrometres = grid.height() * pitch;
        boolean wrapped = grid.rim() == Rim.WRAPPED;
        double cellX = wrapped ? acrossMicrometres / cells(acrossMicrometres) : grainMicrometres;
        double cellY = wrapped ? downMicrometres / cells(downMicrometres) : grainMicrometres;
        int firstX = wrapped ? 0 : (int) Math.floor((leftMicrometres - grainMicrometres) / cellX);
        int firstY = wrapped ? 0 : (int) Math.floor((topMicrometres - grainMicrometres) / cellY);
        int countX = wrapped ? cells(acrossMicrometres) : cells(acrossMicrometres) + 4;
        int countY = wrapped ? cells(downMicrometres) : cells(downMicrometres) + 4;
        double left = wrapped ? 0 : leftMicrometres;
        double top = wrapped ? 0 : topMicrometres;
        for (int j = firstY; j < firstY + countY; j++) {
            for (int i = firstX; i < firstX + countX; i++) {
                Draws draws = new Draws(seed, i, j);
                int count = draws.poisson(grainsPerSquareMicrometre() * cellX * cellY);
                for (int k = 0; k < count; k++) {
                    double x = (i + draws.next()) * cellX - left;
                    double y = (j + draws.next()) * cellY - top;
                    stamp(covered, grid, x / pitch, y / pitch, grainMicrometres / 2 / pitch);
                }
            }
        }
        return covered;
    }

    private int cells(double lengthMicrometres) {
        return Math.max(1, (int) Math.ceil(lengthMicrometres / grainMicrometres));
    }

    private static void stamp(boolean[] covered, Grid grid, double x, double y, double radius) {
        boolean wrapped = grid.rim() == Rim.WRAPPED;
        for (int row = (int) Math.ceil(y - radius - 0.5); row + 0.5 <= y + radius; row++) {
            if (!wrapped && (row < 0 || row >= grid.height())) {
                continue;
            }
            double down = row + 0.5 - y;
            double half = Math.sqrt(Math.max(0, radius * radius - down * down));
            int first = (int) Math.ceil(x - half - 0.5);
            int end = (int) Math.floor(x + half - 0.5) + 1;
            int from = Math.floorMod(row, grid.height()) * grid.width();
            if (!wrapped) {
                first = Math.max(0, first);
                end = Math.min(grid.width(), end);
                if (first < end) {
                    Arrays.fill(covered, from + first, from + end, true);
                }
            } else {
                for (int column = first; column < end; column++) {
                    covered[from + Math.floorMod(column, grid.width())] = true;
                }
            }
        }
    }

    /** The random numbers of one cell: a hash of seed, cell and turn (Steele, Lea and Flood 2014, mixing step; memory). */
    private static final class Draws {
        private long state;

        Draws(long seed, int i, int j) {
            state = mix(mix(mix(seed) + i) + j);
        }

        double next() {
            state += 0x9E3779B97F4A7C15L;
            return (mix(state) >>> 11) * 0x1p-53;
        }

        /** Counts uniform draws until their product falls below exp(-mean), Knuth's way; means here are near 1. */
        int poisson(double mean) {
            double limit = StrictMath.exp(-mean);
            int count = 0;
            for (double product = next(); product > limit; product *= next()) {
                count++;
            }
            return count;
        }

        private static long mix(long bits) {
            long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
            z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
            return z ^ (z >>> 31);
        }
    }
}
