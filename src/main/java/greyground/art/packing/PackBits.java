package greyground.art.packing;

import java.io.EOFException;
import java.io.IOException;

/** Unpacks the byte runs of TIFF 6.0 section 9, which PSD uses as well. */
public final class PackBits implements Unpacker {
    private final Run run;
    private int literals;
    private int repeats;
    private byte repeated;

    public PackBits(Run run) {
        this.run = run;
    }

    @Override
    public void read(byte[] into, int offset, int count) throws IOException {
        int at = offset;
        int end = offset + count;
        while (at < end) {
            if (literals > 0) {
                int some = Math.min(literals, end - at);
                run.read(into, at, some);
                literals -= some;
                at += some;
            } else if (repeats > 0) {
                int some = Math.min(repeats, end - at);
                java.util.Arrays.fill(into, at, at + some, repeated);
                repeats -= some;
                at += some;
            } else {
                int head = octet();
                if (head < 128) {
                    literals = head + 1;
                } else if (head > 128) {
                    repeats = 257 - head;
                    repeated = (byte) octet();
                }
            }
        }
    }

    private int octet() throws IOException {
        int octet = run.next();
        if (octet < 0) {
            throw new EOFException("the picture data end early");
        }
        return octet;
    }
}
