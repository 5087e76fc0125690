package greyground.art.page;

/**
 * A file's own resolution, pixels an inch along stored rows and down stored columns; 0 where it states none.
 *
 * @param across along a row
 * @param down along a column
 */
public record PixelDensity(double across, double down) {
    public static final PixelDensity NONE = new PixelDensity(0, 0);
    /** Below this a stated resolution is a writer's filler, such as one pixel a millimetre or an inch (assumed). */
    private static final double LEAST = 30;

    private static final double MOST = 100_000;

    /** The density, or {@link #NONE} where the numbers can't be a scan's. */
    public static PixelDensity perInch(double across, double down) {
        boolean plausible = across >= LEAST && across <= MOST && down >= LEAST && down <= MOST;
        return plausible ? new PixelDensity(across, down) : NONE;
    }

    public static PixelDensity perCentimetre(double across, double down) {
        return perInch(across * 2.54, down * 2.54);
    }
}
