package greyground.film.job;

import greyground.quantity.Offset;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A closed shape on the plate, in millimetres from its top left, as the print reads. */
public sealed interface Outline {
    /** A plate's longest side, and as much on either side of it. */
    Range PLACE =
            new Range(-3000, 6000, Unit.MILLIMETRES, "places count from the plate's top left, as the print reads");

    Range SIDE = new Range(0.5, 9000, Unit.MILLIMETRES, "give the shape's own width and height");

    Range CORNER = new Range(0.1, 1500, Unit.MILLIMETRES, "give the corner's own radius or cut");

    /** Corners of a polygon (assumed). */
    int MOST_POINTS = 10_000;

    /** Points round it, in order; the last is joined to the first. */
    List<Offset> points(Size plate);

    /**
     * Where a shape lies.
     *
     * @param left of its left edge
     * @param top of its upper edge
     */
    record Box(double left, double top, double width, double height) {
        public Box {
            PLACE.check("outline's left edge", left);
            PLACE.check("outline's upper edge", top);
            SIDE.check("outline's width", width);
            SIDE.check("outline's height", height);
        }

        static Box of(Optional<Box> own, Size plate) {
            return own.orElseGet(() -> new Box(0, 0, plate.widthMillimetres(), plate.heightMillimetres()));
        }
    }

    /** What a rectangle's corners are. */
    enum Corner {
        SQUARE,
        ROUND,
        CUT
    }

    /**
     * A rectangle.
     *
     * @param corner how its corners are
     * @param millimetres radius of a round corner, legs of a cut one; 0 for square ones
     * @param box where it lies; empty for all of the plate
     */
    record Rectangle(Corner corner, double millimetres, Optional<Box> box) implements Outline {
        private static final int STEPS = 90;

        public Rectangle {
            if (corner != Corner.SQUARE) {
                CORNER.check("outline's corner", millimetres);
            }
        }

        @Override
        public List<Offset> points(Size plate) {
            Box at = Box.of(box, plate);
            double leg = Math.min(millimetres, Math.min(at.width(), at.height()) / 2);
            double right = at.left() + at.width();
            double bottom = at.top() + at.height();
            List<Offset> points = new ArrayList<>();
            corner(points, at.left() + leg, at.top() + leg, 2, leg);
            corner(points, right - leg, at.top() + leg, 3, leg);
            corner(points, right - leg, bottom - leg, 0, leg);
            corner(points, at.left() + leg, bottom - leg, 1, leg);
            return points;
        }

        /** A corner about its middle, from a quarter turn to the next. */
        private void corner(List<Offset> points, double x, double y, int quarter, double leg) {
            int steps = corner == Corner.ROUND ? STEPS : corner == Corner.CUT ? 1 : 0;
            for (int i = 0; i <= steps; i++) {
                double angle = StrictMath.PI / 2 * (quarter + (steps == 0 ? 0 : (double) i / steps));
                points.add(new Offset(x + leg * StrictMath.cos(angle), y + leg * StrictMath.sin(angle)));
            }
        }
    }

    /**
     * An ellipse.
     *
     * @param box round it; empty for all of the plate
     */
    record Ellipse(Optional<Box> box) implements Outline {
        /** A hundredth of a millimetre from the true shape on the largest plate. */
        private static final int STEPS = 900;

        @Override
        public List<Offset> points(Size plate) {
            Box at = Box.of(box, plate);
            List<Offset> points = new ArrayList<>();
            for (int i = 0; i < STEPS; i++) {
                double angle = 2 * StrictMath.PI * i / STEPS;
                points.add(new Offset(
                        at.left() + at.width() * (1 + StrictMath.cos(angle)) / 2,
                        at.top() + at.height() * (1 + StrictMath.sin(angle)) / 2));
            }
            return points;
        }
    }

    /**
     * Corners joined straight; where sides cross, what lies within an even number of turns is outside.
     *
     * @param corners three or more
     */
    record Polygon(List<Offset> corners) implements Outline {
        public Polygon {
            corners = List.copyOf(corners);
            if (corners.size() < 3 || corners.size() > MOST_POINTS) {
                throw Refusal.use("the outline's polygon has " + corners.size() + " corners; it must have 3 to "
                        + MOST_POINTS + ": such as polygon:10mm,10mm:90mm,15mm:50mm,80mm");
            }
            for (Offset corner : corners) {
                PLACE.check("outline's corner across", corner.acrossMillimetres());
                PLACE.check("outline's corner down", corner.downMillimetres());
            }
        }

        @Override
        public List<Offset> points(Size plate) {
            return corners;
        }
    }
}
