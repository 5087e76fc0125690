package greyground.desk.model;

import greyground.film.job.Placing.Fit;
import greyground.quantity.Size;

/**
 * How a picture lies on a plate, as it is shown before the plate is chosen; the film's own placing adds bleed and bevel.
 *
 * @param plate the copper
 * @param seen the part of the plate that the picture covers, in millimetres from its upper left
 * @param cutShare how much of the picture is cut off, 0 to 1
 * @param whole whether the picture is shown whole
 */
public record PlateFilling(Size plate, Viewport.Area seen, double cutShare, boolean whole) {
    /**
     * Lays a picture on a plate.
     *
     * @param widthOverHeight of the picture's part that is wanted, above 0
     */
    public static PlateFilling of(Size plate, Fit fit, double widthOverHeight) {
        double width = plate.widthMillimetres();
        double height = plate.heightMillimetres();
        double shape = width / height;
        double share = Math.min(shape / widthOverHeight, widthOverHeight / shape);
        if (fit == Fit.FILL) {
            return new PlateFilling(plate, new Viewport.Area(0, 0, width, height), 1 - share, false);
        }
        double across = widthOverHeight > shape ? width : height * widthOverHeight;
        double down = across / widthOverHeight;
        return new PlateFilling(
                plate, new Viewport.Area((width - across) / 2, (height - down) / 2, across, down), 0, true);
    }

    /** What becomes of the picture, in a sentence. */
    public String words(boolean inches) {
        if (!whole) {
            long percent = Math.round(100 * cutShare);
            return percent == 0
                    ? "All of the picture fills the plate."
                    : "The picture fills the plate; " + percent + " % of it is cut off.";
        }
        double side = seen.left();
        double above = seen.top();
        double bare = Math.max(side, above);
        return bare < 0.5
                ? "All of the picture fills the plate."
                : "All of the picture; " + DeskWords.length(bare, inches) + " stay bare "
                        + (side > above ? "left and right." : "above and below.");
    }
}
