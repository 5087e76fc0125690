package greyground.film.sheet;

import greyground.raster.PixelRect;

/**
 * Equal discs in rows and columns: black on clear, or clear in black. Each disc has the same pixels, and as many of them across and
 * down as its diameter says.
 *
 * @param box all of it
 * @param across of a disc, and from column to column
 * @param down of a disc, and from row to row; as across where the film's pixels are square
 * @param lead columns before the first disc
 * @param holes whether the discs are clear and the rest of the box black
 */
public record DiscField(PixelRect box, Spacing across, Spacing down, int lead, boolean holes) implements Mark {
    /**
     * Discs along one direction.
     *
     * @param diameter of a disc in pixels, 1 or more
     * @param pitch from disc to disc in pixels, above the diameter
     */
    public record Spacing(int diameter, int pitch) {
        /** As many as fit into a length. */
        int count(int length) {
            return Math.max(1, (length - diameter) / pitch + 1);
        }

        /** The length that they take of it. */
        int run(int length) {
            return count(length) * pitch - (pitch - diameter);
        }
    }

    /** The field with as many discs as fit, in the middle of its box. */
    public static DiscField centred(PixelRect box, Spacing across, Spacing down, boolean holes) {
        return new DiscField(box, across, down, (box.width() - across.run(box.width())) / 2, holes);
    }

    @Override
    public void spans(int row, Span span) {
        if (row < box.top() || row >= box.bottom()) {
            return;
        }
        int from = row - box.top() - (box.height() - down.run(box.height())) / 2;
        int inDisc = Math.floorMod(from, down.pitch());
        boolean crossed = from >= 0 && from / down.pitch() < down.count(box.height()) && inDisc < down.diameter();
        int blank = crossed ? blanks(inDisc) : 0;
        int done = box.left();
        int discs = across.count(box.width());
        for (int disc = 0; crossed && disc < discs; disc++) {
            int left = box.left() + lead + disc * across.pitch() + blank;
            int right = left + across.diameter() - 2 * blank;
            if (!holes) {
                span.black(left, right);
            } else if (left > done) {
                span.black(done, left);
            }
            done = right;
        }
        if (holes && done < box.right()) {
            span.black(done, box.right());
        }
    }

    /** Pixels of the disc's box left of the disc in one of its rows: those whose centres lie outside the circle. */
    private int blanks(int inDisc) {
        long wide = across.diameter();
        long high = down.diameter();
        long y = (2L * inDisc + 1 - high) * wide;
        int blank = 0;
        while (2L * blank + 1 < wide) {
            long x = (2L * blank + 1 - wide) * high;
            if (x * x + y * y <= wide * wide * high * high) {
                break;
            }
            blank++;
        }
        return blank;
    }

    @Override
    public DiscField mirrored(int sheetWidth) {
        int behind = box.width() - lead - across.run(box.width());
        return new DiscField(box.mirrored(sheetWidth), across, down, behind, holes);
    }
}
