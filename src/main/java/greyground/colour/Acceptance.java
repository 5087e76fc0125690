package greyground.colour;

import greyground.quantity.Range;
import greyground.quantity.Unit;
import java.util.Map;
import java.util.TreeMap;

/**
 * How much of an ink a wet ink below it takes on: the share of the ink's density that stays, {@code D_12 = D_1 + t D_2} in each band (Preucil
 * 1953, as Chung and Hsu quote him). It makes the order of printing matter. Of several inks below, the uppermost decides (assumed).
 *
 * @param usual share where nothing else is told of a pair; 1 where all of it stays (assumed where nothing is known)
 * @param pairs shares of two inks, by the bits of their plates, the plate printed first the lowest
 */
public record Acceptance(double usual, Map<Integer, Double> pairs) {
    /** What any ink may take on; 0.7 to 0.9 is usual wet on wet (from memory). */
    public static final Range SHARE =
            new Range(0.2, 1, Unit.RATIO, "1 takes on all, as on a sheet that dried; 0.7 to 0.9 is usual wet on wet");

    /** All ink stays. */
    public static final Acceptance WHOLE = new Acceptance(1, Map.of());

    public Acceptance {
        SHARE.check("ink acceptance", usual);
        pairs.values().forEach(share -> SHARE.check("ink acceptance of a pair", share));
        pairs = Map.copyOf(new TreeMap<>(pairs));
    }

    /** Whether all ink stays everywhere. */
    public boolean isWhole() {
        return usual == 1 && pairs.values().stream().allMatch(share -> share == 1);
    }

    /** Share of a plate's ink that stays where just these plates print. */
    double share(int plates, int plate) {
        int below = Integer.highestOneBit(plates & ((1 << plate) - 1));
        return below == 0 ? 1 : pairs.getOrDefault(below | 1 << plate, usual);
    }
}
