package greyground.film;

import greyground.raster.PixelRect;

/**
 * Equal discs in rows and columns: black on clear, or clear in black. Each disc has the same pixels, and as many of them across and
 * down as its diameter says.
 *
 * @param box all of it
 * @param diameter of a disc in pixels, 1 or more
 * @param pitch from disc to disc in pixels, above the diameter
 * @param lead columns before the first disc
 * @param holes whether the discs are clear and the rest of the box black
 */
public record DiscField(PixelRect box, int diameter, int pitch, int lead, boolean holes) implements Mark {
    /** The field with as many discs as fit, in the middle of its box. */
    static DiscField centred(PixelRect box, int diameter, int pitch, boolean holes) {
        return new DiscField(box, diameter, pitch, (box.width() - run(box.width(), diameter, pitch)) / 2, holes);
    }

    /** Length of a row of discs that fits into a length. */
    private static int run(int length, int diameter, int pitch) {
        return count(length, diameter, pitch) * pitch - (pitch - diameter);
    }

    private static int count(int length, int diameter, int pitch) {
        return Math.max(1, (length - diameter) / pitch + 1);
    }

    /** Discs across. */
    int across() {
        return count(box.width(), diameter, pitch);
    }

    /** Discs down. */
    int down() {
        return count(box.height(), diameter, pitch);
    }

    @Override
    public void spans(int row, Span span) {
        if (row < box.top() || row >= box.bottom()) {
            return;
        }
        int down = row - box.top() - (box.height() - run(box.height(), diameter, pitch)) / 2;
        int inDisc = Math.floorMod(down, pitch);
        boolean crossed = down >= 0 && down / pitch < down() && inDisc < diameter;
        int blank = crossed ? blanks(inDisc) : 0;
        int from = box.left();
        for (int disc = 0; crossed && disc < across(); disc++) {
            int left = box.left() + lead + disc * pitch + blank;
            int right = left + diameter - 2 * blank;
            if (!holes) {
                span.black(left, right);
            } else if (left > from) {
                span.black(from, left);
            }
            from = right;
        }
        if (holes && from < box.right()) {
            span.black(from, box.right());
        }
    }

    /** Pixels of the disc's box left of the disc in one of its rows: those whose centres lie outside the circle. */
    private int blanks(int inDisc) {
        long side = diameter;
        long y = 2L * inDisc + 1 - side;
        int blank = 0;
        while (2L * blank + 1 < side) {
            long x = 2L * blank + 1 - side;
            if (x * x + y * y <= side * side) {
                break;
            }
            blank++;
        }
        return blank;
    }

    @Override
    public DiscField mirrored(int sheetWidth) {
        int behind = box.width() - lead - run(box.width(), diameter, pitch);
        return new DiscField(box.mirrored(sheetWidth), diameter, pitch, behind, holes);
    }

    @Override
    public DiscField moved(int across, int down) {
        return new DiscField(box.moved(across, down), diameter, pitch, lead, holes);
    }
}
