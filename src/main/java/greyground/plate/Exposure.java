package greyground.plate;

import greyground.quantity.Refusal;

/**
 * One exposure of the resist through one film.
 *
 * @param doseRatio dose behind no film at all, over the dose that just hardens the film of tested thickness through; 0 to
 *     1000. A wedge tells it without a meter: the density of the highest step that holds is its logarithm
 * @param sheet which film lies on the plate
 * @param film what that film's printer lays down
 * @param light lamp and gap
 */
public record Exposure(double doseRatio, Sheet sheet, Film film, Light light) {
    /** The films that can lie on a plate. */
    public enum Sheet {
        /** The picture. */
        POSITIVE,
        /** The aquatint screen, exposed by itself. */
        SCREEN
    }

    public Exposure {
        Refusal.checkRange("exposure", doseRatio, 0, 1000, "times the hardening dose", "read a step wedge first");
    }

    /** Blur of this exposure's shadow edges: film softness and half-shadow, whose variances add. */
    public double blurMicrometres() {
        return StrictMath.hypot(film.softnessMicrometres(), light.blurMicrometres());
    }

    /** The same exposure through another film. */
    public Exposure withFilm(Film other) {
        return new Exposure(doseRatio, sheet, other, light);
    }
}
