package greyground.art.kind;

import greyground.art.packing.ByteRuns;
import greyground.art.packing.Unpacked;
import greyground.art.page.ArtBytes;
import greyground.art.page.Octets;
import greyground.art.page.PackedBits;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;

/** Unpacks PNG rows from the top down: joins the data chunks, inflates, undoes the filters. */
final class PngRows implements SampleRows {
    /** ISO/IEC 15948 clause 8.2: first column, first row, column step and row step of the seven passes. */
    private static final int[][] PASSES = {
        {0, 0, 8, 8}, {4, 0, 8, 8}, {0, 4, 4, 8}, {2, 0, 4, 4}, {0, 2, 2, 4}, {1, 0, 2, 2}, {0, 1, 1, 2}
    };

    /** What may follow the picture in its stream before the rest is passed over unread (assumed, ample). */
    private static final int SURPLUS_AT_MOST = 1 << 20;

    private final Samples samples;
    private final int bits;
    private final boolean palette;
    private final boolean interlaced;
    private final InputStream inflated;
    private final int pixelBytes;
    private byte[] above = new byte[0];
    private byte[] current = new byte[0];
    private byte[] whole = new byte[0];

    PngRows(ArtBytes file, long dataAt, Samples samples, int bits, boolean palette, boolean interlaced) {
        this.samples = samples;
        this.bits = bits;
        this.palette = palette;
        this.interlaced = interlaced;
        this.pixelBytes = samples.channels() * samples.bytesPerSample();
        this.inflated = Unpacked.inflated(new DataChunks(file, dataAt));
        start(samples.width());
    }

    /** The bytes of all consecutive data chunks. */
    private static final class DataChunks extends ByteRuns {
        private final ArtBytes file;
        private long at;
        private long left;

        DataChunks(ArtBytes file, long at) {
            this.file = file;
            this.at = at;
        }

        @Override
        public int read(byte[] into, int offset, int count) throws IOException {
            while (left == 0) {
                byte[] head = new byte[8];
                if (file.read(at, head, 0, 8) < 8
                        || !new Octets(head, true).text(4, 4).equals("IDAT")) {
                    return -1;
                }
                left = new Octets(head, true).u32(0);
                at += 8 + (left == 0 ? 4 : 0);
            }
            int got = file.read(at, into, offset, (int) Math.min(count, left));
            left -= got;
            at += got + (left == 0 ? 4 : 0);
            return got == 0 ? -1 : got;
        }
    }

    private int rowBytes(int width) {
        return (int) (((long) width * samples.channels() * bits + 7) / 8);
    }

    private void start(int width) {
        above = new byte[rowBytes(width)];
        current = new byte[rowBytes(width)];
    }

    @Override
    public void read(int firstRow, int rowCount, byte[] into) throws IOException {
        int rowSize = (int) samples.bytesPerRow();
        if (interlaced) {
            if (whole.length == 0) {
                readPasses();
            }
            System.arraycopy(whole, firstRow * rowSize, into, 0, rowCount * rowSize);
            return;
        }
        for (int r = 0; r < rowCount; r++) {
            nextRow();
            spread(samples.width(), into, r * rowSize);
        }
        if (firstRow + rowCount == samples.height()) {
            finish();
        }
    }

    private void readPasses() throws IOException {
        whole = new byte[Math.toIntExact(samples.bytes())];
        byte[] row = new byte[(int) samples.bytesPerRow()];
        for (int[] pass : PASSES) {
            int width = (samples.width() - pass[0] + pass[2] - 1) / pass[2];
            if (width < 1) {
                continue;
            }
            start(width);
            for (int y = pass[1]; y < samples.height(); y += pass[3]) {
                nextRow();
                spread(width, row, 0);
                for (int x = 0; x < width; x++) {
                    int to = (y * samples.width() + pass[0] + x * pass[2]) * pixelBytes;
                    System.arraycopy(row, x * pixelBytes, whole, to, pixelBytes);
                }
            }
        }
        finish();
    }

    private void nextRow() throws IOException {
        byte[] row = above;
        above = current;
        current = row;
        int filter = inflated.read();
        Unpacked.fill(inflated, current, 0, current.length);
        unfilter(filter, Math.max(1, samples.channels() * bits / 8));
    }

    /** ISO/IEC 15948 clause 9. */
    private void unfilter(int filter, int step) throws IOException {
        byte[] row = current;
        byte[] up = above;
        switch (filter) {
            case 0 -> {
                // Stored as it is.
            }
            case 1 -> {
                for (int i = step; i < row.length; i++) {
                    row[i] += row[i - step];
                }
            }
            case 2 -> {
                for (int i = 0; i < row.length; i++) {
                    row[i] += up[i];
                }
            }
            case 3 -> {
                for (int i = 0; i < row.length; i++) {
                    int left = i < step ? 0 : row[i - step] & 0xFF;
                    row[i] += (byte) ((left + (up[i] & 0xFF)) >> 1);
                }
            }
            case 4 -> {
                for (int i = 0; i < row.length; i++) {
                    int left = i < step ? 0 : row[i - step] & 0xFF;
                    int corner = i < step ? 0 : up[i - step] & 0xFF;
                    row[i] += (byte) nearest(left, up[i] & 0xFF, corner);
                }
            }
            default -> throw new Unreadable("the packed picture data are damaged");
        }
    }

    /** Clause 9.4: whichever neighbour is nearest to left + up - corner. */
    private static int nearest(int left, int up, int corner) {
        int fromLeft = Math.abs(up - corner);
        int fromUp = Math.abs(left - corner);
        int fromCorner = Math.abs(left + up - 2 * corner);
        if (fromLeft <= fromUp && fromLeft <= fromCorner) {
            return left;
        }
        return fromUp <= fromCorner ? up : corner;
    }

    private void spread(int width, byte[] into, int at) {
        if (bits >= 8) {
            System.arraycopy(current, 0, into, at, width * pixelBytes);
        } else {
            PackedBits.spread(current, 0, bits, into, at, width, !palette);
        }
    }

    /** Reads on to the end of the stream, so that its checksum is compared, unless the end is far or missing. */
    private void finish() throws IOException {
        try {
            inflated.readNBytes(SURPLUS_AT_MOST);
        } catch (EOFException cut) {
            // All rows are there.
        }
    }

    @Override
    public void close() throws IOException {
        inflated.close();
    }
}
