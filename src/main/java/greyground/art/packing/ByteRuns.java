package greyground.art.packing;

import java.io.IOException;
import java.io.InputStream;

/** Bytes that are made many at a time; a single one is a run of one. */
public abstract class ByteRuns extends InputStream {
    @Override
    public final int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public abstract int read(byte[] into, int offset, int count) throws IOException;
}
