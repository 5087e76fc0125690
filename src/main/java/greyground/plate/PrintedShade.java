package greyground.plate;

import greyground.plate.edge.Distance;
import greyground.plate.edge.Grid;
import greyground.plate.edge.Normal;
import greyground.plate.edge.Softening;

/**
 * The shade that printed dots cast on the resist: their edges lie outside their pixels by the printer's spot growth, and are
 * blurred by its softness and by the lamp.
 *
 * <p>Growth moves an edge along its own blurred profile. While it is no more than twice the blur, the film is blurred as it is
 * and every place's share of black, seen as a place on a straight blurred edge, moves by the growth; so corners and narrow gaps
 * stay blurred in the plane. Where growth is larger, the blur is small beside the dots, and the distance to their edge decides
 * alone. Both are exact for a straight edge.
 */
final class PrintedShade {
    private static final double MOST_BLURS = 2;
    private static final float UNTOUCHED = 1e-7f;

    /** In pixels; less can't be told from none. */
    private static final double LEAST_BLUR = 0.1;

    private PrintedShade() {}

    /**
     * Share of light that reaches each place.
     *
     * @param black the film's pixels
     */
    static float[] transmission(boolean[] black, Exposure exposure, Grid grid) {
        float[] shade =
                covered(black, exposure.blurMicrometres(), exposure.film().spotGrowthMicrometres(), grid);
        float clear = (float) Film.transmission(exposure.film().clearDensity());
        float opaque = (float) Film.transmission(exposure.film().blackDensity());
        for (int i = 0; i < shade.length; i++) {
            shade[i] = clear + shade[i] * (opaque - clear);
        }
        return shade;
    }

    /** Share of each place that ink covers, its edges moved by growth and blurred. */
    static float[] covered(boolean[] black, double blur, double growth, Grid grid) {
        return Math.abs(growth) <= MOST_BLURS * blur
                ? movedAfterBlur(black, blur, growth, grid)
                : byDistance(black, blur, growth, grid);
    }

    private static float[] movedAfterBlur(boolean[] black, double blur, double growth, Grid grid) {
        float[] shade = new float[black.length];
        for (int i = 0; i < shade.length; i++) {
            shade[i] = black[i] ? 1 : 0;
        }
        shade = Softening.gaussian(shade, grid, blur);
        if (growth == 0) {
            return shade;
        }
        double moved = growth / blur;
        for (int i = 0; i < shade.length; i++) {
            if (shade[i] > UNTOUCHED && shade[i] < 1 - UNTOUCHED) {
                shade[i] = (float) Normal.below(Normal.deviations(shade[i]) + moved);
            }
        }
        return shade;
    }

    private static float[] byDistance(boolean[] black, double blur, double growth, Grid grid) {
        double deviation = Math.max(blur, LEAST_BLUR * grid.pitchMicrometres());
        float[] outside = Distance.micrometres(black, true, grid);
        float[] inside = Distance.micrometres(black, false, grid);
        for (int i = 0; i < outside.length; i++) {
            double beyond = black[i] ? -inside[i] : outside[i];
            outside[i] = (float) Normal.below((growth - beyond) / deviation);
        }
        return outside;
    }
}
