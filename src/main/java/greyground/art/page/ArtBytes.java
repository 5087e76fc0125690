package greyground.art.page;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A picture file's bytes by position. Any thread may read at once; reading past the end is an {@link EOFException}. */
public final class ArtBytes implements Closeable {
    private final FileChannel channel;
    private final long start;
    private final long size;

    public ArtBytes(Path path) throws IOException {
        this.channel = FileChannel.open(path, StandardOpenOption.READ);
        this.start = 0;
        this.size = channel.size();
    }

    private ArtBytes(ArtBytes whole, long from, long count) {
        this.channel = whole.channel;
        this.start = whole.start + from;
        this.size = count;
    }

    /** The stretch of {@code count} bytes from {@code from} as if it were a file, cut where the file ends; it stays open as long as this is. */
    public ArtBytes part(long from, long count) {
        long at = Math.min(Math.max(0, from), size);
        return new ArtBytes(this, at, Math.max(0, Math.min(count, size - at)));
    }

    public long size() {
        return size;
    }

    /** {@code count} bytes from {@code at}; {@code count} is checked against the file before memory is taken. */
    public byte[] read(long at, long count) throws IOException {
        if (at < 0 || count < 0 || at > size || count > size - at || count > Integer.MAX_VALUE - 16) {
            throw new Unreadable("the file ends before byte " + Math.max(0, at + count));
        }
        byte[] bytes = new byte[(int) count];
        readFully(at, bytes, 0, bytes.length);
        return bytes;
    }

    public void readFully(long at, byte[] into, int offset, int count) throws IOException {
        if (read(at, into, offset, count) < count) {
            throw new Unreadable("the file ends before byte " + (at + count));
        }
    }

    /** Reads up to {@code count} bytes and returns how many there were. */
    public int read(long at, byte[] into, int offset, int count) throws IOException {
        int there = (int) Math.max(0, Math.min(count, size - at));
        ByteBuffer buffer = ByteBuffer.wrap(into, offset, there);
        long from = start + at;
        while (buffer.hasRemaining()) {
            int got = channel.read(buffer, from);
            if (got < 0) {
                break;
            }
            from += got;
        }
        return (int) (from - start - at);
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
