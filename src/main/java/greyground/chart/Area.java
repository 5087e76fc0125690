package greyground.chart;

import greyground.quantity.Refusal;

/**
 * A rectangle on a test plate, in whole micrometres from the plate's top left as the print reads, so that a layout made again is
 * the same to the last digit.
 *
 * @param left 0 or more
 * @param top 0 or more
 * @param width 1 or more
 * @param height 1 or more
 */
public record Area(int left, int top, int width, int height) {
    public Area {
        if (left < 0 || top < 0 || width < 1 || height < 1) {
            throw Refusal.use("an area of the test plate starts at " + left + "," + top + " µm and measures " + width
                    + " x " + height + " µm; it must start on the plate and be at least 1 x 1 µm");
        }
    }

    /** First micrometre past the right edge. */
    public int right() {
        return left + width;
    }

    /** First micrometre past the bottom edge. */
    public int bottom() {
        return top + height;
    }

    /** Its middle, across. */
    public double middleX() {
        return left + width / 2.0;
    }

    /** Its middle, down. */
    public double middleY() {
        return top + height / 2.0;
    }

    /** True where a place lies inside, not on its left or top edge. */
    public boolean holds(double x, double y) {
        return x > left && y > top && x < right() && y < bottom();
    }

    /** True where the two share any of their surface. */
    public boolean meets(Area other) {
        return left < other.right() && other.left < right() && top < other.bottom() && other.top < bottom();
    }

    /** The area grown on every side, or shrunk by a negative growth; never past the plate's top and left edges. */
    public Area grown(int by) {
        int x = Math.max(0, left - by);
        int y = Math.max(0, top - by);
        return new Area(x, y, right() + by - x, bottom() + by - y);
    }

    @Override
    public String toString() {
        return left + "," + top + "," + width + "," + height;
    }
}
