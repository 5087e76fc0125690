package greyground.art.spots;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.List;

/**
 * A speck of dust, a hair or a scratch on a picture. Places count in pixels of the upright page from its top left corner, so that the
 * middle of the first pixel lies at 0.5, 0.5: what is done to the plate, or how the art is turned and cut out, moves none.
 *
 * @param points one of a round spot, the way of a line, joined straight
 * @param widthPixels how wide it is seen
 * @param contrast in L*, above 0 lighter than what lies around; 0 where nobody said
 * @param accepted whether it is to be healed
 */
public record Spot(List<Place> points, double widthPixels, double contrast, boolean accepted) {
    public static final Range PLACE =
            new Range(0, 1_000_000, Unit.RATIO, "places count in pixels of the art from its top left");

    /** Wider places would be smudges: a fill knows nothing but their rim (assumed). */
    public static final Range WIDTH =
            new Range(1, 100, Unit.RATIO, "it counts in pixels; mend wider places before the art is scanned");

    public static final Range CONTRAST =
            new Range(-100, 100, Unit.LIGHTNESS, "it is there to be read and changes nothing");

    /** Points of a line (assumed). */
    public static final int MOST_POINTS = 1000;

    /**
     * A place on a page.
     *
     * @param across pixels from its left edge
     * @param down pixels from its top
     */
    public record Place(double across, double down) {}

    public Spot {
        points = List.copyOf(points);
        if (points.isEmpty() || points.size() > MOST_POINTS) {
            throw Refusal.use("a spot has " + points.size() + " points; it must have 1, or up to " + MOST_POINTS
                    + " along a line: split it or leave it out");
        }
        points.forEach(point -> {
            PLACE.check("spot's place across", point.across());
            PLACE.check("spot's place down", point.down());
        });
        WIDTH.check("spot's width", widthPixels);
        CONTRAST.check("spot's contrast", contrast);
    }

    /** The same, to be healed or not. */
    public Spot accepted(boolean now) {
        return new Spot(points, widthPixels, contrast, now);
    }

    /** The same along another way. */
    Spot along(List<Place> way) {
        return new Spot(way, widthPixels, contrast, accepted);
    }

    /** How far a place lies from its middle line, in pixels. */
    double distance(double across, double down) {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < points.size(); k++) {
            Place to = points.get(k);
            Place from = points.get(Math.max(0, k - 1));
            double dx = to.across() - from.across();
            double dy = to.down() - from.down();
            double length = dx * dx + dy * dy;
            double along = length == 0 ? 0 : ((across - from.across()) * dx + (down - from.down()) * dy) / length;
            double held = Math.max(0, Math.min(1, along));
            double x = across - from.across() - held * dx;
            double y = down - from.down() - held * dy;
            least = Math.min(least, x * x + y * y);
        }
        return Math.sqrt(least);
    }
}
