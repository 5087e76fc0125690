package greyground.plan;

import greyground.plate.Bath;
import greyground.plate.Exposure;
import greyground.plate.Film;
import greyground.plate.FilmRelief;
import greyground.plate.Ink;
import greyground.plate.Light;
import greyground.plate.LightSplit;
import greyground.plate.Paper;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.plate.Resist;
import greyground.plate.SprayedGround;
import greyground.plate.Wells;
import greyground.plate.Wipe;
import greyground.workshop.InkFigures;
import greyground.workshop.ResistFigures;
import greyground.workshop.Workshop;
import java.util.List;

/**
 * What the plan does to a plate, in the virtual plate's terms: the workshop's figures, exposed and bitten as planned.
 *
 * <p>The planned exposures hold the wanted wedge step behind the day's film base, so that together they are 10^D of that step in
 * hardening doses; two exposures share it as their seconds do, unless the job states their doses itself. The planned bite reaches the shop's usual depth, however long
 * today's bath takes for it.
 */
public final class BenchConditions {
    /** Ink up, the film's base lies between as well: 100 to 180 um in all (from memory, unverified), the middle. */
    private static final double BASE_AND_COVER_MICROMETRES = 140;

    /** Ink down: the resist's cover sheet alone lies between ink and resist, about 20 um (from memory, unverified). */
    private static final double COVER_SHEET_MICROMETRES = 20;

    /** Of polyester film, from memory, unverified. */
    private static final double POLYESTER_INDEX = 1.65;

    private BenchConditions() {}

    /**
     * The same for a film that may lie with its ink away from the resist.
     *
     * @param inkDown whether the film's ink touches the resist's cover sheet
     */
    public static PlateConditions ofDepth(
            Workshop workshop, PlateProcess process, double depthMicrometres, boolean inkDown) {
        Wells wells = process instanceof PlateProcess.UnetchedFilm
                ? new FilmRelief()
                : new Bath(depthMicrometres, workshop.bath().etchFactor().value());
        SprayedGround ground = process instanceof PlateProcess.SprayedAquatint spray
                ? new SprayedGround(spray.landFraction(), spray.grainMicrometres(), spray.seed())
                : null;
        return new PlateConditions(
                exposures(workshop, process, inkDown),
                resist(workshop, process),
                ground,
                wells,
                new Wipe(
                        workshop.wipe().padRadiusMillimetres().value(),
                        workshop.wipe().plateToneMicrometres().value()),
                ink(workshop),
                new Paper(
                        workshop.paper().whiteDensity().value(),
                        workshop.ink().yuleNielsenFactor().value()));
    }

    /** What the film printer lays down for the picture. */
    public static Film film(Workshop workshop) {
        return film(workshop, workshop.filmPrinter().edgeSoftnessMicrometres().value());
    }

    private static Film film(Workshop workshop, double softnessMicrometres) {
        return new Film(
                workshop.filmPrinter().clearUvDensity().value(),
                workshop.filmPrinter().blackUvDensity().value(),
                workshop.filmPrinter().spotGrowthMicrometres().value(),
                softnessMicrometres);
    }

    private static List<Exposure> exposures(Workshop workshop, PlateProcess process, boolean inkDown) {
        Light light = new Light(
                inkDown ? COVER_SHEET_MICROMETRES : BASE_AND_COVER_MICROMETRES,
                workshop.light().halfAngleDegrees().value(),
                POLYESTER_INDEX);
        // The wedge lay beside the film, on bare resist, and the plan corrects for film base: so this is behind no
        // film.
        double dose = StrictMath.pow(
                10, StepWedge.density(workshop.exposure().targetStep().value()));
        Film film = film(workshop);
        if (!(process instanceof PlateProcess.Photogravure gravure)) {
            return List.of(new Exposure(dose, Exposure.Sheet.POSITIVE, film, light));
        }
        if (gravure.split().isPresent()) {
            LightSplit split = gravure.split().get();
            double hardening = resist(workshop, process).throughCureDoseRatio();
            double edge = split.edgeBlurMicrometres();
            // The half-shadow and what else softens an edge add as variances.
            double own = Math.sqrt(Math.max(0, edge * edge - light.blurMicrometres() * light.blurMicrometres()));
            return List.of(
                    new Exposure(hardening * split.screenDose(), Exposure.Sheet.SCREEN, film(workshop, own), light),
                    new Exposure(hardening * split.imageDose(), Exposure.Sheet.POSITIVE, film, light));
        }
        double screen = workshop.exposure().screenSeconds().value();
        double share = screen / (screen + workshop.exposure().imageSeconds().value());
        Film soft = film(
                workshop, workshop.exposure().screenEdgeSoftnessMicrometres().value());
        return List.of(
                new Exposure(dose * share, Exposure.Sheet.SCREEN, soft, light),
                new Exposure(dose * (1 - share), Exposure.Sheet.POSITIVE, film, light));
    }

    private static Resist resist(Workshop workshop, PlateProcess process) {
        ResistFigures resist = workshop.resist();
        boolean thinned = !(process instanceof PlateProcess.UnetchedFilm)
                && resist.thinningMinutes().value() > 0;
        double thickness = thinned
                ? resist.thinnedThicknessMicrometres().value()
                : resist.thicknessMicrometres().value();
        // The shop reads its wedge on film as it exposes it.
        return new Resist(
                thickness,
                thickness,
                resist.absorbancePerMicrometre().value(),
                resist.contrastGamma().value(),
                resist.smallestOpeningMicrometres().value(),
                resist.smallestLandMicrometres().value(),
                resist.leastHoldMicrometres().value());
    }

    private static Ink ink(Workshop workshop) {
        InkFigures ink = workshop.ink();
        return new Ink(
                ink.saturationDensity().value(),
                ink.strengthPerMicrometre().value(),
                ink.transferFraction().value(),
                ink.spreadMicrometres().value());
    }
}
