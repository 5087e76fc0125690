package greyground.film.sheet;

import greyground.quantity.FilmPixels;
import greyground.quantity.Resolution;
import greyground.raster.PixelRect;
import java.util.List;

/**
 * Where everything lies on one film sheet, in film pixels from its top left corner, as seen by whoever looks at the side
 * that the file describes.
 *
 * @param pixels of the film printer
 * @param widthPixels of the whole sheet
 * @param heightPixels of the whole sheet
 * @param plate the plate's outline
 * @param image the art with its bleed
 * @param legends real text, outside the plate
 */
public record Sheet(
        FilmPixels pixels, int widthPixels, int heightPixels, PixelRect plate, PixelRect image, List<Legend> legends) {
    public Sheet {
        legends = List.copyOf(legends);
    }

    /** What the file says of its pixels, whatever size the printer gives them. */
    public Resolution resolution() {
        return pixels.resolution();
    }
}
