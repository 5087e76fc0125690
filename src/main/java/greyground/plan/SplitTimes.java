package greyground.plan;

import greyground.plate.Exposure;
import greyground.plate.Light;
import greyground.plate.LightSplit;
import greyground.plate.PlateConditions;
import greyground.plate.split.DoubleExposure;
import greyground.plate.split.ExposureSplit;
import greyground.workshop.Workshop;
import java.util.function.ToDoubleFunction;

/**
 * A split of two exposures as the bench gives it: seconds under today's lamp, and how far the screen film must lie off the resist
 * for its edges to be soft enough.
 *
 * @param screenSeconds through the screen film
 * @param imageSeconds through the positive
 * @param stepHeld step of a wedge, exposed through no film, that the two together just hold
 * @param spacerMicrometres between the screen's ink and the resist, in clear polyester; 0 where contact is soft enough
 */
public record SplitTimes(double screenSeconds, double imageSeconds, double stepHeld, double spacerMicrometres) {
    /**
     * Works them out. The shop's own exposures say how many seconds a hardening dose takes.
     *
     * @param conditions of the same workshop and its photogravure
     */
    public static SplitTimes of(Workshop workshop, PlateConditions conditions, ExposureSplit split) {
        return of(
                workshop,
                conditions,
                new LightSplit(split.screenDose(), split.imageDose(), split.edgeBlurMicrometres()));
    }

    /** The same for a split that a job states. */
    static SplitTimes of(Workshop workshop, PlateConditions conditions, LightSplit split) {
        double hardening = conditions.resist().throughCureDoseRatio();
        double dose = ExposureTimes.of(workshop).secondsPerDose(workshop) * hardening;
        double spacer = conditions.exposures().stream()
                .filter(exposure -> exposure.sheet() == Exposure.Sheet.SCREEN)
                .mapToDouble(exposure -> spacer(workshop, exposure.light(), split.edgeBlurMicrometres()))
                .findFirst()
                .orElse(0);
        return new SplitTimes(
                dose * split.screenDose(),
                dose * split.imageDose(),
                StepWedge.step(StrictMath.log10(split.together() * hardening)),
                spacer);
    }

    /** Softness that the screen film's own edges and its contact with the resist give without trying. */
    public static double sharpestMicrometres(Workshop workshop, PlateConditions conditions) {
        double contact = ofScreen(conditions, exposure -> exposure.light().blurMicrometres());
        return StrictMath.hypot(workshop.filmPrinter().edgeSoftnessMicrometres().value(), contact);
    }

    /** The split that the workshop's own numbers give, in units of the dose that hardens this resist. */
    public static DoubleExposure present(PlateConditions conditions) {
        double screen = 0;
        double image = 0;
        for (Exposure exposure : conditions.exposures()) {
            double dose = exposure.doseRatio() / conditions.resist().throughCureDoseRatio();
            screen += exposure.sheet() == Exposure.Sheet.SCREEN ? dose : 0;
            image += exposure.sheet() == Exposure.Sheet.POSITIVE ? dose : 0;
        }
        return new DoubleExposure(screen, image);
    }

    /** Softness of the screen's edges at the resist as the workshop's own numbers give it. */
    public static double presentBlurMicrometres(PlateConditions conditions) {
        return ofScreen(conditions, Exposure::blurMicrometres);
    }

    /** A measure of the exposure through the screen; 0 where there is none. */
    private static double ofScreen(PlateConditions conditions, ToDoubleFunction<Exposure> measure) {
        return conditions.exposures().stream()
                .filter(exposure -> exposure.sheet() == Exposure.Sheet.SCREEN)
                .mapToDouble(measure)
                .findFirst()
                .orElse(0);
    }

    private static double spacer(Workshop workshop, Light light, double blurMicrometres) {
        double film = workshop.filmPrinter().edgeSoftnessMicrometres().value();
        double shadow = Math.sqrt(Math.max(0, blurMicrometres * blurMicrometres - film * film));
        // Half-shadow grows evenly with the gap.
        double unit = new Light(1000, light.halfAngleDegrees(), light.refractiveIndex()).blurMicrometres() / 1000;
        double gap = unit > 0 ? shadow / unit : 0;
        return gap > light.gapMicrometres() * 1.05 ? gap : 0;
    }
}
