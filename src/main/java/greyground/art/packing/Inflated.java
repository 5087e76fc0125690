package greyground.art.packing;

import java.io.EOFException;
import java.io.IOException;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/** Unpacks a zlib stream (RFC 1950), as TIFF and PNG use it. */
public final class Inflated implements Unpacker {
    /** Where packed bytes come from: fetches the next piece and returns its length, 0 at the end. */
    public interface Feed {
        int fetch() throws IOException;

        byte[] piece();
    }

    private final Inflater inflater = new Inflater();
    private final Feed feed;

    public Inflated(Feed feed) {
        this.feed = feed;
    }

    public Inflated(Run run) {
        this(new Feed() {
            @Override
            public int fetch() throws IOException {
                return run.nextPiece();
            }

            @Override
            public byte[] piece() {
                return run.piece();
            }
        });
    }

    @Override
    public void read(byte[] into, int offset, int count) throws IOException {
        int done = 0;
        try {
            while (done < count) {
                int some = inflater.inflate(into, offset + done, count - done);
                done += some;
                if (some == 0 && !feedMore()) {
                    throw new EOFException("the picture data end early");
                }
            }
        } catch (DataFormatException damaged) {
            throw new IOException("the packed picture data are damaged", damaged);
        }
    }

    /** What may follow the picture in its stream before the rest is passed over unread (assumed, ample). */
    private static final int SURPLUS_AT_MOST = 1 << 20;

    /** Reads on to the end of the stream, so that its checksum is compared, unless the end is far. */
    public void finish() throws IOException {
        byte[] spare = new byte[1 << 13];
        int surplus = 0;
        try {
            while (!inflater.finished() && surplus < SURPLUS_AT_MOST) {
                int some = inflater.inflate(spare);
                surplus += some;
                if (some == 0 && !feedMore()) {
                    return;
                }
            }
        } catch (DataFormatException damaged) {
            throw new IOException("the packed picture data are damaged", damaged);
        }
    }

    private boolean feedMore() throws IOException {
        if (inflater.finished() || inflater.needsDictionary()) {
            return false;
        }
        if (inflater.needsInput()) {
            int got = feed.fetch();
            if (got == 0) {
                return false;
            }
            inflater.setInput(feed.piece(), 0, got);
        }
        return true;
    }

    @Override
    public void close() {
        inflater.end();
    }
}
