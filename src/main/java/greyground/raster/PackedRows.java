package greyground.raster;

import java.util.Arrays;

/** Rows of one-bit pixels packed eight to a byte, first pixel in the highest bit; 1 is black. */
public final class PackedRows {
    private PackedRows() {}

    /**
     * Packs signs: a pixel is black where its value is below zero.
     *
     * @param from first place, a multiple of 8
     * @param to past the last place; the rest of the last byte is left clear
     * @param start the byte that receives place 0 of {@code values}
     */
    public static void packSigns(int[] values, int from, int to, byte[] into, int start) {
        int whole = to & ~7;
        int at = start + from / 8;
        for (int x = from; x < whole; x += 8, at++) {
            into[at] = (byte) (values[x] >>> 31 << 7
                    | values[x + 1] >>> 31 << 6
                    | values[x + 2] >>> 31 << 5
                    | values[x + 3] >>> 31 << 4
                    | values[x + 4] >>> 31 << 3
                    | values[x + 5] >>> 31 << 2
                    | values[x + 6] >>> 31 << 1
                    | values[x + 7] >>> 31);
        }
        if (whole < to) {
            int bits = 0;
            for (int x = whole; x < to; x++) {
                bits |= values[x] >>> 31 << (7 - (x & 7));
            }
            into[at] = (byte) bits;
        }
    }

    /** Keeps black, of a row of {@code count} bytes that starts at byte {@code start}, what is black in another film's same row. */
    public static void keep(byte[] into, byte[] where, int start, int count) {
        for (int i = start; i < start + count; i++) {
            into[i] &= where[i];
        }
    }

    /** Blackens pixels {@code from..to-1} of the row that starts at byte {@code start}. */
    public static void blacken(byte[] into, int start, int from, int to) {
        if (from >= to) {
            return;
        }
        int firstByte = start + (from >> 3);
        int lastByte = start + ((to - 1) >> 3);
        int firstMask = 0xFF >>> (from & 7);
        int lastMask = 0xFF << (7 - ((to - 1) & 7));
        if (firstByte == lastByte) {
            into[firstByte] |= (byte) (firstMask & lastMask);
            return;
        }
        into[firstByte] |= (byte) firstMask;
        Arrays.fill(into, firstByte + 1, lastByte, (byte) 0xFF);
        into[lastByte] |= (byte) lastMask;
    }
}
