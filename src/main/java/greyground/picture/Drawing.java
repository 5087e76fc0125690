package greyground.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * Lines, areas and words on a page, before they become pixels, SVG or PDF. Lengths are in one unit, a pixel or a point, from
 * the page's top left corner; colours are 0xRRGGBB. Later marks lie on earlier ones. One thread builds it.
 */
final class Drawing {
    private final double width;
    private final double height;
    private final List<Mark> marks = new ArrayList<>();

    Drawing(double width, double height) {
        this.width = width;
        this.height = height;
    }

    /** Where a line of words stands to its place. */
    enum Anchor {
        START(0),
        MIDDLE(0.5),
        END(1);

        private final double share;

        Anchor(double share) {
            this.share = share;
        }

        /** Share of the line that lies before its place. */
        double share() {
            return share;
        }
    }

    /** Something drawn. */
    sealed interface Mark {}

    /**
     * A line through points.
     *
     * @param dash length of a dash and of the gap after it, 0 for an unbroken line
     */
    record Line(List<Point> points, double weight, int colour, double dash) implements Mark {}

    /** An area within points. */
    record Area(List<Point> points, int colour) implements Mark {}

    /** A filled circle, with a ring round it where the ring's colour is not negative. */
    record Dot(Point middle, double radius, int colour, int ring) implements Mark {}

    /**
     * A line of words.
     *
     * @param at on the baseline
     * @param quarterTurns clockwise about {@code at}
     */
    record Words(Point at, double size, Anchor anchor, int quarterTurns, boolean heavy, int colour, String text)
            implements Mark {}

    /** A place. */
    record Point(double x, double y) {}

    double width() {
        return width;
    }

    double height() {
        return height;
    }

    List<Mark> marks() {
        return List.copyOf(marks);
    }

    void line(double x1, double y1, double x2, double y2, double weight, int colour) {
        marks.add(new Line(List.of(new Point(x1, y1), new Point(x2, y2)), weight, colour, 0));
    }

    void dashed(double x1, double y1, double x2, double y2, double weight, int colour, double dash) {
        marks.add(new Line(List.of(new Point(x1, y1), new Point(x2, y2)), weight, colour, dash));
    }

    void path(List<Point> points, double weight, int colour, double dash) {
        marks.add(new Line(List.copyOf(points), weight, colour, dash));
    }

    void rectangle(double left, double top, double across, double down, int colour) {
        marks.add(new Area(
                List.of(
                        new Point(left, top),
                        new Point(left + across, top),
                        new Point(left + across, top + down),
                        new Point(left, top + down)),
                colour));
    }

    void area(List<Point> points, int colour) {
        marks.add(new Area(List.copyOf(points), colour));
    }

    void dot(double x, double y, double radius, int colour) {
        marks.add(new Dot(new Point(x, y), radius, colour, -1));
    }

    void ring(double x, double y, double radius, int colour, int ring) {
        marks.add(new Dot(new Point(x, y), radius, colour, ring));
    }

    void words(double x, double y, double size, Anchor anchor, int colour, String text) {
        marks.add(new Words(new Point(x, y), size, anchor, 0, false, colour, text));
    }

    void heavyWords(double x, double y, double size, Anchor anchor, int colour, String text) {
        marks.add(new Words(new Point(x, y), size, anchor, 0, true, colour, text));
    }

    void turnedWords(double x, double y, double size, int quarterTurns, int colour, String text) {
        marks.add(new Words(new Point(x, y), size, Anchor.MIDDLE, quarterTurns, false, colour, text));
    }
}
