package greyground.plan;

import greyground.film.job.Job;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;

/**
 * What a plan needs to know besides the workshop.
 *
 * @param meanCoverage share of the plate that is black on the film, 0 to 1
 * @param curveName for example "predicted, virtual plate, a 40 µm bite"
 * @param reserve where its blacks stop short of the turning point, in words; empty where they don't
 */
public record PlanRequest(Job job, double meanCoverage, String curveName, String reserve) {
    public PlanRequest {
        Refusal.checkRange("film's mean coverage", meanCoverage, 0, 1, "", "give the share of black on the film");
    }

    PlateProcess process() {
        return job.process();
    }

    /** Whether a screen film is exposed by itself before the positive, as photogravure always does. */
    boolean separateScreen() {
        return job.process() instanceof PlateProcess.Photogravure;
    }

    /**
     * Share of the plate that the bath reaches: the film's black, less what a sprayed ground or the screen keeps covered inside
     * it.
     */
    double openShare() {
        if (job.process() instanceof PlateProcess.SprayedAquatint ground) {
            return meanCoverage * (1 - ground.landFraction());
        }
        return job.process() instanceof PlateProcess.Photogravure screen
                ? meanCoverage * screen.screenBlack()
                : meanCoverage;
    }

    double plateSquareCentimetres() {
        return job.plate().widthMillimetres() * job.plate().heightMillimetres() / 100;
    }

    /** Whether the plate goes into the bath at all. */
    boolean isBitten() {
        return !(job.process() instanceof PlateProcess.UnetchedFilm);
    }
}
