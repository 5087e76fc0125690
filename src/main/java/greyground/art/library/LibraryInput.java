package greyground.art.library;

import greyground.art.page.ArtBytes;
import java.io.IOException;
import java.util.Arrays;
import javax.imageio.stream.ImageInputStreamImpl;

/**
 * A file for a library's reader: buffered, and with an end. Such readers may read on past the end as if nothing but noughts came, which a file
 * of a few hundred bytes can stretch to a minute; after a while the end is an error here. One thread reads; any may stop it.
 */
public final class LibraryInput extends ImageInputStreamImpl {
    private static final int BUFFER_BYTES = 1 << 16;
    /** Two of a reader's largest numbers. */
    private static final int PADDING = 16;

    /** A sound picture's reader asks for up to eight bytes more than there are, byte by byte, in each of its few parts (assumed bound). */
    private static final int READS_PAST_END_AT_MOST = 1_000;

    private final ArtBytes file;
    private final long patchAt;
    private final int patch;
    private final long length;
    private final boolean padded;
    private final byte[] buffer = new byte[BUFFER_BYTES];
    private long bufferAt;
    private int buffered;
    private int readsPastEnd;
    private volatile boolean over;

    public LibraryInput(ArtBytes file) {
        this(file, -1, 0, false);
    }

    private LibraryInput(ArtBytes file, long patchAt, int patch, boolean padded) {
        this.file = file;
        this.patchAt = patchAt;
        this.patch = patch;
        this.padded = padded;
        this.length = file.size() + (padded ? PADDING : 0);
    }

    /**
     * The file with one byte, at {@code patchAt}, seen as {@code patch}, none below 0; and with noughts behind it, as a reader needs that looks
     * some numbers ahead, and without a length, from which a reader would conclude that a blank picture can't be true.
     */
    public static LibraryInput padded(ArtBytes file, long patchAt, int patch) {
        return new LibraryInput(file, patchAt, patch, true);
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
            buffered = (int) Math.min(BUFFER_BYTES, Math.max(0, length - streamPos));
            int there = file.read(streamPos, buffer, 0, buffered);
            Arrays.fill(buffer, there, buffered, (byte) 0);
            bufferAt = streamPos;
            if (patchAt >= bufferAt && patchAt < bufferAt + buffered) {
                buffer[(int) (patchAt - bufferAt)] = (byte) patch;
            }
        }
        if (buffered == 0 && ++readsPastEnd > READS_PAST_END_AT_MOST) {
            throw new IOException("the picture data end early: fetch the file again, or save it anew");
        }
        return buffered > 0;
    }

    @Override
    public long length() {
        return padded ? -1 : length;
    }

    /** Makes the next read fail, whoever reads. */
    public void stop() {
        over = true;
    }
}
