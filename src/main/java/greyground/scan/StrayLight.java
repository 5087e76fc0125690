package greyground.scan;

import org.jspecify.annotations.Nullable;

/**
 * Takes a scanner's stray light out of a signal: what was read is (1 - f) of the place's own light and f of the mean about it
 * ({@code R' = (1 - f) R + f Rbar}), the mean being over a square, where nothing else is known of {@value #SIDE_MILLIMETRES} mm: some 5 mm
 * round a place, as far as light travels within a glass of a few millimetres (assumed).
 */
final class StrayLight {
    /** Side of the surroundings. */
    static final int SIDE_MILLIMETRES = 10;

    private static final int CELLS = 10;

    private final LightMap light;
    private final double share;
    private final @Nullable Surroundings surroundings;

    private StrayLight(LightMap light, double share, @Nullable Surroundings surroundings) {
        this.light = light;
        this.share = share;
        this.surroundings = surroundings;
    }

    /** Leaves all light where it is. */
    static StrayLight none(LightMap light) {
        return new StrayLight(light, 0, null);
    }

    /**
     * Takes a share out.
     *
     * @param share f, 0 to below 1
     */
    static StrayLight of(LightMap light, double share, Surroundings surroundings) {
        return new StrayLight(light, share, surroundings);
    }

    /** The light of a place, as the scan has it. */
    double raw(double xPixels, double yPixels) {
        return light.at(xPixels, yPixels);
    }

    /** The mean light of a small area about a place, without what strayed there. */
    double cleared(double signal, double xPixels, double yPixels) {
        return surroundings == null
                ? signal
                : Math.max(0, (signal - share * surroundings.mean(xPixels, yPixels)) / (1 - share));
    }

    /** Mean light about every place. */
    @FunctionalInterface
    interface Surroundings {
        double mean(double xPixels, double yPixels);

        /**
         * Of a square.
         *
         * @param sideMillimetres of the square, above 0
         * @param pixelsPerMillimetre of the scan
         */
        static Surroundings square(LightMap light, double sideMillimetres, double pixelsPerMillimetre) {
            double side = sideMillimetres * pixelsPerMillimetre;
            LightMap coarse = light.reduced((int) Math.max(1, side / CELLS / light.step()));
            int reach = (int) Math.max(1, Math.round(side / coarse.step() / 2));
            LightMap.Means means = coarse.new Means();
            return (xPixels, yPixels) -> means.about(
                    (int) Math.max(0, Math.min(coarse.width() - 1, xPixels / coarse.step())),
                    (int) Math.max(0, Math.min(coarse.height() - 1, yPixels / coarse.step())),
                    reach);
        }

        /** That falls off: the mean of squares of a third, one and three times the side. */
        static Surroundings fallingOff(LightMap light, double sideMillimetres, double pixelsPerMillimetre) {
            Surroundings near = square(light, sideMillimetres / 3, pixelsPerMillimetre);
            Surroundings middle = square(light, sideMillimetres, pixelsPerMillimetre);
            Surroundings far = square(light, 3 * sideMillimetres, pixelsPerMillimetre);
            return (x, y) -> (near.mean(x, y) + middle.mean(x, y) + far.mean(x, y)) / 3;
        }
    }
}
