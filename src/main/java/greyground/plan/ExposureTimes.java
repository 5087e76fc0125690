package greyground.plan;

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
                ? Lamp.distanceFactor(
                        light.distanceAtTestMillimetres().value(),
                        light.distanceMillimetres().value())
                : 1;
        double ageing = Lamp.ageingFactor(
                light.hoursAtTest().value(),
                light.hours().value(),
                light.hoursToFourFifths().value());
        double base = Lamp.baseFactor(workshop.filmPrinter().clearUvDensity().value()
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

    /** The one exposure that replaces both when no separate screen is used: their sum (common practice). */
    public double togetherSeconds() {
        return screenSeconds + imageSeconds;
    }
}
