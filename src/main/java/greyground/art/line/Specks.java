package greyground.art.line;

import greyground.art.touch.Touch;
import java.util.Arrays;
import java.util.concurrent.atomic.LongAdder;

/**
 * Specks of ink made paper and pinholes in ink made ink: parts that hang together, ink also over corners, of a small area and no long ones, since a hair
 * is a stroke. What touches the art's edge above or below counts with its mirror image.
 */
public final class Specks implements Touch {
    /** A part that is longer than so many sides of the square of its greatest area is a stroke (assumed). */
    private static final int LONGEST_SIDES = 2;

    private static final byte SEEN = 1;
    private static final byte LARGE = 2;

    private final int threshold;
    private final short ink;
    private final short paper;
    private final double mostPixels;
    private final int longest;
    private final LongAdder dots = new LongAdder();
    private final LongAdder holes = new LongAdder();

    /**
     * Of one drawing.
     *
     * @param threshold the lightest grey code that is ink
     * @param ink grey code that pinholes get
     * @param paper grey code that specks get
     * @param sidePixels of a square: what has less area goes; below 1 nothing does
     */
    public Specks(int threshold, int ink, int paper, double sidePixels) {
        this.threshold = threshold;
        this.ink = (short) ink;
        this.paper = (short) paper;
        this.mostPixels = sidePixels * sidePixels;
        this.longest = (int) Math.ceil(LONGEST_SIDES * sidePixels);
    }

    @Override
    public int reach() {
        return longest;
    }

    /** Specks made paper so far. */
    public long dots() {
        return dots.sum();
    }

    /** Pinholes made ink so far. */
    public long holes() {
        return holes.sum();
    }

    @Override
    public short[] touched(short[] window, int width, int firstRow, int count) {
        short[] touched = Arrays.copyOfRange(window, longest * width, (longest + count) * width);
        Parts parts = new Parts(window, width, count, touched);
        for (int at = longest * width; at < (longest + count) * width; at++) {
            parts.from(at);
        }
        return touched;
    }

    /** One window at work. */
    private final class Parts {
        private final short[] window;
        private final int width;
        private final int first;
        private final int end;
        private final short[] touched;
        private final byte[] state;
        private int[] part = new int[64];
        private int size;

        Parts(short[] window, int width, int count, short[] touched) {
            this.window = window;
            this.width = width;
            this.first = longest * width;
            this.end = (longest + count) * width;
            this.touched = touched;
            this.state = new byte[window.length];
        }

        private boolean dark(int at) {
            return (window[at] & 0xFFFF) <= threshold;
        }

        /** Follows the part that a pixel belongs to, as far as a speck may reach. */
        void from(int start) {
            if (state[start] != 0) {
                return;
            }
            boolean dark = dark(start);
            size = 0;
            add(start);
            boolean large = false;
            int left = start % width;
            int right = left;
            int top = start / width;
            int bottom = top;
            for (int next = 0; next < size && !large; next++) {
                int x = part[next] % width;
                int y = part[next] / width;
                left = Math.min(left, x);
                right = Math.max(right, x);
                top = Math.min(top, y);
                bottom = Math.max(bottom, y);
                large = size >= mostPixels || right - left >= longest || bottom - top >= longest || joins(x, y, dark);
            }
            for (int i = 0; i < size; i++) {
                state[part[i]] = large ? LARGE : SEEN;
            }
            if (!large) {
                fill(dark);
            }
        }

        /** Adds a pixel's neighbours of its kind; true where one of them is known to belong to a large part. */
        private boolean joins(int x, int y, boolean dark) {
            for (int v = Math.max(0, y - 1); v <= Math.min(window.length / width - 1, y + 1); v++) {
                for (int u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
                    int at = v * width + u;
                    if ((dark || u == x || v == y) && dark(at) == dark) {
                        if (state[at] == LARGE) {
                            return true;
                        }
                        if (state[at] == 0) {
                            add(at);
                        }
                    }
                }
            }
            return false;
        }

        private void add(int at) {
            if (size == part.length) {
                part = Arrays.copyOf(part, 2 * size);
            }
            part[size++] = at;
            state[at] = SEEN;
        }

        private void fill(boolean dark) {
            int uppermost = Integer.MAX_VALUE;
            for (int i = 0; i < size; i++) {
                uppermost = Math.min(uppermost, part[i]);
                if (part[i] >= first && part[i] < end) {
                    touched[part[i] - first] = dark ? paper : ink;
                }
            }
            // Each is counted once, by the band that its first pixel lies in.
            if (uppermost >= first && uppermost < end) {
                (dark ? dots : holes).increment();
            }
        }
    }
}
