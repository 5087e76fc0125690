package greyground.film.sheet;

import greyground.raster.PixelRect;

/**
 * Black and clear lines, equally wide, starting with black at the box's left or top.
 *
 * @param box all of it
 * @param periodPixels of one pair, above 0; edges fall on the nearest pixel
 * @param upright whether the lines run down
 * @param fromRight whether upright lines start with black at the right instead
 */
public record LinePairs(PixelRect box, double periodPixels, boolean upright, boolean fromRight) implements Mark {
    @Override
    public void spans(int row, Span span) {
        if (row < box.top() || row >= box.bottom()) {
            return;
        }
        if (!upright) {
            if (black(row - box.top())) {
                span.black(box.left(), box.right());
            }
            return;
        }
        for (int x = 0; x < box.width(); x++) {
            if (black(fromRight ? box.width() - 1 - x : x)) {
                span.black(box.left() + x, box.left() + x + 1);
            }
        }
    }

    private boolean black(int pixel) {
        double pairs = (pixel + 0.5) / periodPixels;
        return pairs - Math.floor(pairs) < 0.5;
    }

    @Override
    public LinePairs mirrored(int sheetWidth) {
        return new LinePairs(box.mirrored(sheetWidth), periodPixels, upright, !fromRight);
    }
}
