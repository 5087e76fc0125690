package greyground.film.sheet;

import greyground.raster.PixelRect;

/** A solid black shape on the film, past curve and grain: exact runs of film pixels, no drawing library. */
public sealed interface Mark permits Mark.Bar, Mark.Ring, LinePairs, DiscField, StarMark {
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
}
