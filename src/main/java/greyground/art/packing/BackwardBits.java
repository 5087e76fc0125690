package greyground.art.packing;

import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Bits read from the last to the first, as Zstandard's coders leave them (RFC 8878, 4.1 and 4.2.2): the highest set bit of the last byte
 * ends them. Past the first, noughts come.
 */
final class BackwardBits {
    /** Bytes that must stand behind the data, so that eight can be taken at once. */
    static final int SPARE = 8;

    /** The most that is taken at once. */
    static final int MOST = 56;

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    private final byte[] bytes;
    private final int first;
    private long left;

    /** Bits of {@code bytes} from {@code from} up to {@code to}; {@link #SPARE} more bytes must stand behind. */
    BackwardBits(byte[] bytes, int from, int to) throws IOException {
        if (to <= from || bytes[to - 1] == 0) {
            throw Zstandard.damaged();
        }
        this.bytes = bytes;
        this.first = from;
        int last = bytes[to - 1] & 0xFF;
        this.left = 8L * (to - from) - 1 - (Integer.numberOfLeadingZeros(last) - 24);
    }

    /** Bits that are left; below 0 when more were taken than there were. */
    long left() {
        return left;
    }

    /** The next {@code count} bits, at most {@link #MOST}, which stay. */
    long peek(int count) {
        long at = left - count;
        if (at >= 0) {
            return taken(at) & (1L << count) - 1;
        }
        int there = (int) Math.max(0, left);
        return (taken(0) & (1L << there) - 1) << Math.min(MOST, count - there);
    }

    private long taken(long at) {
        return (long) EIGHT.get(bytes, first + (int) (at >> 3)) >>> (at & 7);
    }

    void skip(int count) {
        left -= count;
    }

    long next(int count) {
        long bits = peek(count);
        left -= count;
        return bits;
    }
}
