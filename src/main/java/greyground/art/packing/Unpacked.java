package greyground.art.packing;

import greyground.art.page.Unreadable;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;

/** Bytes out of whatever unpacks them. */
public final class Unpacked {
    private static final int PIECE = 1 << 16;

    private Unpacked() {}

    /** Fills {@code count} bytes of {@code into}. */
    public static void fill(InputStream from, byte[] into, int offset, int count) throws IOException {
        if (from.readNBytes(into, offset, count) < count) {
            throw new Unreadable("the picture data end early");
        }
    }

    /** Unpacks a zlib stream (RFC 1950), as TIFF and PNG use it. */
    public static InputStream inflated(InputStream packed) {
        Inflater inflater = new Inflater();
        return new InflaterInputStream(packed, inflater, PIECE) {
            @Override
            public void close() {
                inflater.end();
            }
        };
    }
}
