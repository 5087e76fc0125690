package greyground.art.packing;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import org.tukaani.xz.XZIOException;
import org.tukaani.xz.XZInputStream;

/** Unpacks LZMA in its xz wrapping, as TIFF uses it (compression 34 925). */
public final class Lzma implements Unpacker {
    /** What xz's own strongest setting needs to unpack, 65 MiB, and some. */
    private static final int MEMORY_KIB = 80 << 10;

    private static final String DAMAGED = "the packed picture data are damaged";

    private final XZInputStream stream;

    public Lzma(Run run) throws IOException {
        try {
            stream = new XZInputStream(new Packed(run), MEMORY_KIB);
        } catch (XZIOException damaged) {
            throw new IOException(DAMAGED, damaged);
        }
    }

    @Override
    public void read(byte[] into, int offset, int count) throws IOException {
        try {
            if (stream.readNBytes(into, offset, count) < count) {
                throw new EOFException("the picture data end early");
            }
        } catch (XZIOException damaged) {
            throw new IOException(DAMAGED, damaged);
        }
    }

    private static final class Packed extends InputStream {
        private final Run run;

        Packed(Run run) {
            this.run = run;
        }

        @Override
        public int read() throws IOException {
            return run.next();
        }

        @Override
        public int read(byte[] into, int offset, int count) throws IOException {
            int some = run.some(into, offset, count);
            return some == 0 && count > 0 ? -1 : some;
        }
    }
}
