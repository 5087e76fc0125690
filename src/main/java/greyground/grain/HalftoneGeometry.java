package greyground.grain;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;

/**
 * A regular screen that closes on itself in a square tile of whole film pixels, and how far it is from what was asked.
 *
 * <p>The screen's wave has {@code wavesAcross} and {@code wavesDown} whole periods along the tile's two sides, so ruling
 * and angle are those of a whole-number vector: {@code dpi * sqrt(across^2 + down^2) / side} lines per inch (the rational
 * tangent of Ulichney 1987, from memory; figures checked in the tests). A larger tile comes nearer to any ruling and
 * angle; the smallest that is near enough is taken.
 *
 * @param side of the tile in pixels
 * @param wavesAcross periods along a row of the tile
 * @param wavesDown periods along a column
 * @param linesPerCentimetre real ruling
 * @param angleDegrees real angle of rows or lines against the film's width, counter-clockwise, in the turn of the one
 *     asked for
 * @param rulingError real over wanted ruling, less 1
 * @param angleErrorDegrees real less wanted angle
 */
public record HalftoneGeometry(
        int side,
        int wavesAcross,
        int wavesDown,
        double linesPerCentimetre,
        double angleDegrees,
        double rulingError,
        double angleErrorDegrees) {
    private static final int LEAST_SIDE = 256;
    private static final int ALWAYS_TRIED = 512;
    private static final int MOST_SIDE = 2048;
    private static final double LEAST_PITCH_PIXELS = 3;

    /** A misfit that no eye or moire shows: 0.03 degrees or 0.15 % of ruling; assumed. */
    private static final double ANGLE_ALLOWANCE = 0.03;

    private static final double RULING_ALLOWANCE = 0.0015;

    /**
     * Fits a tile of 256 to 2048 pixels to a halftone.
     *
     * @throws Refusal if the screen is finer than three film pixels
     */
    public static HalftoneGeometry fit(Grain.Halftone halftone, Resolution resolution) {
        double pitch = halftone.ruling().pitchMicrometres() / resolution.pitchMicrometres();
        if (pitch < LEAST_PITCH_PIXELS) {
            throw Refusal.use("halftone ruling is "
                    + Refusal.plain(halftone.ruling().linesPerCentimetre())
                    + " lines/cm, " + Refusal.plain(pitch) + " pixels at " + Refusal.plain(resolution.dotsPerInch())
                    + " dpi; that film carries at most "
                    + Refusal.plain(Math.floor(10_000 / (LEAST_PITCH_PIXELS * resolution.pitchMicrometres())))
                    + " lines/cm: choose a coarser ruling or a finer film");
        }
        double sine = StrictMath.sin(StrictMath.toRadians(halftone.angleDegrees()));
        double cosine = StrictMath.cos(StrictMath.toRadians(halftone.angleDegrees()));
        int bestSide = 0;
        double bestMisfit = Double.MAX_VALUE;
        for (int side = LEAST_SIDE; side <= MOST_SIDE && (side <= ALWAYS_TRIED || bestMisfit > 1); side++) {
            double misfit = of(side, sine, cosine, pitch, halftone, resolution).misfit();
            if (misfit < bestMisfit - 1e-9) {
                bestMisfit = misfit;
                bestSide = side;
            }
        }
        return of(bestSide, sine, cosine, pitch, halftone, resolution);
    }

    /** The nearest screen that closes in a tile of {@code side} pixels. Rows run along (cosine, -sine): y points down. */
    private static HalftoneGeometry of(
            int side, double sine, double cosine, double pitch, Grain.Halftone halftone, Resolution resolution) {
        int across = (int) StrictMath.rint(side * sine / pitch);
        int down = (int) StrictMath.rint(side * cosine / pitch);
        double perPixel = Math.sqrt((double) across * across + (double) down * down) / side;
        double lines = perPixel * 10_000 / resolution.pitchMicrometres();
        double angle = StrictMath.toDegrees(StrictMath.atan2(across, down));
        double error = angle - halftone.angleDegrees();
        error -= 360 * StrictMath.rint(error / 360);
        return new HalftoneGeometry(
                side,
                across,
                down,
                lines,
                halftone.angleDegrees() + error,
                lines / halftone.ruling().linesPerCentimetre() - 1,
                error);
    }

    private double misfit() {
        return Math.max(Math.abs(angleErrorDegrees) / ANGLE_ALLOWANCE, Math.abs(rulingError) / RULING_ALLOWANCE);
    }
}
