package greyground.raster;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.function.Supplier;
import java.util.zip.Adler32;

/**
 * Writes all rows as one zlib stream (RFC 1950), made and deflated on several threads.
 *
 * <p>Rows are deflated in pieces of a fixed number of rows, about half a megabyte each, that depends on the row length
 * alone; each piece ends on a byte boundary, and the checksums are combined. So the bytes depend neither on the number of
 * threads nor on any band height.
 */
public final class DeflatedRows {
    private static final int PIECE = 1 << 19;
    private static final int ADLER_BASE = 65_521;

    private DeflatedRows() {}

    /**
     * Makes the rows and deflates them into {@code out}, which stays open.
     *
     * @param rows in all, at least 1
     * @param bytesPerRow of every row
     * @param makers give bands of {@code rowCount * bytesPerRow} bytes
     * @param threads at least 1
     */
    public static void write(
            int rows,
            int bytesPerRow,
            Supplier<? extends Bands.Maker<byte[]>> makers,
            int threads,
            OutputStream out,
            Progress progress)
            throws IOException {
        // Deflate, 32 KiB window, check bits that make the pair a multiple of 31, lowest effort. RFC 1950, section 2.2.
        out.write(0x78);
        out.write(0x01);
        Sum sum = new Sum();
        Bands.inOrder(
                rows,
                rowsPerPiece(bytesPerRow),
                threads,
                () -> new PieceMaker(makers.get(), bytesPerRow),
                (first, count, piece) -> {
                    out.write(piece.bytes);
                    sum.add(piece.adler, (long) count * bytesPerRow);
                },
                progress);
        // An empty final block with the fixed code: bits 1, 01, 0000000. RFC 1951, section 3.2.3.
        out.write(0x03);
        out.write(0x00);
        for (int shift = 24; shift >= 0; shift -= 8) {
            out.write((int) (sum.value() >>> shift));
        }
    }

    /** Rows that are made and deflated together. */
    public static int rowsPerPiece(int bytesPerRow) {
        return Math.max(1, PIECE / bytesPerRow);
    }

    /** A deflated piece on its way to the stream; nobody changes it. */
    private static final class Piece {
        private final byte[] bytes;
        private final long adler;

        Piece(byte[] bytes, long adler) {
            this.bytes = bytes;
            this.adler = adler;
        }
    }

    /** Owned by one thread: the deflater and its room are reused from piece to piece. */
    private static final class PieceMaker implements Bands.Maker<Piece> {
        private final Bands.Maker<byte[]> rows;
        private final int bytesPerRow;
        private final DeflateBlocks deflate = new DeflateBlocks();
        private byte[] room = new byte[0];

        PieceMaker(Bands.Maker<byte[]> rows, int bytesPerRow) {
            this.rows = rows;
            this.bytesPerRow = bytesPerRow;
        }

        @Override
        public Piece make(int firstRow, int rowCount) throws IOException {
            byte[] band = rows.make(firstRow, rowCount);
            int length = Math.multiplyExact(rowCount, bytesPerRow);
            Adler32 adler = new Adler32();
            adler.update(band, 0, length);
            if (room.length < DeflateBlocks.room(length)) {
                room = new byte[DeflateBlocks.room(length)];
            }
            int written = deflate.deflate(band, length, room);
            return new Piece(Arrays.copyOf(room, written), adler.getValue());
        }
    }

    /** An Adler-32 of pieces set one after another: RFC 1950, section 8.2, {@code a = 1 + Σd}, {@code b = Σ a} modulo 65 521. */
    private static final class Sum {
        private long low = 1;
        private long high = 0;

        void add(long adler, long length) {
            long pieceLow = adler & 0xFFFF;
            long pieceHigh = adler >>> 16;
            // The piece counted its own low part from 1; here it starts from the low part so far.
            high = (high + pieceHigh + (length % ADLER_BASE) * (low - 1 + ADLER_BASE)) % ADLER_BASE;
            low = (low + pieceLow - 1 + ADLER_BASE) % ADLER_BASE;
        }

        long value() {
            return high << 16 | low;
        }
    }
}
