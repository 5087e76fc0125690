package greyground.film.sheet;

import greyground.raster.PixelRect;

/** A solid black shape on the film, past curve and grain: exact runs of film pixels, no drawing library. */
public sealed interface Mark {
    /** The smallest rectangle that holds the mark. */
    PixelRect box();

    /** Hands on the mark's runs in film row {@code row}, which may lie anywhere. */
    void spans(int row, Span span);

    /** The mark on a sheet of {@code sheetWidth} pixels seen from its other side. */
    Mark mirrored(int sheetWidth);

    /** Takes one run of black pixels. */
    @FunctionalInterface
    interface Span {
        /** Pixels {@code from} to {@code to - 1}. */
        void black(int from, int to);
    }

    /**
     * A filled rectangle: a line, a tick, a stroke of a letter.
     *
     * @param box all of it
     */
    record Bar(PixelRect box) implements Mark {
        @Override
        public void spans(int row, Span span) {
            if (row >= box.top() && row < box.bottom()) {
                span.black(box.left(), box.right());
            }
        }

        @Override
        public Bar mirrored(int sheetWidth) {
            return new Bar(box.mirrored(sheetWidth));
        }
    }

    /**
     * A circle's line.
     *
     * @param box of the outer edge; square where the film's pixels are
     * @param line thickness in pixels, 1 to half the shorter side
     */
    record Ring(PixelRect box, int line) implements Mark {
        @Override
        public void spans(int row, Span span) {
            if (row < box.top() || row >= box.bottom()) {
                return;
            }
            // Twice every length keeps pixel centres and the circle's middle whole numbers, so left and right agree
            // exactly.
            long fromMiddle = 2L * (row - box.top()) + 1 - box.height();
            int outer = blanks(0, fromMiddle);
            int inner = blanks(line, fromMiddle);
            if (2L * inner >= box.width()) {
                span.black(box.left() + outer, box.right() - outer);
            } else {
                span.black(box.left() + outer, box.left() + inner);
                span.black(box.right() - inner, box.right() - outer);
            }
        }

        /** Pixels from the left edge of the box whose centres lie outside the ring's edge, moved inwards by some pixels. */
        private int blanks(int inwards, long fromMiddle) {
            long across = square(box.width() - 2L * inwards);
            long down = square(box.height() - 2L * inwards);
            if (across == 0 || down == 0) {
                return (box.width() + 1) / 2;
            }
            // A circle where across and down agree, else an oval that prints as a circle.
            long left = across * (down - fromMiddle * fromMiddle);
            int blank = 0;
            while (2L * blank < box.width() && (left < 0 || square(2L * blank + 1 - box.width()) * down > left)) {
                blank++;
            }
            return blank;
        }

        private static long square(long value) {
            return value * value;
        }

        @Override
        public Ring mirrored(int sheetWidth) {
            return new Ring(box.mirrored(sheetWidth), line);
        }
    }

    /**
     * Black and clear lines, equally wide, starting with black at the box's left or top.
     *
     * @param box all of it
     * @param periodPixels of one pair, above 0; edges fall on the nearest pixel
     * @param upright whether the lines run down
     * @param fromRight whether upright lines start with black at the right instead
     */
    record LinePairs(PixelRect box, double periodPixels, boolean upright, boolean fromRight) implements Mark {
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
    record DiscField(PixelRect box, Spacing across, Spacing down, int lead, boolean holes) implements Mark {
        /**
         * Discs along one direction.
         *
         * @param diameter of a disc in pixels, 1 or more
         * @param pitch from disc to disc in pixels, above the diameter
         */
        public record Spacing(int diameter, int pitch) {
            int count(int length) {
                return Math.max(1, (length - diameter) / pitch + 1);
            }

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

    /**
     * Black wedges that meet in the middle of a disc, with clear ones as wide between them.
     *
     * @param box square where the film's pixels are
     * @param wedges black ones, even, so that the star is its own mirror image
     */
    record StarMark(PixelRect box, int wedges) implements Mark {
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
}
