package greyground.art.packing;

import greyground.art.page.Unreadable;
import java.io.IOException;
import java.io.InputStream;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Unpacks LZW as TIFF 6.0 section 13 defines it: codes of 9 to 12 bits, most significant bit first, widened one code early;
 * 256 clears the table, 257 ends the data.
 *
 * <p>A string is kept as its last one to eight bytes in one number, and the code of what stands before them, whose length is a multiple
 * of eight. So a string is learned without a loop and spelled eight bytes at a time: most strings of a photograph in one step.
 */
public final class Lzw extends ByteRuns {
    private static final int CLEAR = 256;
    private static final int END = 257;
    private static final int CODES = 4096;
    /** Bytes in a step of spelling. */
    private static final int STEP = Long.BYTES;
    /** Packed bytes that are fetched at once (assumed). */
    private static final int PIECE = 1 << 16;
    /** Bytes that are spelled at once, for which the first cache has room beside the table (assumed). */
    private static final int SPELLED = 1 << 14;

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final VarHandle FOUR = MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.BIG_ENDIAN);

    private InputStream packed;
    // Four bytes can be read wherever a code begins.
    private final byte[] piece = new byte[PIECE + Integer.BYTES];
    private int bit;
    private int bitEnd;
    /** Up to eight bytes that end each string, the earliest lowest. */
    private final long[] endings = new long[CODES];
    /** Of each string the code before its ending (from bit 20), its length (from bit 8) and its first byte. */
    private final int[] abouts = new int[CODES];

    private int next = END + 1;
    private int width = 9;
    // The string that came last, of which the table learns with the next; none did where its length is 0.
    private int previous;
    private int previousAbout;
    // The longest string and a step may reach past the rest.
    private final byte[] spelled = new byte[SPELLED + CODES + STEP];
    private int spelledFrom;
    private int spelledTo;

    public Lzw(InputStream packed) {
        this.packed = packed;
        for (int i = 0; i < CLEAR; i++) {
            endings[i] = i;
            abouts[i] = 1 << 8 | i;
        }
    }

    /** Goes on to other codes as if it were new: a small tile takes less time to unpack than an empty table to make. */
    public void begin(InputStream fresh) {
        packed = fresh;
        bit = 0;
        bitEnd = 0;
        next = END + 1;
        width = 9;
        previousAbout = 0;
        spelledFrom = 0;
        spelledTo = 0;
    }

    /** Always as many as are asked for. */
    @Override
    public int read(byte[] into, int offset, int count) throws IOException {
        int done = 0;
        while (done < count) {
            while (spelledFrom == spelledTo) {
                spelledFrom = 0;
                spelledTo = spell();
                if (spelledTo == 0 && !fetch()) {
                    throw fault();
                }
            }
            int some = Math.min(count - done, spelledTo - spelledFrom);
            System.arraycopy(spelled, spelledFrom, into, offset + done, some);
            spelledFrom += some;
            done += some;
        }
        return count;
    }

    /** Puts more bytes behind the ones whose codes are not yet spelled; false where those suffice or no more come. */
    private boolean fetch() throws IOException {
        if (bitEnd - bit >= width) {
            return false;
        }
        int begun = bit >>> 3;
        int left = (bitEnd >>> 3) - begun;
        System.arraycopy(piece, begun, piece, 0, left);
        int more = packed.readNBytes(piece, left, PIECE - left);
        bit &= 7;
        bitEnd = Byte.SIZE * (left + more);
        return more > 0;
    }

    /** Why no string can be spelled. */
    private Unreadable fault() {
        boolean ended = bitEnd - bit < width || code(piece, bit, width) == END;
        return ended
                ? new Unreadable("the picture data end early")
                : new Unreadable("the packed picture data are damaged");
    }

    private static int code(byte[] packed, int bit, int width) {
        return ((int) FOUR.get(packed, bit >>> 3) << (bit & 7)) >>> (Integer.SIZE - width);
    }

    /**
     * Spells strings until there are many, or the next code stands for none or has not come. One loop on local numbers: it runs for some
     * hundred million codes, and whether methods of its own would be put in their place is left to chance.
     *
     * @return how many bytes were spelled
     */
    private int spell() {
        byte[] codes = piece;
        byte[] into = spelled;
        long[] ending = endings;
        int[] about = abouts;
        int at = 0;
        int bitAt = bit;
        int free = next;
        int bits = width;
        int last = previous;
        int lastAbout = previousAbout;
        long lastEnding = ending[last];
        while (at < SPELLED && bitEnd - bitAt >= bits) {
            int code = code(codes, bitAt, bits);
            int lastLength = lastAbout >>> 8 & 0xFFF;
            if (code == CLEAR) {
                bitAt += bits;
                bits = 9;
                free = END + 1;
                lastAbout = 0;
                continue;
            }
            if (code == END || (lastLength == 0 ? code > CLEAR : code > free)) {
                break;
            }
            bitAt += bits;
            if (lastLength > 0 && free < CODES) {
                // The new string's first byte is in its place before the code's is asked for: they may be one.
                int inStep = lastLength & (STEP - 1);
                if (inStep == 0) {
                    about[free] = last << 20 | (lastLength + 1) << 8 | (lastAbout & 0xFF);
                    ending[free] = about[code] & 0xFF;
                } else {
                    about[free] = lastAbout + (1 << 8);
                    ending[free] = lastEnding | (about[code] & 0xFFL) << (inStep * Byte.SIZE);
                }
                free++;
                if (free + 1 >= 1 << bits && bits < 12) {
                    bits++;
                }
            }
            last = code;
            lastAbout = about[code];
            lastEnding = ending[code];
            int length = lastAbout >>> 8 & 0xFFF;
            int from = at + ((length - 1) & -STEP);
            EIGHT.set(into, from, lastEnding);
            if (from > at) {
                spellBefore(lastAbout >>> 20, at, from);
            }
            at += length;
        }
        bit = bitAt;
        next = free;
        width = bits;
        previous = last;
        previousAbout = lastAbout;
        return at;
    }

    /** Spells a string of some eights of bytes, backward from {@code to} to {@code from}. */
    private void spellBefore(int code, int from, int to) {
        int rest = code;
        for (int at = to - STEP; at >= from; at -= STEP) {
            EIGHT.set(spelled, at, endings[rest]);
            rest = abouts[rest] >>> 20;
        }
    }
}
