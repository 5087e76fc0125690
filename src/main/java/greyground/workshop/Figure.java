package greyground.workshop;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import java.time.LocalDate;

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

    /** A number found in this workshop on {@code date} by the test that {@code how} names. */
    public static Figure measured(double value, LocalDate date, String how) {
        return new Figure(value, new Provenance.Measured(date, how));
    }

    public boolean isAssumed() {
        return provenance instanceof Provenance.Assumed;
    }

    /** Refuses, naming the number by its {@code path} in the workshop file, unless it lies in its range. */
    void within(String path, Range range) {
        range.check("workshop " + path, value);
    }

    /** Refuses, naming the number by its {@code path} in the workshop file, unless it lies in [least, most]. */
    void within(String path, double least, double most, String unit, String remedy) {
        Refusal.checkRange("workshop " + path, value, least, most, unit, remedy);
    }
}
