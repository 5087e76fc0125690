package greyground.art.packing;

import greyground.art.page.Unreadable;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;

/** Unpacks the byte runs of TIFF 6.0 section 9, which PSD uses as well. */
public final class PackBits extends ByteRuns {
    private final InputStream packed;
    private int literals;
    private int repeats;
    private byte repeated;

    public PackBits(InputStream packed) {
        this.packed = packed;
    }

    @Override
    public int read(byte[] into, int offset, int count) throws IOException {
        while (literals == 0 && repeats == 0) {
            int head = packed.read();
            if (head < 0) {
                return -1;
            }
            literals = head < 128 ? head + 1 : 0;
            repeats = head > 128 ? 257 - head : 0;
            repeated = head > 128 ? octet() : 0;
        }
        int some = Math.min(count, Math.max(literals, repeats));
        if (literals > 0) {
            Unpacked.fill(packed, into, offset, some);
            literals -= some;
        } else {
            Arrays.fill(into, offset, offset + some, repeated);
            repeats -= some;
        }
        return some;
    }

    private byte octet() throws IOException {
        int octet = packed.read();
        if (octet < 0) {
            throw new Unreadable("the picture data end early");
        }
        return (byte) octet;
    }
}
