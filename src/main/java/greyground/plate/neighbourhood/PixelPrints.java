package greyground.plate.neighbourhood;

import greyground.plate.FilmPatch;
import greyground.plate.Ink;
import greyground.plate.PlateConditions;
import greyground.plate.PlateStates;
import greyground.plate.PlateView;
import greyground.plate.VirtualPlate;
import greyground.plate.edge.Distance;
import greyground.plate.edge.Grid;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the engine prints of a patch, film pixel by film pixel, noted under the patterns round them. Safe for many threads. */
final class PixelPrints {
    /** Copper that is hardly bitten holds the pad up, in micrometres. */
    static final float LAND_MICROMETRES = 1;

    /**
     * Share of the deepest bite by which the pad may come down between lands for a pattern to tell it. In the usual workshop lands then
     * lie within 135 µm, as grain's do; farther from any, the pad is followed by itself ({@link PadInBlacks}).
     */
    private static final double HELD_SHARE = 0.15;

    private final VirtualPlate plate;
    private final List<Ink> inks;
    private final Neighbourhood disc;
    private final @Nullable LampView relief;

    /**
     * Of a plate.
     *
     * @param inks that differ from the plate's own in their densities alone
     */
    PixelPrints(VirtualPlate plate, List<Ink> inks, Neighbourhood disc, @Nullable LampView relief) {
        this.plate = plate;
        this.inks = inks;
        this.disc = disc;
        this.relief = relief;
    }

    /** How far from the nearest land the pad is taken to be held up: where a parabola of its radius falls to the share. */
    static double heldMicrometres(PlateConditions conditions) {
        double deepest = HELD_SHARE * conditions.deepestMicrometres();
        return Math.sqrt(2000 * conditions.wipe().padRadiusMillimetres() * deepest);
    }

    /**
     * Notes a patch.
     *
     * @param margin film pixels along its sides that are not to be trusted
     */
    PatternTally of(FilmPatch patch, int margin) {
        PlateConditions conditions = plate.conditions();
        PlateStates states = plate.statesBeyondFilm(patch);
        PlateStates full = plate.unwiped(states);
        Grid grid = states.grid();
        int split = grid.width() / patch.width();
        PatternTally tally = new PatternTally(inks.size());
        float[][] seen = new float[tally.columns()][];
        for (int ink = 0; ink < inks.size(); ink++) {
            PlateView root = PlateView.printRoot(inks.get(ink));
            seen[PatternTally.root(ink)] = root.of(conditions, states);
            seen[PatternTally.full(ink)] = root.of(conditions, full);
        }
        seen[PatternTally.COVERED] = PlateView.covered().of(conditions, states);
        if (relief != null) {
            System.arraycopy(relief.fromCorners(conditions, states), 0, seen, PatternTally.RELIEF, 4);
        }
        Grid pixels = new Grid(patch.width(), patch.height(), patch.pitchMicrometres(), patch.rim());
        float[] least = leastDepth(states, split, pixels);
        boolean[] land = new boolean[least.length];
        for (int i = 0; i < land.length; i++) {
            land[i] = least[i] < LAND_MICROMETRES;
        }
        boolean[] held = held(land, pixels);
        FilmBits film = FilmBits.of(patch);
        long[] rows = new long[2 * disc.radius() + 1];
        double[] values = new double[tally.columns()];
        for (int y = margin; y < patch.height() - margin; y++) {
            for (int x = margin; x < patch.width() - margin; x++) {
                int at = y * patch.width() + x;
                for (int column = 0; column < values.length; column++) {
                    values[column] = seen[column] == null ? 0 : mean(seen[column], grid, x * split, y * split, split);
                }
                values[PatternTally.HELD] = held[at] ? 1 : 0;
                for (int ink = 0; ink < inks.size(); ink++) {
                    values[PatternTally.root(ink)] *= values[PatternTally.HELD];
                }
                values[PatternTally.LEAST_DEPTH] = least[at];
                film.rows(x, y, rows);
                tally.add(disc, disc.pattern(rows, 0, 0), values);
            }
        }
        return tally;
    }

    /** Where no disc free of land reaches that is so wide that the pad comes down in it. */
    private boolean[] held(boolean[] land, Grid pixels) {
        double radius = heldMicrometres(plate.conditions()) / pixels.pitchMicrometres();
        float[] away = Distance.squaredPixels(land, true, pixels);
        boolean[] far = new boolean[away.length];
        for (int i = 0; i < far.length; i++) {
            far[i] = away[i] >= radius * radius;
        }
        away = Distance.squaredPixels(far, true, pixels);
        for (int i = 0; i < far.length; i++) {
            far[i] = away[i] >= radius * radius;
        }
        return far;
    }

    private static double mean(float[] plane, Grid grid, int left, int top, int split) {
        double sum = 0;
        for (int y = top; y < top + split; y++) {
            for (int x = left; x < left + split; x++) {
                sum += plane[y * grid.width() + x];
            }
        }
        return sum / (split * split);
    }

    private static float[] leastDepth(PlateStates states, int split, Grid pixels) {
        float[] least = new float[pixels.area()];
        Arrays.fill(least, Float.POSITIVE_INFINITY);
        int width = states.grid().width();
        for (int i = 0; i < states.depthMicrometres().length; i++) {
            int at = i / width / split * pixels.width() + i % width / split;
            least[at] = Math.min(least[at], states.depthMicrometres()[i]);
        }
        return least;
    }
}
