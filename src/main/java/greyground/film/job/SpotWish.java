package greyground.film.job;

import greyground.art.spots.Spot;
import greyground.quantity.Refusal;
import java.util.List;

/** Which dust, hairs and scratches of the art are healed. */
public sealed interface SpotWish {
    SpotWish NONE = new None();

    SpotWish FOUND = new Found();

    /** None: the art stays as it is. */
    record None() implements SpotWish {}

    /** Those that are found in the art and stand out of what it has of its own. */
    record Found() implements SpotWish {}

    /**
     * Those that somebody chose.
     *
     * @param spots numbered from 1 in this order, in which they are healed; those that are not accepted are kept to be read
     */
    record Chosen(List<Spot> spots) implements SpotWish {
        /** Spots of a job (assumed). */
        public static final int MOST = 10_000;

        public Chosen {
            spots = List.copyOf(spots);
            if (spots.size() > MOST) {
                throw Refusal.use("the spots file holds " + spots.size() + " spots; it may hold " + MOST
                        + ": leave those out that are refused");
            }
        }
    }
}
