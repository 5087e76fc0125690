package greyground.film.sheet;

import greyground.raster.PixelRect;

/**
 * Black wedges that meet in the middle of a disc, with clear ones as wide between them.
 *
 * @param box square where the film's pixels are
 * @param wedges black ones, even, so that the star is its own mirror image
 */
public record StarMark(PixelRect box, int wedges) implements Mark {
    @Override
    public void spans(int row, Span span) {
        if (row < box.top() || row >= box.bottom()) {
            return;
        }
        long y = 2L * (row - box.top()) + 1 - box.height();
        for (int column = 0; column < box.width(); column++) {
            long x = 2L * column + 1 - box.width();
            // Both in parts of a side, so that a star on oblong pixels prints round.
            long across = Math.abs(x) * box.height();
            long down = Math.abs(y) * box.width();
            long side = (long) box.width() * box.height();
            if (across * across + down * down <= side * side && black(across, down)) {
                span.black(box.left() + column, box.left() + column + 1);
            }
        }
    }

    /** Folded into one quarter, so that all four are alike to the pixel; a wedge is centred on each axis. */
    private boolean black(long x, long y) {
        double wedge = StrictMath.atan2((double) y, (double) x) / (StrictMath.PI / wedges);
        return (long) Math.floor(wedge + 0.5) % 2 == 0;
    }

    @Override
    public StarMark mirrored(int sheetWidth) {
        return new StarMark(box.mirrored(sheetWidth), wedges);
    }
}
