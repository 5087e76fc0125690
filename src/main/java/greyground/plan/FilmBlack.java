package greyground.plan;

import greyground.workshop.ExposureFigures;
import greyground.workshop.Workshop;

/**
 * The black that the planned exposure asks of a film, and the black that the film printer gives, both as ultraviolet densities
 * over clear film.
 *
 * @param needed so that the film under it washes out: the density of the step just held,
 *     plus the whole contrast range 1 / gamma (textbook contrast curve), plus the workshop's margin
 * @param onFilm of a solid black
 */
public record FilmBlack(double needed, double onFilm) {
    /** For the step that the workshop wants held. */
    public static FilmBlack of(Workshop workshop) {
        ExposureFigures exposure = workshop.exposure();
        return new FilmBlack(
                StepWedge.density(exposure.targetStep().value())
                        + 1 / workshop.resist().contrastGamma().value()
                        + exposure.blackMarginDensity().value(),
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
