package greyground.plan;

import greyground.plate.PlateProcess;
import greyground.workshop.Workshop;

/**
 * The black that the planned exposure asks of a film, and the black that the film printer gives, both as ultraviolet densities of the
 * whole film, its base included: the wedge lies on bare resist, so that its steps are counted from no film.
 *
 * @param needed so that the resist under it washes out: the decades by which all light exceeds what just hardens (the density of the step
 *     just held, or a stated split's doses, and what the day's film base was made up for), plus the whole contrast range 1 / gamma
 *     (textbook contrast curve), plus the workshop's margin
 * @param onFilm of a solid black
 */
public record FilmBlack(double needed, double onFilm) {
    /** For what the plan exposes. Photogravure's two films are alike, so that both doses pass the same black. */
    public static FilmBlack of(Workshop workshop, PlateProcess process) {
        double doses = process instanceof PlateProcess.Photogravure gravure
                        && gravure.split().isPresent()
                ? StrictMath.log10(gravure.split().get().together())
                : StepWedge.density(workshop.exposure().targetStep().value());
        double base = StrictMath.log10(ExposureTimes.of(workshop).baseFactor());
        return new FilmBlack(
                doses
                        + base
                        + 1 / workshop.resist().contrastGamma().value()
                        + workshop.exposure().blackMarginDensity().value(),
                workshop.filmPrinter().blackUvDensity().value());
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
