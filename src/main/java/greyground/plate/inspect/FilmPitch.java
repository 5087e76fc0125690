package greyground.plate.inspect;

/**
 * Printed distances of a film's pixels, which a printer out of true makes oblong.
 *
 * @param acrossMicrometres from column to column
 * @param downMicrometres from row to row
 */
public record FilmPitch(double acrossMicrometres, double downMicrometres) {
    /** Side of a square pixel of the same area. */
    double micrometres() {
        return acrossMicrometres == downMicrometres
                ? acrossMicrometres
                : Math.sqrt(acrossMicrometres * downMicrometres);
    }
}
