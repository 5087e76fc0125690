package greyground.film.job;

import greyground.quantity.FilmPixels;
import greyground.quantity.PaperShrink;
import greyground.raster.PixelRect;
import greyground.raster.ResampleAxis;

/**
 * Where the art lies on the film, and how its pixels become film pixels.
 *
 * <p>The plate's size is the copper's and stays; it prints at that size on damp paper, and the print dries smaller. The art is
 * drawn larger by {@link PaperShrink} in each direction relative to the other, so that its proportions are right on the
 * dried print (a circle dries round), and how it fits is judged on the dried plate.
 *
 * <p>Filling: the crop's middle lies on the plate's middle and the crop covers the dried plate; past the crop the art itself
 * continues into the bleed, and past the art's edge its mirror image does. Showing all: the crop lies whole on the plate; it
 * bleeds only on sides where it reaches the plate's edge.
 *
 * @param image film pixels that the art covers, on the sheet
 * @param across art columns to film columns
 * @param down art rows to film rows
 */
public record ArtOnPlate(PixelRect image, ResampleAxis across, ResampleAxis down) {
    /**
     * Places the art.
     *
     * @param artWidth pixels, after turning and straightening
     * @param artHeight pixels
     * @param pixels of the film printer
     * @param plate on the sheet, in film pixels
     * @param bleed the plate grown by its bleed, on the sheet
     */
    public static ArtOnPlate of(
            int artWidth,
            int artHeight,
            ArtChoice.Crop crop,
            Placing.Fit fit,
            PaperShrink shrink,
            FilmPixels pixels,
            PixelRect plate,
            PixelRect bleed) {
        ArtScale lies = ArtScale.of(
                artWidth,
                artHeight,
                crop,
                fit,
                shrink,
                new ArtScale.Plate(plate.width(), plate.height(), pixels.scaleX(), pixels.scaleY()));
        double plateX = plate.left() + plate.width() / 2.0;
        double plateY = plate.top() + plate.height() / 2.0;
        PixelRect image = fit == Placing.Fit.FILL
                ? bleed
                : shown(
                        plate,
                        bleed,
                        plateX,
                        plateY,
                        crop.width() * artWidth * lies.across(),
                        crop.height() * artHeight * lies.down());
        return new ArtOnPlate(
                image,
                ResampleAxis.of(image.width(), lies.artX(image.left() - plateX), 1 / lies.across(), artWidth),
                ResampleAxis.of(image.height(), lies.artY(image.top() - plateY), 1 / lies.down(), artHeight));
    }

    /** The same on a sheet of {@code sheetWidth} film pixels seen from its other side. */
    public ArtOnPlate mirrored(int sheetWidth) {
        return new ArtOnPlate(image.mirrored(sheetWidth), across.reversed(), down);
    }

    /** Only what lies within a part of the image; its pixels are the same bit for bit. */
    public ArtOnPlate within(PixelRect part) {
        return new ArtOnPlate(
                part,
                across.part(part.left() - image.left(), part.width()),
                down.part(part.top() - image.top(), part.height()));
    }

    private static PixelRect shown(
            PixelRect plate, PixelRect bleed, double plateX, double plateY, double width, double height) {
        int left = (int) Math.round(plateX - width / 2);
        int right = Math.max(left + 1, (int) Math.round(plateX + width / 2));
        int top = (int) Math.round(plateY - height / 2);
        int bottom = Math.max(top + 1, (int) Math.round(plateY + height / 2));
        left = left <= plate.left() ? bleed.left() : left;
        right = right >= plate.right() ? bleed.right() : right;
        top = top <= plate.top() ? bleed.top() : top;
        bottom = bottom >= plate.bottom() ? bleed.bottom() : bottom;
        return new PixelRect(left, top, right - left, bottom - top);
    }
}
