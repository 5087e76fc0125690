package greyground.film.job;

import greyground.quantity.Range;
import greyground.quantity.Unit;
import java.util.Optional;

/**
 * The shapes of plate and picture.
 *
 * @param plate the copper's own; empty for a rectangle. Past its bleed the film is clear
 * @param picture what the picture is shown in; empty for all of it
 * @param fadeMillimetres width over which the picture ends, half of it inside
 * @param tear how its edge is torn
 * @param black whether the film outside is as black as the plate holds, instead of clear
 */
public record Outlines(
        Optional<Outline> plate, Optional<Outline> picture, double fadeMillimetres, Tear tear, boolean black) {
    public static final Range FADE = new Range(0, 200, Unit.MILLIMETRES, "0 is a hard edge, 5 to 20 mm is soft");

    /** Rectangles, and no outline. */
    public static final Outlines NONE = new Outlines(Optional.empty(), Optional.empty(), 0, Tear.NONE, false);

    public Outlines {
        FADE.check("outline fade", fadeMillimetres);
    }

    /**
     * How an edge is torn.
     *
     * @param millimetres farthest from the drawn edge either way; 0 for not at all
     * @param seed chooses one of many equivalent edges
     */
    public record Tear(double millimetres, int seed) {
        public static final Range DEPTH = new Range(0, 2, Unit.MILLIMETRES, "0.5 to 1 mm looks like torn paper");

        public static final Tear NONE = new Tear(0, 1);

        public Tear {
            DEPTH.check("outline tear", millimetres);
        }
    }
}
