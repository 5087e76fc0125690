package greyground.fit;

import greyground.quantity.Refusal;

/**
 * One field of a film's wedge strip, measured on the film.
 *
 * @param coverage of the field in the film's file, 0 (clear) to 1 (solid)
 * @param density of the printed field, the film's base included, 0 to 6
 * @param standardError of the density, above 0
 */
public record FilmReading(double coverage, double density, double standardError) {
    /** Two readings of one field by one transmission densitometer differ by about as much (assumed). */
    public static final double DENSITOMETER_ERROR = 0.02;

    public FilmReading {
        Refusal.checkRange("film field's coverage", coverage * 100, 0, 100, "%", "give the share of black in the file");
        Refusal.checkRange("film field's density", density, 0, 6, "D", "measure it with the film's base, not above it");
        Refusal.checkRange("density's standard error", standardError, 1e-4, 1, "D", "0.02 is usual");
    }

    /** A field measured with a densitometer. */
    public static FilmReading measured(double coverage, double density) {
        return new FilmReading(coverage, density, DENSITOMETER_ERROR);
    }

    /**
     * A field that looks like a step of a transmission wedge in the developed resist: its density is the step's, to half a step
     * either way, all of which is equally likely.
     *
     * @param stepDensity density of that step
     * @param perStep density from step to step
     */
    public static FilmReading matched(double coverage, double stepDensity, double perStep) {
        return new FilmReading(coverage, stepDensity, perStep / 2 / Math.sqrt(3));
    }
}
