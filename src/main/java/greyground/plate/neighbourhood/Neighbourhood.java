package greyground.plate.neighbourhood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The film pixels within a disc round one of them, as the bits of one number, its <em>pattern</em>: row after row from the top, each
 * from the left.
 *
 * <p>A plate knows no directions, so a pattern and its mirrors and turns print alike. The eight symmetries of a square are counted by
 * bits: 4 swaps rows and columns first, then 1 mirrors across and 2 down. Immutable.
 */
final class Neighbourhood {
    /** The disc that tells most patterns: 21 pixels. */
    static final Neighbourhood INNER = new Neighbourhood(5);

    /** Symmetries of a square. */
    static final int SYMMETRIES = 8;

    /** The widest disc's radius: words of a row begin so many pixels to the left of the first pixel in question. */
    static final int MOST_RADIUS = 4;

    /** Pixels whose whole neighbourhood lies in one word of each row. */
    static final int PIXELS_OF_A_WORD = Long.SIZE - 2 * MOST_RADIUS;

    private final int[] halves;
    private final int bits;
    /** Pixels by the binary digits of how much nearer the middle they lie than the disc's rim, ones first. */
    private final long[] nearer = new long[5];

    /** What each octet of a pattern becomes under each turn. */
    private final long[][][] turns;

    /**
     * Pixels with {@code dx^2 + dy^2} up to a number: 5 gives 21 pixels, 10 gives 37, 17 gives 57.
     *
     * @param squaredRadius 1 to 18
     */
    Neighbourhood(int squaredRadius) {
        int radius = (int) Math.sqrt(squaredRadius);
        halves = new int[2 * radius + 1];
        List<int[]> places = new ArrayList<>();
        for (int dy = -radius; dy <= radius; dy++) {
            int half = (int) Math.sqrt(squaredRadius - dy * dy);
            halves[dy + radius] = half;
            for (int dx = -half; dx <= half; dx++) {
                places.add(new int[] {dx, dy});
            }
        }
        bits = places.size();
        for (int bit = 0; bit < bits; bit++) {
            int[] place = places.get(bits - 1 - bit);
            int weight = squaredRadius + 1 - place[0] * place[0] - place[1] * place[1];
            for (int digit = 0; digit < nearer.length; digit++) {
                nearer[digit] |= (weight >> digit & 1L) << bit;
            }
        }
        turns = new long[SYMMETRIES][(bits + 7) / 8][256];
        for (int turn = 0; turn < SYMMETRIES; turn++) {
            for (int bit = 0; bit < bits; bit++) {
                long to = 1L << placeBit(places, turned(places.get(bits - 1 - bit), turn));
                for (int octet = 0; octet < 256; octet++) {
                    turns[turn][bit / 8][octet] |= ((octet >> (bit % 8)) & 1) == 1 ? to : 0;
                }
            }
        }
    }

    private int placeBit(List<int[]> places, int[] place) {
        int at = 0;
        while (!Arrays.equals(places.get(at), place)) {
            at++;
        }
        return bits - 1 - at;
    }

    private static int[] turned(int[] place, int turn) {
        boolean swapped = (turn & 4) != 0;
        int across = swapped ? place[1] : place[0];
        int down = swapped ? place[0] : place[1];
        return new int[] {(turn & 1) != 0 ? -across : across, (turn & 2) != 0 ? -down : down};
    }

    /** Where a corner comes to lie: 0 to 3, 1 to the right and 2 below. */
    static int corner(int corner, int turn) {
        int swapped = (turn & 4) != 0 ? (corner >> 1) | ((corner & 1) << 1) : corner;
        return swapped ^ (turn & 3);
    }

    /** Rows above and below the pixel. */
    int radius() {
        return halves.length / 2;
    }

    /** Pixels of the disc. */
    int bits() {
        return bits;
    }

    /**
     * Pattern of a pixel.
     *
     * @param rows one word for each row, from {@code radius()} above the pixel on, {@link #MOST_RADIUS} pixels left of pixel 0
     * @param skipped rows to leave out before the first
     * @param pixel 0 to {@link #PIXELS_OF_A_WORD} - 1
     */
    long pattern(long[] rows, int skipped, int pixel) {
        long pattern = 0;
        int middle = Long.SIZE - 1 - MOST_RADIUS - pixel;
        for (int k = 0; k < halves.length; k++) {
            int half = halves[k];
            int width = 2 * half + 1;
            pattern = (pattern << width) | ((rows[skipped + k] >>> (middle - half)) & ((1L << width) - 1));
        }
        return pattern;
    }

    /** {@link #pattern} of {@link #INNER}, of which most pixels ask. */
    static int inner(long[] rows, int skipped, int pixel) {
        int middle = Long.SIZE - 1 - MOST_RADIUS - pixel;
        return (((int) (rows[skipped] >>> (middle - 1)) & 7) << 18)
                | (((int) (rows[skipped + 1] >>> (middle - 2)) & 31) << 13)
                | (((int) (rows[skipped + 2] >>> (middle - 2)) & 31) << 8)
                | (((int) (rows[skipped + 3] >>> (middle - 2)) & 31) << 3)
                | ((int) (rows[skipped + 4] >>> (middle - 1)) & 7);
    }

    /** The inner pattern within a pattern of this disc. */
    int innerOf(long pattern) {
        int inner = 0;
        int at = bits;
        int radius = radius();
        for (int k = 0; k < halves.length; k++) {
            at -= 2 * halves[k] + 1;
            int row = k - radius + 2;
            if (row >= 0 && row < INNER.halves.length) {
                int half = INNER.halves[row];
                int width = 2 * half + 1;
                inner = (inner << width) | ((int) (pattern >>> (at + halves[k] - half)) & ((1 << width) - 1));
            }
        }
        return inner;
    }

    /** How unlike two patterns are: pixels that differ, each by how much nearer the middle it lies than the disc's rim. */
    int apart(long one, long other) {
        long differ = one ^ other;
        int apart = 0;
        for (int digit = 0; digit < nearer.length; digit++) {
            apart += Long.bitCount(differ & nearer[digit]) << digit;
        }
        return apart;
    }

    /** Pixels whose disc holds black as well as clear film, bit by bit as they lie in the words. */
    long mixed(long[] rows) {
        long black = 0;
        long clear = 0;
        for (int k = 0; k < halves.length; k++) {
            black |= spread(rows[k], halves[k]);
            clear |= spread(~rows[k], halves[k]);
        }
        return black & clear;
    }

    private static long spread(long row, int half) {
        long spread = row;
        for (int step = 1; step <= half; step++) {
            spread |= (row << step) | (row >>> step);
        }
        return spread;
    }

    /** The pattern of the film turned. */
    long turned(long pattern, int turn) {
        long turned = 0;
        long rest = pattern;
        for (long[] octets : turns[turn]) {
            turned |= octets[(int) rest & 0xFF];
            rest >>>= 8;
        }
        return turned;
    }

    /** The turn that makes a pattern least: under it all that print alike meet. */
    int leastTurn(long pattern) {
        int least = 0;
        long best = pattern;
        for (int turn = 1; turn < SYMMETRIES; turn++) {
            long other = turned(pattern, turn);
            if (other < best) {
                best = other;
                least = turn;
            }
        }
        return least;
    }
}
