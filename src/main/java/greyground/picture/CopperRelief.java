package greyground.picture;

import greyground.plate.PlateConditions;
import greyground.plate.PlateStates;
import greyground.plate.PlateView;
import greyground.plate.edge.Grid;

/**
 * The bitten plate under a lamp from the top left: how bright each place is beside the polished face. Two things show: slopes
 * that face the lamp or turn from it (Lambert's cosine law), and depth, which dulls copper as a bite does.
 */
public final class CopperRelief implements PlateView {
    /** The brightest slope that is told apart from brighter ones. */
    static final double BRIGHTEST = 1.6;

    /** Brightness of a flat floor at the full depth (chosen by eye). */
    private static final double DEEPEST = 0.35;

    // The lamp stands to the left, above and in front: x and y the same, so that the diagonal parts light and shade.
    private static final double LAMP_SIDE = 0.5;
    private static final double LAMP_UP = Math.sqrt(1 - 2 * LAMP_SIDE * LAMP_SIDE);

    private final double lampX;
    private final double lampY;

    private CopperRelief(boolean right, boolean below) {
        this.lampX = right ? LAMP_SIDE : -LAMP_SIDE;
        this.lampY = below ? -LAMP_SIDE : LAMP_SIDE;
    }

    /** Lit from one of the four corners. */
    public static CopperRelief litFrom(boolean right, boolean below) {
        return new CopperRelief(right, below);
    }

    /** Lit from each of the four corners; of a corner's number 1 is the right and 2 below. */
    public static float[][] fromCorners(PlateConditions conditions, PlateStates states) {
        CopperRelief[] lamps = {litFrom(false, false), litFrom(true, false), litFrom(false, true), litFrom(true, true)};
        return of(states.depthMicrometres(), states.grid(), fullDepth(conditions), lamps);
    }

    private static double fullDepth(PlateConditions conditions) {
        return Math.max(0.1, conditions.deepestMicrometres());
    }

    /** Seen as the print reads. */
    public static CopperRelief asPrinted() {
        return litFrom(false, false);
    }

    /** For a picture that will be mirrored: the lamp stands to the right, so that afterwards it stands to the left. */
    public static CopperRelief toMirror() {
        return litFrom(true, false);
    }

    /** Brightness of a flat floor. */
    static double flat(double depth, double fullDepth) {
        return 1 - (1 - DEEPEST) * Math.min(1, depth / fullDepth);
    }

    @Override
    public float[] of(PlateConditions conditions, PlateStates states) {
        return of(states.depthMicrometres(), states.grid(), fullDepth(conditions));
    }

    float[] of(float[] depth, Grid grid, double fullDepth) {
        return of(depth, grid, fullDepth, this)[0];
    }

    private static float[][] of(float[] depth, Grid grid, double fullDepth, CopperRelief... lamps) {
        int width = grid.width();
        int height = grid.height();
        float[][] bright = new float[lamps.length][depth.length];
        for (int y = 0; y < height; y++) {
            int above = Math.max(0, y - 1) * width;
            int below = Math.min(height - 1, y + 1) * width;
            for (int x = 0; x < width; x++) {
                int at = y * width + x;
                // Central differences; the surface rises where depth falls.
                double riseX = (depth[y * width + Math.max(0, x - 1)] - depth[y * width + Math.min(width - 1, x + 1)])
                        / (2 * grid.pitchMicrometres());
                double riseY = (depth[above + x] - depth[below + x]) / (2 * grid.pitchMicrometres());
                double slope = Math.sqrt(1 + riseX * riseX + riseY * riseY);
                double floor = flat(depth[at], fullDepth);
                for (int lamp = 0; lamp < lamps.length; lamp++) {
                    double towards = -riseX * lamps[lamp].lampX + riseY * lamps[lamp].lampY + LAMP_UP;
                    double value = floor * (towards / slope) / LAMP_UP;
                    bright[lamp][at] = (float) Math.max(0, Math.min(BRIGHTEST, value));
                }
            }
        }
        return bright;
    }
}
