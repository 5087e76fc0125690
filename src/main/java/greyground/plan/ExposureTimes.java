package greyground.plan;

import greyground.plate.LightSplit;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.ExposureFigures;
import greyground.workshop.LampFigures;
import greyground.workshop.Workshop;

/**
 * The exposures for today's lamp, distance and film, from those the shop found: each is multiplied by the four factors.
 *
 * @param stepFactor so that the wanted wedge step is held
 * @param distanceFactor for the lamp's distance; 1 for tubes, whose light follows no simple law
 * @param ageingFactor for the lamp's hours
 * @param baseFactor for the film's clear density
 * @param screenSeconds corrected, through the screen film
 * @param imageSeconds corrected, through the positive
 */
public record ExposureTimes(
        double stepFactor,
        double distanceFactor,
        double ageingFactor,
        double baseFactor,
        double screenSeconds,
        double imageSeconds) {
    /** Corrects the workshop's exposures. */
    public static ExposureTimes of(Workshop workshop) {
        ExposureFigures exposure = workshop.exposure();
        LampFigures light = workshop.light();
        double step = StepWedge.exposureFactor(
                exposure.stepHeld().value(), exposure.targetStep().value());
        double distance = light.kind() == LampFigures.Kind.POINT
                ? distanceFactor(
                        light.distanceAtTestMillimetres().value(),
                        light.distanceMillimetres().value())
                : 1;
        double ageing = ageingFactor(
                light.hoursAtTest().value(),
                light.hours().value(),
                light.hoursToFourFifths().value());
        double base = baseFactor(workshop.filmPrinter().clearUvDensity().value()
                - exposure.filmBaseAtTestDensity().value());
        double all = step * distance * ageing * base;
        return new ExposureTimes(
                step,
                distance,
                ageing,
                base,
                exposure.screenSeconds().value() * all,
                exposure.imageSeconds().value() * all);
    }

    /** The same for a process that shares the light in doses of its own: seconds by what a hardening dose takes at this bench. */
    public static ExposureTimes of(Workshop workshop, PlateProcess process) {
        ExposureTimes times = of(workshop);
        if (!(process instanceof PlateProcess.Photogravure gravure)
                || gravure.split().isEmpty()) {
            return times;
        }
        LightSplit split = gravure.split().get();
        double dose = times.secondsPerDose(workshop);
        return new ExposureTimes(
                times.stepFactor(),
                times.distanceFactor(),
                times.ageingFactor(),
                times.baseFactor(),
                dose * split.screenDose(),
                dose * split.imageDose());
    }

    /** What a dose that just hardens the resist takes: the tested exposures together hold the wanted step, and so are 10^D of it. */
    double secondsPerDose(Workshop workshop) {
        return togetherSeconds()
                / StrictMath.pow(
                        10, StepWedge.density(workshop.exposure().targetStep().value()));
    }

    /** The one exposure that replaces both when no separate screen is used: their sum (common practice). */
    public double togetherSeconds() {
        return screenSeconds + imageSeconds;
    }

    /**
     * Inverse square law: (now / then)^2. Holds for a source small against its distance, not for tubes nearer than about
     * their own length.
     */
    public static double distanceFactor(double thenMillimetres, double nowMillimetres) {
        double ratio = nowMillimetres / thenMillimetres;
        return ratio * ratio;
    }

    /** Light left at an age: I0 exp(-t / tau), with tau from the hours after which 80 % is left. */
    public static double lightLeft(double hours, double hoursToFourFifths) {
        return StrictMath.exp(-hours / decayHours(hoursToFourFifths));
    }

    /** Time constant tau = hours / ln(1 / 0.8). */
    public static double decayHours(double hoursToFourFifths) {
        Refusal.checkRange("hours to 80 % light", hoursToFourFifths, 1, 1_000_000, "h", "ask the lamp's data sheet");
        return hoursToFourFifths / StrictMath.log(1 / 0.8);
    }

    /** Factor for a lamp that was {@code hoursThen} old when the exposure was found and is {@code hoursNow} old. */
    public static double ageingFactor(double hoursThen, double hoursNow, double hoursToFourFifths) {
        return lightLeft(hoursThen, hoursToFourFifths) / lightLeft(hoursNow, hoursToFourFifths);
    }

    /** Factor for printing through film, glass or cover sheet of the stated ultraviolet density: 10^D. */
    public static double baseFactor(double uvDensity) {
        return StrictMath.pow(10, uvDensity);
    }
}
