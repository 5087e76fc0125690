package greyground.film.sheet;

import greyground.raster.PixelRect;
import greyground.tone.ToneCurve;

/**
 * One field of the wedge strip.
 *
 * @param box on the sheet
 * @param field what it carries
 */
public record Patch(PixelRect box, Field field) {
    /** What a field of the strip carries. */
    public sealed interface Field {}

    /**
     * A grey of the art, through the same curve and grain as the picture.
     *
     * @param code linear luminance, 0 to 65 535
     */
    public record ArtGrey(int code) implements Field {}

    /**
     * A coverage of the film itself, through the grain but without the curve, so that the film's own density can be measured.
     *
     * @param coverage in 1/65 535, 0 to 65 535
     */
    public record FilmCoverage(int coverage) implements Field {}

    /** The coverage that the field shows, in 1/65 535, where greys of the art go through a curve. */
    public int coverage(ToneCurve curve) {
        return field instanceof ArtGrey art ? curve.coverage(art.code()) : ((FilmCoverage) field).coverage();
    }

    /** The patch on a sheet of {@code sheetWidth} pixels seen from its other side. */
    public Patch mirrored(int sheetWidth) {
        return new Patch(box.mirrored(sheetWidth), field);
    }
}
