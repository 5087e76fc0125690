package greyground.plate;

import greyground.plate.edge.Distance;
import greyground.plate.edge.Grid;
import greyground.plate.edge.Softening;
import greyground.quantity.Refusal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Light that reaches the resist through films that are exposed one after the other: {@code E = sum of dose_i T_i}. */
final class ExposureSum {
    private ExposureSum() {}

    /**
     * Adds the exposures, each spread by its own edges' blur. Doses are taken to add whatever their order and rate, as they
     * do until oxygen or a very dim lamp interferes.
     *
     * @param positive the picture's film
     * @param screen the screen's film, needed only where an exposure goes through it
     * @return dose ratio at each pixel
     */
    static float[] dose(List<Exposure> exposures, FilmPatch positive, @Nullable FilmPatch screen, Grid grid) {
        float[] sum = new float[grid.area()];
        for (Exposure exposure : exposures) {
            FilmPatch patch = exposure.sheet() == Exposure.Sheet.SCREEN ? screen : positive;
            if (patch == null) {
                throw Refusal.use("an exposure goes through a screen film, but there is none: give the screen film");
            }
            float[] through = patch.isBits()
                    ? PrintedShade.transmission(patch, exposure, grid)
                    : transmission(patch, exposure.film(), grid);
            if (!patch.isBits() && !patch.isUniform()) {
                through = Softening.gaussian(through, grid, exposure.blurMicrometres());
            }
            float dose = (float) exposure.doseRatio();
            for (int i = 0; i < sum.length; i++) {
                sum[i] += dose * through[i];
            }
        }
        return sum;
    }

    /** Share of light that passes each pixel, before any blur. */
    static float[] transmission(FilmPatch patch, Film film, Grid grid) {
        float[] through = new float[grid.area()];
        if (!patch.isBits()) {
            int[] columns = columns(patch, grid);
            // A film pixel is a square of many on the grid: its light is computed once.
            float[] light = new float[patch.width()];
            int present = -1;
            for (int y = 0; y < grid.height(); y++) {
                int filmY = filmPixel(y, patch.height(), patch, grid);
                for (int x = 0; filmY != present && x < light.length; x++) {
                    light[x] = (float) Film.transmission(patch.density(x, filmY));
                }
                present = filmY;
                for (int x = 0; x < columns.length; x++) {
                    through[y * grid.width() + x] = light[columns[x]];
                }
            }
            return through;
        }
        boolean[] black = black(patch, grid);
        float clear = (float) Film.transmission(film.clearDensity());
        float opaque = (float) Film.transmission(film.blackDensity());
        double growth = film.spotGrowthMicrometres();
        float[] beyond = growth == 0 ? through : Distance.micrometres(black, growth > 0, grid);
        for (int i = 0; i < through.length; i++) {
            if (growth == 0 || beyond[i] == 0) {
                through[i] = black[i] ? opaque : clear;
            } else {
                // A pixel that the moved edge crosses passes light by the shares on either side of it.
                double within = (Math.abs(growth) - beyond[i]) / grid.pitchMicrometres() + 0.5;
                double moved = Math.max(0, Math.min(1, within));
                double share = growth > 0 ? moved : 1 - moved;
                through[i] = (float) (clear + share * (opaque - clear));
            }
        }
        return through;
    }

    static boolean[] black(FilmPatch patch, Grid grid) {
        boolean[] black = new boolean[grid.area()];
        int[] columns = columns(patch, grid);
        for (int y = 0; y < grid.height(); y++) {
            int filmY = filmPixel(y, patch.height(), patch, grid);
            for (int x = 0; x < columns.length; x++) {
                black[y * grid.width() + x] = patch.black(columns[x], filmY);
            }
        }
        return black;
    }

    /** Which film pixel lies on each column of the grid. */
    private static int[] columns(FilmPatch patch, Grid grid) {
        int[] columns = new int[grid.width()];
        for (int x = 0; x < columns.length; x++) {
            columns[x] = filmPixel(x, patch.width(), patch, grid);
        }
        return columns;
    }

    private static int filmPixel(int at, int size, FilmPatch patch, Grid grid) {
        if (patch.isUniform()) {
            return 0;
        }
        return Math.min(size - 1, (int) ((at + 0.5) * grid.pitchMicrometres() / patch.pitchMicrometres()));
    }
}
