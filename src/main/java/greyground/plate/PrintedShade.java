package greyground.plate;

import greyground.plate.edge.Distance;
import greyground.plate.edge.Grid;
import greyground.plate.edge.Normal;
import greyground.plate.edge.Rim;
import greyground.plate.edge.Softening;
import java.util.Arrays;

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

    /** So many blurs from an edge lies one part in 10^10 of it, which no sum of light in single precision holds. */
    private static final double EDGE_BLURS = 6.5;

    /** A film pixel and the eight about it: each black or clear. */
    private static final int SURROUNDINGS = 1 << 9;

    private PrintedShade() {}

    /**
     * Share of light that reaches each place.
     *
     * @param film of bits
     */
    static float[] transmission(FilmPatch film, Exposure exposure, Grid grid) {
        float[] shade =
                covered(film, exposure.blurMicrometres(), exposure.film().spotGrowthMicrometres(), grid);
        float clear = (float) Film.transmission(exposure.film().clearDensity());
        float opaque = (float) Film.transmission(exposure.film().blackDensity());
        for (int i = 0; i < shade.length; i++) {
            shade[i] = clear + shade[i] * (opaque - clear);
        }
        return shade;
    }

    /** Share of each place that ink covers, its edges moved by growth and blurred. */
    static float[] covered(FilmPatch film, double blur, double growth, Grid grid) {
        if (Math.abs(growth) > MOST_BLURS * blur) {
            return byDistance(ExposureSum.black(film, grid), blur, growth, grid);
        }
        int split = grid.width() / film.width();
        boolean divided = split * film.width() == grid.width() && split * film.height() == grid.height();
        return divided && Softening.reach(grid, blur) <= split
                ? bySurroundings(film, split, blur, growth, grid)
                : movedAfterBlur(ExposureSum.black(film, grid), blur, growth, grid);
    }

    /** Where blur reaches no farther than the next film pixel, each of the surroundings that the film has is computed once. */
    private static float[] bySurroundings(FilmPatch film, int split, double blur, double growth, Grid grid) {
        int[] tiles = new int[SURROUNDINGS];
        Arrays.fill(tiles, -1);
        int[] found = new int[SURROUNDINGS];
        int count = 0;
        int[] tile = new int[film.width() * film.height()];
        for (int y = 0; y < film.height(); y++) {
            for (int x = 0; x < film.width(); x++) {
                int bits = surroundings(film, x, y);
                if (tiles[bits] < 0) {
                    found[count] = bits;
                    tiles[bits] = count++;
                }
                tile[y * film.width() + x] = tiles[bits];
            }
        }
        int side = 3 * split;
        Grid small = new Grid(count * side, side, grid.pitchMicrometres(), Rim.BOUNDED);
        boolean[] black = new boolean[small.area()];
        for (int i = 0; i < black.length; i++) {
            int x = i % small.width();
            int bit = i / small.width() / split * 3 + x % side / split;
            black[i] = (found[x / side] >> bit & 1) == 1;
        }
        float[] shades = movedAfterBlur(black, blur, growth, small);
        float[] shade = new float[grid.area()];
        for (int y = 0; y < grid.height(); y++) {
            int from = (split + y % split) * small.width() + split;
            spreadRow(shades, from, side, tile, y / split * film.width(), shade, y * grid.width(), film.width(), split);
        }
        return shade;
    }

    private static void spreadRow(
            float[] shades, int from, int side, int[] tile, int first, float[] shade, int to, int pixels, int split) {
        int at = to;
        for (int x = 0; x < pixels; x++) {
            int place = from + tile[first + x] * side;
            for (int k = 0; k < split; k++) {
                shade[at++] = shades[place + k];
            }
        }
    }

    private static int surroundings(FilmPatch film, int x, int y) {
        int bits = 0;
        for (int k = 0; k < 9; k++) {
            int across = film.rim().place(x + k % 3 - 1, film.width());
            int down = film.rim().place(y + k / 3 - 1, film.height());
            bits |= film.black(across, down) ? 1 << k : 0;
        }
        return bits;
    }

    /** The same place by place, whatever lies about it. */
    static float[] movedAfterBlur(boolean[] black, double blur, double growth, Grid grid) {
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
        double far = EDGE_BLURS * deviation;
        float[] outside = Distance.micrometres(black, true, grid, Math.max(0, far + growth));
        float[] inside = Distance.micrometres(black, false, grid, Math.max(0, far - growth));
        for (int i = 0; i < outside.length; i++) {
            double within = growth - (black[i] ? -inside[i] : outside[i]);
            outside[i] = within > far ? 1 : within < -far ? 0 : (float) Normal.below(within / deviation);
        }
        return outside;
    }
}
