package greyground.tone;

import java.util.OptionalDouble;

/**
 * How much area a pattern covers once every black edge has moved outwards by the same distance: geometry alone, for dots
 * of each shape.
 *
 * <p>Growth is proportional to edge length, so finer patterns grow more for the same micrometres. Every law keeps bare film
 * bare and solid film solid, and never falls as coverage rises. At coverages next to 0 some patterns jump: dots of no size
 * still print as discs of the edge shift's radius.
 */
public sealed interface DotGrowth
        permits RoundDots, SquareDots, DiagonalSquares, Lines, RandomPixels, WholeDots, ContinuousTone {
    /**
     * Area after growth.
     *
     * @param coverage of the film, 0 to 1
     * @param edgeShiftMicrometres outwards; negative when black shrinks
     * @return 0 to 1
     */
    double grown(double coverage, double edgeShiftMicrometres);

    /** A short name for records, such as "round dots, pitch 166.6667 um". */
    String name();

    /**
     * The least film coverage that grows to at least {@code printed}, or nothing where even the smallest dot on film grows
     * larger (or none grows so large).
     *
     * @param printed area wanted, 0 to 1
     */
    default OptionalDouble filmCoverage(double printed, double edgeShiftMicrometres) {
        if (printed <= 0) {
            return OptionalDouble.of(0);
        }
        double low = 0;
        double high = 1;
        // Halving 60 times leaves no more than rounding.
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (grown(middle, edgeShiftMicrometres) >= printed) {
                high = middle;
            } else {
                low = middle;
            }
        }
        double reached = grown(high, edgeShiftMicrometres);
        return Math.abs(reached - printed) <= 1e-9 ? OptionalDouble.of(high) : OptionalDouble.empty();
    }

    /** Coverage of one round dot of a given diameter in each cell: pi d^2 / (4 p^2), the smallest tone of a film printer. */
    static double coverageOfDot(double diameterMicrometres, double pitchMicrometres) {
        double across = diameterMicrometres / pitchMicrometres;
        return Math.PI / 4 * across * across;
    }
}
