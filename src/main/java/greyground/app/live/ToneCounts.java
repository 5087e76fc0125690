package greyground.app.live;

import java.util.List;

/**
 * How many of the art's pixels have which tone at a station.
 *
 * @param shares of the pixels of the art's fragment, adding up to 1, in steps from the first tone to the last
 * @param first what the first step is called, such as "L* 0"
 * @param last what the last step is called
 */
public record ToneCounts(List<Double> shares, String first, String last) {
    /** Steps of every histogram: one L*, or one percent. */
    public static final int STEPS = 101;
}
