package greyground.art.packing;

import greyground.art.page.ArtBytes;
import java.io.IOException;
import java.io.InputStream;

/** The bytes of one stretch of a file, in order, fetched in pieces; what was never packed goes straight where it is wanted. Owned by one thread. */
public final class Stretch extends InputStream {
    private static final int PIECE = 1 << 16;

    private final ArtBytes file;
    private final boolean bitsReversed;
    private final long end;
    private byte[] piece = new byte[0];
    private long at;
    private int next;
    private int fetched;

    /** {@code count} bytes from {@code at}, or as far as the file goes; {@code bitsReversed} turns every byte's bits round. */
    public Stretch(ArtBytes file, long at, long count, boolean bitsReversed) {
        this.file = file;
        this.at = at;
        this.end = at + Math.max(0, Math.min(count, file.size() - at));
        this.bitsReversed = bitsReversed;
    }

    /** Where in the file the byte that comes next lies. */
    public long position() {
        return at - (fetched - next);
    }

    @Override
    public int read() throws IOException {
        return next < fetched || fetch() ? piece[next++] & 0xFF : -1;
    }

    @Override
    public int read(byte[] into, int offset, int count) throws IOException {
        if (count == 0) {
            return 0;
        }
        if (next == fetched && count >= PIECE) {
            int got = file.read(at, into, offset, (int) Math.min(count, end - at));
            at += got;
            turn(into, offset, got);
            return got == 0 ? -1 : got;
        }
        if (next == fetched && !fetch()) {
            return -1;
        }
        int some = Math.min(count, fetched - next);
        System.arraycopy(piece, next, into, offset, some);
        next += some;
        return some;
    }

    @Override
    public long skip(long count) {
        long some = Math.max(0, Math.min(count, end - position()));
        int left = fetched - next;
        next = (int) Math.min(fetched, next + some);
        at += Math.max(0, some - left);
        return some;
    }

    private boolean fetch() throws IOException {
        int want = (int) Math.min(PIECE, end - at);
        if (piece.length < want) {
            piece = new byte[want];
        }
        fetched = file.read(at, piece, 0, want);
        next = 0;
        at += fetched;
        turn(piece, 0, fetched);
        return fetched > 0;
    }

    private void turn(byte[] bytes, int from, int count) {
        for (int i = from; bitsReversed && i < from + count; i++) {
            bytes[i] = (byte) (Integer.reverse(bytes[i]) >>> 24);
        }
    }
}
