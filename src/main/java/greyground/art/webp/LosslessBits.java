package greyground.art.webp;

import greyground.art.packing.Stretch;
import greyground.art.page.Unreadable;
import java.io.IOException;

/** The bits of lossless WebP data, each byte's lowest first (RFC 9649, 3.2). Noughts may be looked at beyond their end, not used. Owned by one thread. */
final class LosslessBits {
    private final Stretch bytes;
    /** What has been fetched, the next bit lowest. */
    private long ahead;

    private int fetched;
    /** How many of those fetched stand beyond the end. */
    private int beyond;

    LosslessBits(Stretch bytes) {
        this.bytes = bytes;
    }

    /** The next {@code count} bits, 0 to 32, which stay. */
    int peek(int count) throws IOException {
        while (fetched < count) {
            int octet = bytes.read();
            ahead |= (octet < 0 ? 0L : octet) << fetched;
            beyond += octet < 0 ? 8 : 0;
            fetched += 8;
        }
        return (int) (ahead & ((1L << count) - 1));
    }

    /** Goes past bits that were looked at. */
    void skip(int count) throws Unreadable {
        ahead >>>= count;
        fetched -= count;
        if (fetched < beyond) {
            throw new Unreadable("the picture data end early: the file is cut short");
        }
    }

    int number(int count) throws IOException {
        int number = peek(count);
        skip(count);
        return number;
    }

    boolean flag() throws IOException {
        return number(1) == 1;
    }
}
