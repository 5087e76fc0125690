package greyground.chart;

import java.util.List;

/** The coverages of the wedges, in tenths of a percent. */
public final class Levels {
    /**
     * Of full and strip plates: 25, closer at both ends, where the smallest opening and the last lands decide (the choice is
     * assumed).
     */
    public static final List<Integer> WEDGE = List.of(
            0, 10, 20, 30, 50, 75, 100, 150, 200, 250, 300, 400, 500, 600, 700, 750, 800, 850, 900, 925, 950, 970, 980,
            990, 1000);

    /** Of one strip of an exposure test. */
    public static final List<Integer> EXPOSURE = List.of(0, 30, 100, 250, 500, 750, 900, 970, 1000);

    private Levels() {}
}
