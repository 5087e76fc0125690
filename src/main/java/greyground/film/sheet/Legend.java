package greyground.film.sheet;

/**
 * A line of text on the film sheet, outside the plate.
 *
 * @param leftMillimetres of the text's start, from the sheet's left edge
 * @param topMillimetres of the text's baseline, from the sheet's top edge
 * @param capHeightMillimetres height of a capital letter
 * @param quarterTurns turned clockwise about its start, 0 to 3
 * @param text one line
 */
public record Legend(
        double leftMillimetres, double topMillimetres, double capHeightMillimetres, int quarterTurns, String text) {}
