package greyground.film.job;

import greyground.quantity.PaperShrink;

/**
 * How large the art is drawn and which of its places lies on the plate's middle, whatever pixels the plate is counted in.
 *
 * @param middleX art place on the plate's middle, in art pixels from the left
 * @param middleY the same from the top
 * @param across plate pixels of one art pixel, across
 * @param down the same, down
 */
public record ArtScale(double middleX, double middleY, double across, double down) {
    /**
     * A plate in pixels.
     *
     * @param width in plate pixels of any size
     * @param height in plate pixels
     * @param scaleX how much wider a pixel really is than another of its film; 1 where pixels are true
     * @param scaleY the same, down
     */
    public record Plate(double width, double height, double scaleX, double scaleY) {}

    /**
     * Fits the art.
     *
     * @param artWidth pixels, after turning and straightening
     * @param artHeight pixels
     */
    public static ArtScale of(
            double artWidth, double artHeight, ArtChoice.Crop crop, Placing.Fit fit, PaperShrink shrink, Plate plate) {
        double cropWidth = crop.width() * artWidth;
        double cropHeight = crop.height() * artHeight;
        double fromWidth = plate.width() * plate.scaleX() / shrink.filmScaleAcross() / cropWidth;
        double fromHeight = plate.height() * plate.scaleY() / shrink.filmScaleDown() / cropHeight;
        double dried = fit == Placing.Fit.FILL ? Math.max(fromWidth, fromHeight) : Math.min(fromWidth, fromHeight);
        // The closer side meets the plate exactly; the division keeps it so despite rounding.
        return new ArtScale(
                crop.left() * artWidth + cropWidth / 2,
                crop.top() * artHeight + cropHeight / 2,
                dried == fromWidth ? plate.width() / cropWidth : dried * shrink.filmScaleAcross() / plate.scaleX(),
                dried == fromHeight ? plate.height() / cropHeight : dried * shrink.filmScaleDown() / plate.scaleY());
    }

    /** Art column under a place of the plate. {@code fromMiddle} counts plate pixels to the right of the plate's middle. */
    public double artX(double fromMiddle) {
        return middleX + fromMiddle / across;
    }

    /** Art row under a place of the plate. {@code fromMiddle} counts plate pixels below the plate's middle. */
    public double artY(double fromMiddle) {
        return middleY + fromMiddle / down;
    }
}
