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

    /**
     * Screen transmission at which a spot's edge hardens, from {@code Es Ts + Ei Ti = threshold}.
     *
     * @param threshold dose that hardens, in the same measure as the exposures, above 0
     * @param imageTransmission of the positive there, 0 to 1
     * @return below 0 where the image alone hardens, above 1 where nothing does
     */
    public static double criticalScreenTransmission(
            double screenDose, double imageDose, double imageTransmission, double threshold) {
        return (threshold - imageDose * imageTransmission) / screenDose;
    }

    /** Blur of this exposure's shadow edges: film softness and half-shadow, whose variances add. */
    public double blurMicrometres() {
        return Math.hypot(film.softnessMicrometres(), light.blurMicrometres());
    }
}
