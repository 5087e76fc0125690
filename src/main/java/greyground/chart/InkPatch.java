package greyground.chart;

import java.util.List;

/**
 * One field of test plates that are printed over one another.
 *
 * @param area on every plate
 * @param role what it is for
 * @param coveragePerMille of each plate's film, 0 clear to 1000 solid
 */
public record InkPatch(Area area, Role role, List<Integer> coveragePerMille) {
    public InkPatch {
        coveragePerMille = List.copyOf(coveragePerMille);
    }

    /** What a field is for. */
    public sealed interface Role permits Full, Ramp, Half, Grey {
        /** Whether it only checks what the others taught. */
        default boolean isCheck() {
            return this instanceof Half || this instanceof Grey;
        }
    }

    /**
     * Full tones over one another; of no plate, bare paper.
     *
     * @param plates their bits, the plate printed first the lowest
     */
    public record Full(int plates) implements Role {}

    /**
     * A tone of one plate.
     *
     * @param plate from 0
     * @param step from the lightest, 0 to {@link InkChart#RAMP} - 1
     */
    public record Ramp(int plate, int step) implements Role {}

    /**
     * Middle tones of two plates.
     *
     * @param plates their bits
     */
    public record Half(int plates) implements Role {}

    /**
     * All plates alike.
     *
     * @param step from the lightest, 0 to {@link InkChart#GREYS} - 1
     */
    public record Grey(int step) implements Role {}

    InkPatch at(Area other) {
        return new InkPatch(other, role, coveragePerMille);
    }
}
