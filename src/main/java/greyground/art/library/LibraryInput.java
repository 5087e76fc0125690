package greyground.art.library;

import greyground.art.page.ArtBytes;
import java.io.IOException;
import java.util.Arrays;
import javax.imageio.stream.ImageInputStreamImpl;

/**
 * A file for somebody else's reader: buffered, with a head of our own in place of the file's, and with an end. Such readers may read on past
 * the end as if nothing but noughts came, which a file of a few hundred bytes can stretch to a minute; after a while the end is an error here.
 * One thread reads; any may stop it.
 */
public final class LibraryInput extends ImageInputStreamImpl {
    private static final int BUFFER_BYTES = 1 << 16;
    /** A sound picture's reader asks for up to eight bytes more than there are, byte by byte, in each of its few parts (assumed bound). */
    private static final int READS_PAST_END_AT_MOST = 1_000;

    private final byte[] head;
    private final ArtBytes tail;
    private final long length;
    private final byte[] buffer = new byte[BUFFER_BYTES];
    private long bufferAt;
    private int buffered;
    private int readsPastEnd;
    private volatile boolean over;

    public LibraryInput(ArtBytes file) {
        this(new byte[0], file);
    }

    /** {@code head}, and {@code tail} behind it. */
    public LibraryInput(byte[] head, ArtBytes tail) {
        this.head = head;
        this.tail = tail;
        this.length = head.length + tail.size();
    }

    @Override
    public int read() throws IOException {
        bitOffset = 0;
        if (!filled()) {
            return -1;
        }
        return buffer[(int) (streamPos++ - bufferAt)] & 0xFF;
    }

    @Override
    public int read(byte[] into, int offset, int count) throws IOException {
        bitOffset = 0;
        if (count == 0) {
            return 0;
        }
        if (!filled()) {
            return -1;
        }
        int from = (int) (streamPos - bufferAt);
        int some = Math.min(count, buffered - from);
        System.arraycopy(buffer, from, into, offset, some);
        streamPos += some;
        return some;
    }

    /** Whether the buffer holds the byte that comes next. */
    private boolean filled() throws IOException {
        checkClosed();
        if (over) {
            throw new IOException("stopped");
        }
        if (streamPos < bufferAt || streamPos >= bufferAt + buffered) {
            bufferAt = streamPos;
            buffered = (int) Math.min(BUFFER_BYTES, Math.max(0, length - streamPos));
            int ours = (int) Math.max(0, Math.min(buffered, head.length - streamPos));
            System.arraycopy(head, (int) Math.min(head.length, streamPos), buffer, 0, ours);
            int theirs = tail.read(streamPos + ours - head.length, buffer, ours, buffered - ours);
            Arrays.fill(buffer, ours + theirs, buffered, (byte) 0);
        }
        if (buffered == 0 && ++readsPastEnd > READS_PAST_END_AT_MOST) {
            throw new IOException("the picture data end early: fetch the file again, or save it anew");
        }
        return buffered > 0;
    }

    @Override
    public long length() {
        return length;
    }

    /** Makes the next read fail, whoever reads. */
    public void stop() {
        over = true;
    }
}
