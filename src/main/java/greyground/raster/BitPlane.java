package greyground.raster;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * A rectangle of one-bit pixels, 64 to a word, first pixel in the highest bit, so that a step to the right is a shift to the
 * right. A plane is a whole number of words across. Whoever makes one owns it; nothing here keeps another's words.
 */
public final class BitPlane {
    /** Pixels of one word. */
    public static final int WORD = Long.SIZE;

    private static final VarHandle BIG_ENDIAN =
            MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

    private final int wordsPerRow;
    private final int rows;
    private final long[] words;

    /** A plane of zeros. */
    public BitPlane(int wordsPerRow, int rows) {
        this.wordsPerRow = wordsPerRow;
        this.rows = rows;
        this.words = new long[Math.multiplyExact(wordsPerRow, rows)];
    }

    public int wordsPerRow() {
        return wordsPerRow;
    }

    /** Pixels across, a multiple of 64. */
    public int width() {
        return wordsPerRow * WORD;
    }

    public int rows() {
        return rows;
    }

    /** The words themselves, row after row; what is written there is written to the plane. */
    public long[] words() {
        return words;
    }

    /** Whether a pixel is set; false outside the plane. */
    public boolean get(int x, int y) {
        if (x < 0 || y < 0 || x >= width() || y >= rows) {
            return false;
        }
        return words[y * wordsPerRow + (x >> 6)] << (x & 63) < 0;
    }

    /** Whether no pixel is set. */
    public boolean isEmpty() {
        for (long word : words) {
            if (word != 0) {
                return false;
            }
        }
        return true;
    }

    /** Pixels set in row {@code y}, columns {@code from} to {@code to - 1}, all within the plane. */
    public int count(int y, int from, int to) {
        if (from >= to) {
            return 0;
        }
        int row = y * wordsPerRow;
        int first = row + (from >> 6);
        int last = row + ((to - 1) >> 6);
        long firstMask = -1L >>> (from & 63);
        long lastMask = -1L << (63 - ((to - 1) & 63));
        if (first == last) {
            return Long.bitCount(words[first] & firstMask & lastMask);
        }
        int count = Long.bitCount(words[first] & firstMask) + Long.bitCount(words[last] & lastMask);
        for (int i = first + 1; i < last; i++) {
            count += Long.bitCount(words[i]);
        }
        return count;
    }

    /** The first column from {@code from} on whose pixel is as {@code set} says; {@code to} where there is none before it. */
    public int next(int y, int from, int to, boolean set) {
        int row = y * wordsPerRow;
        int x = from;
        while (x < to) {
            long bits = words[row + (x >> 6)];
            int skip = Long.numberOfLeadingZeros((set ? bits : ~bits) << (x & 63));
            if (skip < WORD - (x & 63)) {
                return Math.min(to, x + skip);
            }
            x = (x | 63) + 1;
        }
        return to;
    }

    /** A plane of the rows {@code first} to {@code first + count - 1}. */
    public BitPlane rows(int first, int count) {
        BitPlane part = new BitPlane(wordsPerRow, count);
        System.arraycopy(words, first * wordsPerRow, part.words, 0, part.words.length);
        return part;
    }

    /**
     * Takes a row of packed bytes, as films hold them; pixels past its ends are clear.
     *
     * @param y row of this plane
     * @param packed holds the row, first pixel in the highest bit
     * @param start its first byte
     * @param pixels in that row
     * @param firstColumn of the packed row that becomes column 0 here; below 0 if the plane begins earlier
     */
    public void take(int y, byte[] packed, int start, int pixels, int firstColumn) {
        int column = firstColumn;
        for (int word = y * wordsPerRow; word < (y + 1) * wordsPerRow; word++, column += WORD) {
            words[word] = word(packed, start, pixels, column);
        }
    }

    /** The same as seen from behind: {@code lastColumn} of the packed row becomes column 0 here. */
    public void takeMirrored(int y, byte[] packed, int start, int pixels, int lastColumn) {
        int column = lastColumn + 1 - WORD;
        for (int word = y * wordsPerRow; word < (y + 1) * wordsPerRow; word++, column -= WORD) {
            words[word] = Long.reverse(word(packed, start, pixels, column));
        }
    }

    private static long word(byte[] packed, int start, int pixels, int column) {
        if (column >= 0 && column + WORD + 7 < pixels) {
            int at = start + (column >> 3);
            int shift = column & 7;
            long bits = (long) BIG_ENDIAN.get(packed, at) << shift;
            return shift == 0 ? bits : bits | ((packed[at + 8] & 0xFF) >>> (8 - shift));
        }
        long bits = 0;
        int last = Math.min(WORD, pixels - column);
        for (int k = Math.max(0, -column); k < last; k++) {
            int at = column + k;
            bits |= (packed[start + (at >> 3)] & (0x80L >> (at & 7))) != 0 ? Long.MIN_VALUE >>> k : 0;
        }
        return bits;
    }

    /**
     * Gives a part of a row back as packed bytes; pixels past {@code pixels} are left clear.
     *
     * @param firstColumn of this plane, a multiple of 8
     */
    public void give(int y, int firstColumn, int pixels, byte[] packed, int start) {
        int row = y * wordsPerRow;
        for (int x = 0; x < pixels; x += 8) {
            int column = firstColumn + x;
            int octet = (int) (words[row + (column >> 6)] >>> (56 - (column & 63)));
            int kept = Math.min(8, pixels - x);
            packed[start + x / 8] = (byte) (octet & 0xFF00 >> kept);
        }
    }

    /** Every pixel turned over. */
    public BitPlane turned() {
        BitPlane turned = new BitPlane(wordsPerRow, rows);
        for (int i = 0; i < words.length; i++) {
            turned.words[i] = ~words[i];
        }
        return turned;
    }

    /** Pixels set here or there; a plane of the same size. */
    public BitPlane with(BitPlane other) {
        BitPlane both = new BitPlane(wordsPerRow, rows);
        for (int i = 0; i < words.length; i++) {
            both.words[i] = words[i] | other.words[i];
        }
        return both;
    }

    /** Pixels set here but not there; a plane of the same size. */
    public BitPlane without(BitPlane other) {
        BitPlane left = new BitPlane(wordsPerRow, rows);
        for (int i = 0; i < words.length; i++) {
            left.words[i] = words[i] & ~other.words[i];
        }
        return left;
    }
}
