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
 * @param loss what the bath takes of it
 */
public record PlanRequest(Job job, double meanCoverage, String curveName, String reserve, CopperLoss loss) {
    public PlanRequest {
        Refusal.checkRange("film's mean coverage", meanCoverage, 0, 1, "", "give the share of black on the film");
    }

    /** A plate of which nobody has computed what the bath takes: its open share goes straight down, without undercut. */
    public PlanRequest(Job job, double meanCoverage, String curveName, String reserve) {
        this(job, meanCoverage, curveName, reserve, CopperLoss.straightDown(openShare(job.process(), meanCoverage)));
    }

    /** The same plate, of which the bath is known to take so much. */
    public PlanRequest losing(CopperLoss known) {
        return new PlanRequest(job, meanCoverage, curveName, reserve, known);
    }

    PlateProcess process() {
        return job.process();
    }

    /** Whether a screen film is exposed by itself before the positive, as photogravure always does. */
    boolean separateScreen() {
        return job.process() instanceof PlateProcess.Photogravure;
    }

    /**
     * Share of the plate that the bath reaches, as a guess: the film's black, less what a sprayed ground or the screen keeps covered inside
     * it.
     */
    private static double openShare(PlateProcess process, double meanCoverage) {
        if (process instanceof PlateProcess.SprayedAquatint ground) {
            return meanCoverage * (1 - ground.landFraction());
        }
        return process instanceof PlateProcess.Photogravure screen ? meanCoverage * screen.screenBlack() : meanCoverage;
    }

    double plateSquareCentimetres() {
        return job.plate().widthMillimetres() * job.plate().heightMillimetres() / 100;
    }

    /** Whether the plate goes into the bath at all. */
    boolean isBitten() {
        return !(job.process() instanceof PlateProcess.UnetchedFilm);
    }
}
