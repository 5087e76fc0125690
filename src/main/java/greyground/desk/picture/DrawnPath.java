package greyground.desk.picture;

import greyground.desk.model.Viewport;
import greyground.quantity.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A way over the plate as the hand draws it, in millimetres; and where the pointer is. */
final class DrawnPath {
    /** A hundredth of a millimetre: the hand is no finer. */
    private static final double FINEST = 100;

    private static final double SHARE_OF_BRUSH = 0.1;
    private static final double NEAR_PIXELS = 9;
    private static final int LEAST_CORNERS = 3;

    private final List<Offset> points = new ArrayList<>();
    private Optional<Offset> pointer = Optional.empty();
    private double brushMillimetres;

    void clear() {
        points.clear();
        pointer = Optional.empty();
    }

    void brush(double millimetres) {
        brushMillimetres = millimetres;
    }

    double brush() {
        return brushMillimetres;
    }

    List<Offset> points() {
        return List.copyOf(points);
    }

    Optional<Offset> pointer() {
        return pointer;
    }

    static Offset at(Viewport port, double pixelX, double pixelY) {
        return new Offset(
                Math.rint(port.planeX(pixelX) * FINEST) / FINEST, Math.rint(port.planeY(pixelY) * FINEST) / FINEST);
    }

    void point(Offset place) {
        pointer = Optional.of(place);
    }

    void begin(Offset place) {
        points.clear();
        points.add(place);
        point(place);
    }

    /** Goes on with the brush; steps much smaller than it tell nothing. */
    void goOn(Offset place) {
        point(place);
        if (points.isEmpty() || distance(points.get(points.size() - 1), place) >= brushMillimetres * SHARE_OF_BRUSH) {
            points.add(place);
        }
    }

    /** Sets a corner; says whether the shape is closed by it, since it lies on the first. */
    boolean corner(Offset place, double perPixel) {
        point(place);
        if (isClosed() && distance(points.get(0), place) <= NEAR_PIXELS * perPixel) {
            return true;
        }
        if (points.isEmpty() || distance(points.get(points.size() - 1), place) > 0) {
            points.add(place);
        }
        return false;
    }

    /** Takes the last corner away. */
    void back() {
        if (!points.isEmpty()) {
            points.remove(points.size() - 1);
        }
    }

    /** Whether its corners make a shape. */
    boolean isClosed() {
        return points.size() >= LEAST_CORNERS;
    }

    private static double distance(Offset one, Offset other) {
        return Math.hypot(
                one.acrossMillimetres() - other.acrossMillimetres(), one.downMillimetres() - other.downMillimetres());
    }
}
