package greyground.chart;

import greyground.quantity.Refusal;

/**
 * One field of the coverage wedge.
 *
 * @param area all of it; a reader leaves out its rim
 * @param coveragePerMille of the film, 0 clear to 1000 solid
 */
public record LevelPatch(Area area, int coveragePerMille) {
    public LevelPatch {
        Refusal.checkRange("a patch's coverage", coveragePerMille / 10.0, 0, 100, "%", "take one of the levels");
    }

    /** Coverage as a share, 0 to 1. */
    public double coverage() {
        return coveragePerMille / 1000.0;
    }
}
