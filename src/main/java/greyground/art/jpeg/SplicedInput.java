package greyground.art.jpeg;

import greyground.art.page.ArtBytes;
import java.io.IOException;
import javax.imageio.stream.ImageInputStreamImpl;

/** A stream that begins with bytes in memory and goes on with a stretch of the file. Owned by one thread. */
final class SplicedInput extends ImageInputStreamImpl {
    private final byte[] head;
    private final ArtBytes file;
    private final long tailAt;
    private final long length;

    SplicedInput(byte[] head, ArtBytes file, long tailAt, long tailEnd) {
        this.head = head;
        this.file = file;
        this.tailAt = tailAt;
        this.length = head.length + Math.max(0, tailEnd - tailAt);
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] into, int offset, int count) throws IOException {
        checkClosed();
        bitOffset = 0;
        if (count == 0) {
            return 0;
        }
        if (streamPos >= length) {
            return -1;
        }
        int some = (int) Math.min(count, length - streamPos);
        if (streamPos < head.length) {
            some = Math.min(some, head.length - (int) streamPos);
            System.arraycopy(head, (int) streamPos, into, offset, some);
        } else {
            some = file.read(tailAt + streamPos - head.length, into, offset, some);
            if (some == 0) {
                return -1;
            }
        }
        streamPos += some;
        return some;
    }

    @Override
    public long length() {
        return length;
    }
}
