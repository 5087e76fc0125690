package greyground.plan;

import greyground.plate.PlateProcess;
import greyground.quantity.Size;
import greyground.workshop.LampFigures;
import greyground.workshop.Workshop;
import java.util.Optional;

/**
 * Light at the plate's corners, the lamp hanging over its middle: cos^4 of the angle off the lamp's axis, for a small flat source that
 * faces the frame (the square of the longer way, and the slant of source and plate).
 *
 * @param share of the light in the middle, above 0 to 1
 * @param cornerMillimetres from the middle to a corner
 */
record CornerLight(double share, double cornerMillimetres) {
    /** In wedge steps; more than this is warned of (assumed: a sixth of the light moves edges less than a wedge's reading strays). */
    private static final double MOST_STEPS = 0.5;

    /** The same for photogravure, whose middle tones a tenth of the light already moves by some nine L* (its search's own table). */
    private static final double MOST_GRAVURE_STEPS = 0.3;

    /** Under today's lamp; empty for tubes, which follow no simple law. */
    static Optional<CornerLight> of(Workshop workshop, Size plate) {
        LampFigures light = workshop.light();
        return light.kind() == LampFigures.Kind.POINT
                ? Optional.of(of(light.distanceMillimetres().value(), plate))
                : Optional.empty();
    }

    static CornerLight of(double lampMillimetres, Size plate) {
        double corner = StrictMath.hypot(plate.widthMillimetres(), plate.heightMillimetres()) / 2;
        double slant = corner / lampMillimetres;
        double square = 1 / (1 + slant * slant);
        return new CornerLight(square * square, corner);
    }

    /** By how many wedge steps the corners get less. */
    double steps() {
        return -StrictMath.log10(share) / StepWedge.DENSITY_PER_STEP;
    }

    static double most(PlateProcess process) {
        return process instanceof PlateProcess.Photogravure ? MOST_GRAVURE_STEPS : MOST_STEPS;
    }

    /** How far the lamp must hang for the corners to get so few steps less. */
    double lampMillimetresFor(double steps) {
        double square = StrictMath.pow(10, StepWedge.DENSITY_PER_STEP * steps / 2);
        return cornerMillimetres / Math.sqrt(square - 1);
    }
}
