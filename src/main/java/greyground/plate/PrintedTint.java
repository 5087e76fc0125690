package greyground.plate;

import greyground.plate.edge.Grid;
import greyground.quantity.Refusal;

/** How much of a film a tint covers once it is printed: more than its pixels say, by what its edges grow. */
public final class PrintedTint {
    /** Fine enough that a dot's edge is followed to a tenth of a film pixel or so (assumed). */
    private static final double WIDEST_MICROMETRES = 4.5;

    private PrintedTint() {}

    /**
     * Share of a patch that ink covers.
     *
     * @param patch of bits; a tapered one is weighted
     * @param growthMicrometres how far a printed edge lies outside its pixels
     * @param softnessMicrometres standard deviation of the edge's blur
     */
    public static double covered(FilmPatch patch, double growthMicrometres, double softnessMicrometres) {
        if (!patch.isBits()) {
            throw Refusal.use("a continuous-tone film has no dots that could grow: give a film of grain or a halftone");
        }
        int split = (int) Math.ceil(patch.pitchMicrometres() / WIDEST_MICROMETRES - 1e-9);
        Grid grid =
                new Grid(patch.width() * split, patch.height() * split, patch.pitchMicrometres() / split, patch.rim());
        float[] covered = PrintedShade.covered(patch, softnessMicrometres, growthMicrometres, grid);
        double[] across = patch.weightsAcross(grid.width());
        double[] down = patch.weightsDown(grid.height());
        double sum = 0;
        double all = 0;
        for (int y = 0; y < grid.height(); y++) {
            for (int x = 0; x < grid.width(); x++) {
                double weight = across[x] * down[y];
                sum += weight * covered[y * grid.width() + x];
                all += weight;
            }
        }
        return sum / all;
    }
}
