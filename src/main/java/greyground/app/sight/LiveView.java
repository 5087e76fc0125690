package greyground.app.sight;

import greyground.quantity.Refusal;

/**
 * What a window shows: a rectangle in millimetres of plate from its top left corner, as the print reads; of the art by itself, in
 * art pixels.
 *
 * @param left of the window's left edge; below 0 left of the plate
 * @param top of the window's upper edge
 * @param perPixel length of one pixel of the window, above 0
 * @param width pixels of the window, 1 to 16 384
 * @param height pixels of the window, 1 to 16 384
 */
public record LiveView(double left, double top, double perPixel, int width, int height) {
    public LiveView {
        Refusal.checkRange("window width", width, 1, 16_384, "pixels", "make the window smaller");
        Refusal.checkRange("window height", height, 1, 16_384, "pixels", "make the window smaller");
        if (!(perPixel > 0) || !Double.isFinite(left) || !Double.isFinite(top)) {
            throw Refusal.use("a view's pixel is " + perPixel + " wide; it must be above 0");
        }
    }
}
