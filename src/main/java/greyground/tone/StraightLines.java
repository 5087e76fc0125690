package greyground.tone;

import greyground.quantity.Refusal;
import java.util.Arrays;

/** A curve of straight lines through points; past its ends it stays as it is there. Nothing changes it once it is built. */
public final class StraightLines {
    private final double[] places;
    private final double[] values;

    /**
     * Joins points.
     *
     * @param places rising, one or more
     * @param values as many
     */
    public StraightLines(double[] places, double[] values) {
        if (places.length == 0 || places.length != values.length) {
            throw Refusal.use("a curve has " + places.length + " places and " + values.length
                    + " values; it needs as many, and at least one");
        }
        for (int i = 1; i < places.length; i++) {
            if (!(places[i] > places[i - 1])) {
                throw Refusal.use("a curve's place " + i + " is " + places[i] + " after " + places[i - 1]
                        + "; places must rise: sort them");
            }
        }
        this.places = places.clone();
        this.values = values.clone();
    }

    /** The value at a place. */
    public double value(double place) {
        int at = Arrays.binarySearch(places, place);
        if (at >= 0) {
            return values[at];
        }
        int upper = -at - 1;
        if (upper == 0 || upper == places.length) {
            return values[Math.min(upper, places.length - 1)];
        }
        double share = (place - places[upper - 1]) / (places[upper] - places[upper - 1]);
        return values[upper - 1] + share * (values[upper] - values[upper - 1]);
    }
}
