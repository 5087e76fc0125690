package greyground.art.packing;

import greyground.art.page.ArtBytes;
import java.io.EOFException;
import java.io.IOException;

/** Gives the unpacked bytes of one compressed run of a file, from its start on. Owned by one thread. */
public interface Unpacker extends AutoCloseable {
    /** Fills {@code count} bytes of {@code into}, or throws: data that ends early is an {@link EOFException}. */
    void read(byte[] into, int offset, int count) throws IOException;

    @Override
    default void close() {
        // Most hold arrays only.
    }

    /** Bytes of one run of the file, fetched in pieces. */
    final class Run {
        private static final int PIECE = 1 << 16;

        private final ArtBytes file;
        private final boolean bitsReversed;
        private final byte[] piece;
        private long at;
        private long left;
        private int next;
        private int end;

        public Run(ArtBytes file, long at, long count, boolean bitsReversed) {
            this.file = file;
            this.at = at;
            this.left = Math.max(0, Math.min(count, file.size() - at));
            this.bitsReversed = bitsReversed;
            this.piece = new byte[(int) Math.min(PIECE, Math.max(1, left))];
        }

        /** The next byte, or -1 at the end. */
        public int next() throws IOException {
            return next < end || fetch() ? piece[next++] & 0xFF : -1;
        }

        void read(byte[] into, int offset, int count) throws IOException {
            if (some(into, offset, count) < count) {
                throw new EOFException("the picture data end early");
            }
        }

        /** Fills up to {@code count} bytes and returns how many there were: fewer only at the end. */
        int some(byte[] into, int offset, int count) throws IOException {
            int done = 0;
            while (done < count && (next < end || fetch())) {
                int some = Math.min(count - done, end - next);
                System.arraycopy(piece, next, into, offset + done, some);
                next += some;
                done += some;
            }
            return done;
        }

        /** Hands over what is fetched: returns its length, with the bytes at the start of {@link #piece()}. */
        int nextPiece() throws IOException {
            if (!fetch()) {
                return 0;
            }
            next = end;
            return end;
        }

        byte[] piece() {
            return piece;
        }

        private boolean fetch() throws IOException {
            int want = (int) Math.min(piece.length, left);
            int got = want == 0 ? 0 : file.read(at, piece, 0, want);
            at += got;
            left = got < want ? 0 : left - got;
            next = 0;
            end = got;
            for (int i = 0; bitsReversed && i < got; i++) {
                piece[i] = (byte) (Integer.reverse(piece[i]) >>> 24);
            }
            return got > 0;
        }
    }

    /** Bytes that were never packed; it can go straight to any place. */
    final class Stored implements Unpacker {
        private final ArtBytes file;
        private final boolean bitsReversed;
        private final long end;
        private long at;

        public Stored(ArtBytes file, long at, long count, boolean bitsReversed) {
            this.file = file;
            this.at = at;
            this.end = at + count;
            this.bitsReversed = bitsReversed;
        }

        public void skip(long count) {
            at += count;
        }

        @Override
        public void read(byte[] into, int offset, int count) throws IOException {
            if (count > end - at) {
                throw new EOFException("the picture data end early");
            }
            file.readFully(at, into, offset, count);
            at += count;
            for (int i = offset; bitsReversed && i < offset + count; i++) {
                into[i] = (byte) (Integer.reverse(into[i]) >>> 24);
            }
        }
    }
}
