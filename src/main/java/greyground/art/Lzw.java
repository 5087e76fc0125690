package greyground.art;

import java.io.EOFException;
import java.io.IOException;

/**
 * Unpacks LZW as TIFF 6.0 section 13 defines it: codes of 9 to 12 bits, most significant bit first, widened one code early;
 * 256 clears the table, 257 ends the data.
 */
final class Lzw implements Unpacker {
    private static final int CLEAR = 256;
    private static final int END = 257;
    private static final int CODES = 4096;

    private final Run run;
    private final short[] prefix = new short[CODES];
    private final byte[] last = new byte[CODES];
    private final byte[] first = new byte[CODES];
    private final short[] length = new short[CODES];
    // A string that did not fit the caller's array waits here.
    private final byte[] waiting = new byte[CODES];
    private int waitingFrom;
    private int waitingTo;
    private int next = END + 1;
    private int width = 9;
    private int previous = -1;
    private int bits;
    private int bitCount;

    Lzw(Run run) {
        this.run = run;
        for (int i = 0; i < CLEAR; i++) {
            last[i] = (byte) i;
            first[i] = (byte) i;
            length[i] = 1;
        }
    }

    @Override
    public void read(byte[] into, int offset, int count) throws IOException {
        int at = offset;
        int end = offset + count;
        while (at < end) {
            if (waitingFrom < waitingTo) {
                int some = Math.min(end - at, waitingTo - waitingFrom);
                System.arraycopy(waiting, waitingFrom, into, at, some);
                waitingFrom += some;
                at += some;
                continue;
            }
            int code = nextCode();
            if (code == CLEAR) {
                next = END + 1;
                width = 9;
                previous = -1;
                continue;
            }
            if (code == END) {
                throw new EOFException("the picture data end early");
            }
            learn(code);
            int size = length[code];
            if (size == 1) {
                into[at++] = (byte) code;
            } else if (size <= end - at) {
                spell(code, into, at);
                at += size;
            } else {
                spell(code, waiting, 0);
                waitingFrom = 0;
                waitingTo = size;
            }
        }
    }

    /** Adds the string that this code completes to the table. */
    private void learn(int code) throws IOException {
        if (previous < 0) {
            if (code > END - 2) {
                throw new IOException("the packed picture data are damaged");
            }
        } else {
            if (code > next || (code == next && next >= CODES)) {
                throw new IOException("the packed picture data are damaged");
            }
            if (next < CODES) {
                prefix[next] = (short) previous;
                first[next] = first[previous];
                last[next] = code == next ? first[previous] : first[code];
                length[next] = (short) (length[previous] + 1);
                next++;
                if (next + 1 >= 1 << width && width < 12) {
                    width++;
                }
            }
        }
        previous = code;
    }

    private void spell(int code, byte[] into, int at) {
        int rest = code;
        for (int i = at + length[code] - 1; i >= at; i--) {
            into[i] = last[rest];
            rest = prefix[rest];
        }
    }

    private int nextCode() throws IOException {
        while (bitCount < width) {
            int octet = run.next();
            if (octet < 0) {
                throw new EOFException("the picture data end early");
            }
            bits = bits << 8 | octet;
            bitCount += 8;
        }
        bitCount -= width;
        return bits >>> bitCount & (1 << width) - 1;
    }
}
