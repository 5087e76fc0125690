package greyground.desk.model;

import greyground.app.sight.LiveView;

/**
 * Which part of a plane a window of pixels shows. Lengths count in the plane's own unit: millimetres of plate, or pixels of art.
 *
 * @param left edge of the window on the plane
 * @param top edge of the window on the plane
 * @param perPixel length of a pixel, above 0
 * @param width pixels, at least 1
 * @param height pixels, at least 1
 */
public record Viewport(double left, double top, double perPixel, int width, int height) {
    public static final double MILLIMETRES_PER_INCH = 25.4;

    public record Area(double left, double top, double width, double height) {
        boolean holds(double x, double y) {
            return x >= left && x <= left + width && y >= top && y <= top + height;
        }

        public Area grown(double by) {
            return new Area(left - by, top - by, width + 2 * by, height + 2 * by);
        }
    }

    /** All of an area, as large as fits, in the middle. */
    public static Viewport fitting(Area area, int width, int height) {
        double perPixel = Math.max(area.width() / width, area.height() / height);
        return centred(area.left() + area.width() / 2, area.top() + area.height() / 2, perPixel, width, height);
    }

    private static Viewport centred(double x, double y, double perPixel, int width, int height) {
        return new Viewport(x - perPixel * width / 2, y - perPixel * height / 2, perPixel, width, height);
    }

    /** Place under a point of the window. */
    public double planeX(double pixelX) {
        return left + pixelX * perPixel;
    }

    public double planeY(double pixelY) {
        return top + pixelY * perPixel;
    }

    /** Where a place lies in the window. */
    public double pixelX(double planeX) {
        return (planeX - left) / perPixel;
    }

    public double pixelY(double planeY) {
        return (planeY - top) / perPixel;
    }

    /**
     * Closer or farther, while the place under a point stays under it.
     *
     * @param factor above 1 goes closer
     * @param least the smallest length of a pixel
     * @param most the largest
     */
    public Viewport zoomed(double pixelX, double pixelY, double factor, double least, double most) {
        double next = Math.max(least, Math.min(most, perPixel / factor));
        return new Viewport(planeX(pixelX) - pixelX * next, planeY(pixelY) - pixelY * next, next, width, height);
    }

    /** Moved so that what lay under one point lies {@code byX}, {@code byY} pixels farther right and down. */
    public Viewport dragged(double byX, double byY) {
        return new Viewport(left - byX * perPixel, top - byY * perPixel, perPixel, width, height);
    }

    /** The same scale about a place. */
    public Viewport about(double planeX, double planeY) {
        return centred(planeX, planeY, perPixel, width, height);
    }

    /** Another scale about the same middle. */
    public Viewport atScale(double newPerPixel) {
        return centred(planeX(width / 2.0), planeY(height / 2.0), newPerPixel, width, height);
    }

    /** Another window about the same middle, at the same scale. */
    public Viewport resized(int newWidth, int newHeight) {
        return centred(planeX(width / 2.0), planeY(height / 2.0), perPixel, newWidth, newHeight);
    }

    /** Millimetres of a pixel of a screen. */
    static double trueSize(double screenDotsPerInch) {
        return MILLIMETRES_PER_INCH / screenDotsPerInch;
    }

    /** No farther off than that some of the area stays in the window. */
    public Viewport within(Area area) {
        double margin = perPixel * Math.min(width, height) / 4;
        double x = held(planeX(width / 2.0), area.left() - margin, area.left() + area.width() + margin);
        double y = held(planeY(height / 2.0), area.top() - margin, area.top() + area.height() + margin);
        return about(x, y);
    }

    /** The value, or the end of a range past which it lies. */
    static double held(double value, double least, double most) {
        return Math.max(least, Math.min(most, value));
    }

    /** For the picture: the same part, on so many pixels of a screen for each of the window's. */
    public LiveView view(double outputScale) {
        int across = (int) Math.max(1, Math.round(width * outputScale));
        int down = (int) Math.max(1, Math.round(height * outputScale));
        return new LiveView(left, top, perPixel / outputScale, across, down);
    }
}
