package greyground.raster;

import greyground.quantity.Refusal;

/**
 * A rectangle of film pixels.
 *
 * @param left first column, 0 or more
 * @param top first row, 0 or more
 * @param width columns, 1 or more
 * @param height rows, 1 or more
 */
public record PixelRect(int left, int top, int width, int height) {
    public PixelRect {
        if (left < 0 || top < 0 || width < 1 || height < 1) {
            throw Refusal.use("a rectangle on the film starts at " + left + "," + top + " and measures " + width + " x "
                    + height + " pixels; it must start on the film and be at least 1 x 1");
        }
    }

    /** First column past the rectangle. */
    public int right() {
        return left + width;
    }

    /** First row past the rectangle. */
    public int bottom() {
        return top + height;
    }

    /** The same rectangle on a sheet of {@code sheetWidth} pixels seen from its other side. */
    public PixelRect mirrored(int sheetWidth) {
        return new PixelRect(sheetWidth - right(), top, width, height);
    }

    /** True where the two share a pixel. */
    /** The least rectangle that holds both. */
    public PixelRect around(PixelRect other) {
        int first = Math.min(left, other.left);
        int upper = Math.min(top, other.top);
        return new PixelRect(
                first, upper, Math.max(right(), other.right()) - first, Math.max(bottom(), other.bottom()) - upper);
    }

    public boolean meets(PixelRect other) {
        return left < other.right() && other.left < right() && top < other.bottom() && other.top < bottom();
    }
}
