package greyground.plate;

import greyground.plate.edge.Softening;
import java.util.Comparator;

/**
 * How far one place of the film can change the print: the sum of what each step reaches. A patch with this much plate round it
 * prints like the whole plate.
 */
public final class Reach {
    /** Gaussians are cut off at four standard deviations ({@link Softening}). */
    private static final double DEVIATIONS = 4;

    /** Each step that finds edges looks at the pixels on either side. */
    private static final int PIXELS_PER_STEP = 2;

    private Reach() {}

    /** All of them. */
    public static double micrometres(PlateConditions conditions, double pixelMicrometres) {
        return besidesPad(conditions, pixelMicrometres) + padMicrometres(conditions);
    }

    /** The pad's apex comes down within sqrt(2 r h) of the places that hold it up, and the pad itself reaches as far again. */
    public static double padMicrometres(PlateConditions conditions) {
        return 2 * Math.sqrt(2000 * conditions.wipe().padRadiusMillimetres() * conditions.deepestMicrometres());
    }

    /**
     * Sums all steps but the pad: light and spot growth; resist too narrow to wash out or to hold; undercut and the lands it
     * loosens; the ink, spread once and levelled twice.
     *
     * @param pixelMicrometres of the virtual plate
     */
    public static double besidesPad(PlateConditions conditions, double pixelMicrometres) {
        double light = conditions.exposures().stream()
                .map(exposure -> DEVIATIONS * exposure.blurMicrometres()
                        + Math.abs(exposure.film().spotGrowthMicrometres()))
                .max(Comparator.naturalOrder())
                .orElse(0.0);
        Resist resist = conditions.resist();
        double developing = resist.smallestOpeningMicrometres() + resist.smallestLandMicrometres();
        double bite = conditions.wells() instanceof Bath bath
                ? bath.undercutMicrometres() + resist.leastHoldMicrometres()
                : 0;
        double ink = (1 + 2 * DEVIATIONS) * conditions.ink().spreadMicrometres();
        return light + developing + bite + ink + 6 * PIXELS_PER_STEP * pixelMicrometres;
    }
}
