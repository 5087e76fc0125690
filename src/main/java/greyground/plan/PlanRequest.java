package greyground.plan;

import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Size;

/**
 * What a plan needs to know of the job.
 *
 * @param process how the plate is made; photogravure exposes a screen film by itself before the positive
 * @param plate its size
 * @param inkDown whether the positive's ink touches the resist
 * @param transfers contacts from the plate to the final sheet, from 1, which is direct printing
 * @param meanCoverage share of the plate that is black on the film, 0 to 1
 * @param filmName for the heading
 * @param date as the job gives it, may be empty
 * @param resolution of the film
 * @param grainName for example "grain 180 µm"
 * @param curveName for example "predicted, virtual plate, a 40 µm bite"
 */
public record PlanRequest(
        PlateProcess process,
        Size plate,
        boolean inkDown,
        int transfers,
        double meanCoverage,
        String filmName,
        String date,
        Resolution resolution,
        String grainName,
        String curveName) {
    public PlanRequest {
        Refusal.checkRange("film's mean coverage", meanCoverage, 0, 1, "", "give the share of black on the film");
        Refusal.checkRange("contact transfers", transfers, 1, 9, "", "1 is direct printing");
    }

    /**
     * Share of the plate that the bath reaches: the film's black, less what a sprayed ground or the screen keeps covered inside
     * it.
     */
    public double openShare() {
        if (process instanceof PlateProcess.SprayedAquatint ground) {
            return meanCoverage * (1 - ground.landFraction());
        }
        if (process instanceof PlateProcess.Photogravure screen) {
            return meanCoverage * screen.screenBlack();
        }
        return meanCoverage;
    }

    /** Whether a screen film is exposed by itself before the positive. */
    public boolean separateScreen() {
        return process instanceof PlateProcess.Photogravure;
    }

    /** Plate's area. */
    public double plateSquareCentimetres() {
        return plate.widthMillimetres() * plate.heightMillimetres() / 100;
    }

    /** Whether the plate goes into the bath at all. */
    public boolean isBitten() {
        return !(process instanceof PlateProcess.UnetchedFilm);
    }
}
