package greyground.tone;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The place at which a monotone curve has a wanted value, where there is one.
 *
 * <p>Three kinds of value have no place and are marked instead of guessed: those beyond the curve's ends, those of a flat
 * stretch (any place would do as well as another) and those inside a jump between neighbouring points.
 */
public final class CurveInverse {
    private static final int HALVINGS = 60;

    private final MonotoneCubic curve;
    private final double leastSlope;
    private final boolean falling;
    private final List<Gap> gaps;

    /**
     * Values that no place has.
     *
     * @param from lower end, itself attained
     * @param to upper end, itself attained
     */
    public record Gap(double from, double to) {}

    /**
     * Inverts a curve.
     *
     * @param curve rising throughout or falling throughout
     * @param leastSlope a smaller steepness counts as flat
     * @param largestJump a greater step between neighbouring points counts as a gap (three standard deviations of a reading is
     *     a fair choice); infinite to see none
     */
    public CurveInverse(MonotoneCubic curve, double leastSlope, double largestJump) {
        this.curve = curve;
        this.leastSlope = leastSlope;
        int last = curve.size() - 1;
        this.falling = curve.pointValue(last) < curve.pointValue(0);
        List<Gap> found = new ArrayList<>();
        for (int i = 1; i <= last; i++) {
            double rise = curve.pointValue(i) - curve.pointValue(i - 1);
            if (falling ? rise > 0 : rise < 0) {
                throw Refusal.use(
                        "a curve turns back at point " + (i + 1) + " (" + Refusal.plain(curve.pointValue(i - 1))
                                + " to " + Refusal.plain(curve.pointValue(i))
                                + "); it must only rise or only fall to be inverted: fit it isotonically first");
            }
            if (Math.abs(rise) > largestJump) {
                double a = curve.pointValue(i - 1);
                double b = curve.pointValue(i);
                found.add(new Gap(Math.min(a, b), Math.max(a, b)));
            }
        }
        this.gaps = List.copyOf(found);
    }

    /** The least value that has a place. */
    public double least() {
        return curve.pointValue(falling ? curve.size() - 1 : 0);
    }

    /** The greatest value that has a place. */
    public double most() {
        return curve.pointValue(falling ? 0 : curve.size() - 1);
    }

    /** The jumps inside the curve's range. */
    public List<Gap> gaps() {
        return gaps;
    }

    /** The place of a value, or nothing where it is unattainable. */
    public OptionalDouble place(double value) {
        if (!(value >= least() && value <= most())) {
            return OptionalDouble.empty();
        }
        for (Gap gap : gaps) {
            if (value > gap.from() && value < gap.to()) {
                return OptionalDouble.empty();
            }
        }
        double low = curve.place(0);
        double high = curve.place(curve.size() - 1);
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            double there = curve.value(middle);
            if (falling ? there <= value : there >= value) {
                high = middle;
            } else {
                low = middle;
            }
        }
        // A monotone cubic already lies flat where a flat stretch begins, which is the place that halving finds.
        return Math.abs(curve.slope(high)) >= leastSlope ? OptionalDouble.of(high) : OptionalDouble.empty();
    }

    /** How many of the wanted values have no place. */
    public long unattainable(double... values) {
        long count = 0;
        for (double value : values) {
            if (place(value).isEmpty()) {
                count++;
            }
        }
        return count;
    }
}
