package greyground.scan;

/**
 * Takes a scanner's stray light out of a signal: what was read is (1 - f) of the place's own light and f of the mean about it
 * ({@code R' = (1 - f) R + f Rbar}), the mean being over a square of {@value #SIDE_MILLIMETRES} mm: some 5 mm round a place, as far as light
 * travels within a glass of a few millimetres (assumed).
 */
final class StrayLight {
    /** Side of the surroundings. */
    static final int SIDE_MILLIMETRES = 10;

    private static final int CELL_PIXELS_LEAST = 1;
    private static final int CELLS = 10;

    private final LightMap light;
    private final LightMap coarse;
    private final LightMap.Means means;
    private final double share;
    private final int reach;

    /**
     * Prepares means about every place.
     *
     * @param share f, 0 to below 1
     * @param pixelsPerMillimetre of the scan
     */
    StrayLight(LightMap light, double share, double pixelsPerMillimetre) {
        this.light = light;
        this.share = share;
        double side = SIDE_MILLIMETRES * pixelsPerMillimetre;
        int factor = (int) Math.max(CELL_PIXELS_LEAST, side / CELLS / light.step());
        this.coarse = share > 0 ? light.reduced(factor) : light.reduced(Math.max(light.width(), light.height()));
        this.reach = (int) Math.max(1, Math.round(side / coarse.step() / 2));
        this.means = coarse.new Means();
    }

    /** The light of a place, as the scan has it. */
    double raw(double xPixels, double yPixels) {
        return light.at(xPixels, yPixels);
    }

    /** The mean light of a small area about a place, without what strayed there. */
    double cleared(double signal, double xPixels, double yPixels) {
        if (share == 0) {
            return signal;
        }
        return Math.max(0, (signal - share * surround(xPixels, yPixels)) / (1 - share));
    }

    private double surround(double xPixels, double yPixels) {
        int x = (int) Math.max(0, Math.min(coarse.width() - 1, xPixels / coarse.step()));
        int y = (int) Math.max(0, Math.min(coarse.height() - 1, yPixels / coarse.step()));
        return means.about(x, y, reach);
    }
}
