package greyground.workshop;

import greyground.quantity.Refusal;

/**
 * One number of the workshop and how it is known.
 *
 * @param value in the unit that the component's name states; finite
 * @param provenance assumed, or measured here
 */
public record Figure(double value, Provenance provenance) {
    public Figure {
        if (!Double.isFinite(value)) {
            throw Refusal.use("a workshop number is " + value + "; it must be finite: correct the workshop file");
        }
    }

    /** A number that nobody has measured in this workshop. {@code basis} says where it comes from. */
    public static Figure assumed(double value, String basis) {
        return new Figure(value, new Provenance.Assumed(basis));
    }
}
