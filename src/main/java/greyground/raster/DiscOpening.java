package greyground.raster;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;

/**
 * Keeps of a set what a disc of some width covers without leaving it: a morphological opening (Serra 1982, from memory).
 *
 * <p>The disc's centre may lie on a pixel, midway between two, or at a corner of four; what any of the four covers stays. A
 * pixel blocks the disc where its own square would be entered through a side, or where its centre comes nearer than half the
 * width and half a pixel. So bars along the raster are judged exactly, odd widths or even; slanted ones pass for up to 0.3 pixel
 * narrower than they are. Widths to one pixel change nothing. The result does not depend on how the plane lies.
 *
 * <p>What lies nearer to the plane's edge than {@link #reach} is not to be trusted. Immutable; shared by all threads.
 */
public final class DiscOpening {
    private static final double WIDEST_PIXELS = 240;

    private final List<DiscRows> discs;
    private final int reach;

    /**
     * An opening by one disc.
     *
     * @param widthPixels 0 to 240
     */
    public DiscOpening(double widthPixels) {
        Refusal.checkRange(
                "narrowest part", widthPixels, 0, WIDEST_PIXELS, "film pixels", "give a smaller width or resolution");
        List<DiscRows> all = new ArrayList<>();
        if (widthPixels > 1) {
            double radius = widthPixels / 2 + 0.5;
            for (int half = 0; half < 4; half++) {
                all.add(DiscRows.of(radius, (half & 1) / 2.0, (half >> 1) / 2.0, (dx, dy) -> outside(dx, dy, radius)));
            }
        }
        discs = List.copyOf(all);
        reach = discs.isEmpty() ? 0 : 2 * ((int) Math.ceil(widthPixels / 2) + 1);
    }

    private static double outside(double dx, double dy, double radius) {
        boolean throughSide =
                (Math.abs(dx) <= 0.5 && Math.abs(dy) < radius) || (Math.abs(dy) <= 0.5 && Math.abs(dx) < radius);
        return throughSide ? -1 : dx * dx + dy * dy - radius * radius;
    }

    /** How far beyond a pixel others can matter to it, in pixels each way. */
    public int reach() {
        return reach;
    }

    /** What stays of the set. */
    public BitPlane of(BitPlane set) {
        if (discs.isEmpty()) {
            return set.rows(0, set.rows());
        }
        BitPlane kept = new BitPlane(set.wordsPerRow(), set.rows());
        for (DiscRows disc : discs) {
            disc.spread(disc.fits(set), 0, kept);
        }
        return kept;
    }
}
