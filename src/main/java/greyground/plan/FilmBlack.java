package greyground.plan;

import greyground.workshop.Exposure;
import greyground.workshop.Workshop;

/**
 * The black that the planned exposure asks of a film, and the black that the film printer gives, both as ultraviolet densities
 * over clear film.
 *
 * @param needed so that the film under it washes out: {@link ResistCurve#requiredBlackDensity}
 * @param onFilm of a solid black
 */
public record FilmBlack(double needed, double onFilm) {
    /** For the step that the workshop wants held. */
    public static FilmBlack of(Workshop workshop) {
        Exposure exposure = workshop.exposure();
        return new FilmBlack(
                ResistCurve.requiredBlackDensity(
                        StepWedge.nominal().density(exposure.targetStep().value()),
                        workshop.resist().contrastGamma().value(),
                        exposure.blackMarginDensity().value()),
                workshop.filmPrinter().uvWindow());
    }

    /** Density by which the film's black is too thin; 0 where it is dense enough. */
    public double missing() {
        return Math.max(0, needed - onFilm);
    }

    /** The same in wedge steps: so many fewer held would do. */
    public double missingSteps() {
        return missing() / StepWedge.DENSITY_PER_STEP;
    }
}
