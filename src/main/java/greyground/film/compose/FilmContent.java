package greyground.film.compose;

import greyground.film.job.ArtOnPlate;
import greyground.raster.GreyPlane;
import greyground.raster.PixelRect;
import java.util.Optional;

/** What a film carries inside its image. */
public sealed interface FilmContent {
    /** Film pixels covered, on the sheet. */
    PixelRect image();

    /**
     * Art, through the tone curve.
     *
     * @param art already turned and straightened; whoever opened it closes it, after the film is made
     * @param placing where it lies
     * @param outlined how much of it is left where, in the sheet's columns; empty for all of it
     */
    record Picture(GreyPlane art, ArtOnPlate placing, Optional<Outlined> outlined) implements FilmContent {
        public Picture(GreyPlane art, ArtOnPlate placing) {
            this(art, placing, Optional.empty());
        }

        @Override
        public PixelRect image() {
            return placing.image();
        }
    }

    /**
     * One coverage all over, without the curve: the aquatint screen film of the photogravure process, whose dots are hard and
     * black.
     *
     * @param image the plate and its bleed
     * @param coverage in 1/65 535; 45 to 55 % black is common practice for a screen
     */
    record Screen(PixelRect image, int coverage) implements FilmContent {}

    /**
     * Art of lines: one coverage all over its strokes, nothing beside them. Mending makes the coverage solid where the plate holds it.
     *
     * @param picture the art
     * @param coverage in 1/65 535
     * @param threshold linear luminance, 0 to 65 534, no lighter than which is ink
     * @param mirrored whether the sheet is seen from its other side
     */
    record Lines(Picture picture, int coverage, int threshold, LineGrowth growth, boolean mirrored)
            implements FilmContent {
        @Override
        public PixelRect image() {
            return picture.image();
        }
    }

    /**
     * Only what lies within a rectangle of the sheet, its pixels unchanged. Where nothing does, one pixel is left: content is never
     * empty, and nobody looks there.
     */
    default FilmContent within(PixelRect part) {
        PixelRect image = image();
        int left = Math.max(image.left(), Math.min(image.right() - 1, part.left()));
        int top = Math.max(image.top(), Math.min(image.bottom() - 1, part.top()));
        PixelRect seen = new PixelRect(
                left,
                top,
                Math.max(1, Math.min(image.right(), part.right()) - left),
                Math.max(1, Math.min(image.bottom(), part.bottom()) - top));
        if (this instanceof Lines lines) {
            Picture shown = (Picture) lines.picture().within(seen);
            return new Lines(shown, lines.coverage(), lines.threshold(), lines.growth(), lines.mirrored());
        }
        return this instanceof Picture picture
                ? new Picture(picture.art(), picture.placing().within(seen), picture.outlined())
                : new Screen(seen, ((Screen) this).coverage());
    }

    /** The same on a sheet of {@code sheetWidth} film pixels seen from its other side. */
    default FilmContent mirrored(int sheetWidth) {
        if (this instanceof Lines lines) {
            return new Lines(
                    (Picture) lines.picture().mirrored(sheetWidth),
                    lines.coverage(),
                    lines.threshold(),
                    lines.growth(),
                    !lines.mirrored());
        }
        if (this instanceof Picture picture) {
            return new Picture(
                    picture.art(),
                    picture.placing().mirrored(sheetWidth),
                    picture.outlined().map(Outlined::mirrored));
        }
        return new Screen(image().mirrored(sheetWidth), ((Screen) this).coverage());
    }
}
