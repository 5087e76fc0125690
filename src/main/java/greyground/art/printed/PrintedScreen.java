package greyground.art.printed;

import greyground.quantity.Refusal;

/**
 * A square screen of dots in a scanned print.
 *
 * <p>Of its two waves the first is kept; the second stands square to it: {@code (-down, across)}.
 *
 * @param across periods of the first wave along a row, in periods a pixel, above 0 to 0.5
 * @param down periods of the first wave along a column, 0 to 0.5; down is positive
 * @param share of the places looked at that show it, 0 to 1
 * @param drift by how much its period differs from place to place, as a share of the period; a page that isn't flat
 */
public record PrintedScreen(double across, double down, double share, double drift) {
    private static final double CENTIMETRES_PER_INCH = 2.54;

    public PrintedScreen {
        Refusal.checkRange("periods of a printed screen along a row", across, 1e-9, 0.5, "a pixel", "scan finer");
        Refusal.checkRange("periods of a printed screen along a column", down, 0, 0.5, "a pixel", "scan finer");
        Refusal.checkRange("share of places", share, 0, 1, "", "count places");
    }

    /** From one dot to the next, in pixels. */
    public double periodPixels() {
        return 1 / Math.sqrt(across * across + down * down);
    }

    /** Its ruling on the paper it was scanned from. */
    public double linesPerCentimetre(double pixelsPerInch) {
        return pixelsPerInch / CENTIMETRES_PER_INCH / periodPixels();
    }

    /** Angle of its rows against the scan's width, counter-clockwise, 0 to below 90. */
    public double angleDegrees() {
        double angle = StrictMath.toDegrees(StrictMath.atan2(-down, across));
        return angle < 0 ? angle + 90 : angle;
    }
}
