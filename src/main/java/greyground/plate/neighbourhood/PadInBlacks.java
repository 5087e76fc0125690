package greyground.plate.neighbourhood;

import greyground.plate.Ink;
import greyground.plate.Paper;
import greyground.plate.PlateConditions;
import greyground.plate.edge.Grid;
import greyground.plate.edge.Rim;

/**
 * Where black is wide the pad comes down farther than the bits of a neighbourhood tell. There its underside is followed over film pixels,
 * on the least depth within each, and the ink it leaves is put in place of full wells: with T the root of full wells, g the root of a film
 * on the paper, f the transfer, h the deepest bite and P the depth to which the pad comes, {@code s (g(f (h - P)) - g(f h))} is added
 * to T, s being the share of the pixel that is inked, {@code (g(0) - T) / (g(0) - g(f h))}.
 */
final class PadInBlacks {
    private final PlateConditions conditions;
    private final Ink ink;
    private final double deepest;
    private final double bare;
    private final double full;

    PadInBlacks(PlateConditions conditions, Ink ink) {
        this.conditions = conditions;
        this.ink = ink;
        this.deepest = conditions.deepestMicrometres();
        this.bare = root(0);
        this.full = root(deepest);
    }

    private double root(double wellMicrometres) {
        Paper paper = conditions.paper();
        double film =
                ink.transferFraction() * (wellMicrometres + conditions.wipe().plateToneMicrometres());
        return paper.root(ink.density(film));
    }

    /**
     * How deep the pad comes.
     *
     * @param leastDepth of a rectangle of film pixels
     * @return micrometres below the plate's face, right where the rectangle goes on for the pad's reach
     */
    static float[] levels(PlateConditions conditions, float[] leastDepth, int width, double pitch) {
        float[] held =
                conditions.wipe().ink(leastDepth, new Grid(width, leastDepth.length / width, pitch, Rim.BOUNDED));
        for (int i = 0; i < held.length; i++) {
            held[i] = leastDepth[i] - held[i];
        }
        return held;
    }

    /** Root of a pixel, from that of its wells full. */
    double root(double fullRoot, double level) {
        double share = bare > full ? (bare - fullRoot) / (bare - full) : 0;
        return fullRoot + Math.max(0, Math.min(1, share)) * (root(Math.max(0, deepest - level)) - full);
    }
}
