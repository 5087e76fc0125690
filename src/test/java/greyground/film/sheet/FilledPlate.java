package greyground.film.sheet;

import greyground.film.compose.FilmContent;
import greyground.film.job.ArtChoice;
import greyground.film.job.ArtOnPlate;
import greyground.film.job.Placing;
import greyground.quantity.FilmPixels;
import greyground.quantity.PaperShrink;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.GreyPlane;
import java.util.List;
import java.util.Optional;

/** A plate with the usual bleed of 3 mm and bevel of 2 mm, filled by the whole of its art, for tests. */
public final class FilledPlate {
    private FilledPlate() {}

    /** Its sheet, with one legend. */
    public static SheetLayout sheet(Resolution resolution, Size plate, String legend) {
        return SheetLayout.of(
                FilmPixels.of(resolution), plate, 3, 2, Optional.empty(), List.of(legend), TextWidth.GENEROUS);
    }

    /** The art on it. */
    public static FilmContent.Picture picture(GreyPlane art, SheetLayout layout) {
        return new FilmContent.Picture(
                art,
                ArtOnPlate.of(
                        art.width(),
                        art.height(),
                        ArtChoice.Crop.ALL,
                        Placing.Fit.FILL,
                        PaperShrink.NONE,
                        layout.pixels(),
                        layout.plate(),
                        layout.bleed()));
    }
}
