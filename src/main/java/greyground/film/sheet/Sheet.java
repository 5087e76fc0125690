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
 * @param undivided what no seam between tiles should run through: rulers, marks, the wedge strip, legends
 */
public record Sheet(
        FilmPixels pixels,
        int widthPixels,
        int heightPixels,
        PixelRect plate,
        PixelRect image,
        List<Legend> legends,
        List<PixelRect> undivided) {
    public Sheet {
        legends = List.copyOf(legends);
        undivided = List.copyOf(undivided);
    }

    /** A sheet that may be cut anywhere. */
    public Sheet(
            FilmPixels pixels,
            int widthPixels,
            int heightPixels,
            PixelRect plate,
            PixelRect image,
            List<Legend> legends) {
        this(pixels, widthPixels, heightPixels, plate, image, legends, List.of());
    }

    /** What the file says of its pixels, whatever size the printer gives them. */
    public Resolution resolution() {
        return pixels.resolution();
    }
}
