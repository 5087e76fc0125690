package greyground.output;

import greyground.raster.GreyPlane;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.WritableByteChannel;

/**
 * Writes a plane as grey art for any editor: a TIFF (TIFF 6.0, 1992) of one picture, 16 bits, 0 black, coded as sRGB is, not packed. The same plane
 * gives the same bytes.
 */
public final class GreyTiff {
    private static final int ROWS_PER_STRIP = 64;
    private static final long CLASSIC_LIMIT = 0xFFFF_0000L;

    private GreyTiff() {}

    /**
     * Writes the whole file; the channel stays open.
     *
     * @param codes what is written for each of the plane's 65 536 codes
     */
    public static void write(GreyPlane plane, char[] codes, WritableByteChannel out) throws IOException {
        int rowBytes = Math.multiplyExact(2, plane.width());
        long size = (long) rowBytes * plane.height();
        boolean big = size > CLASSIC_LIMIT;
        byte[] header = TiffFields.header(big, 0);
        put(out, ByteBuffer.wrap(TiffFields.header(big, header.length + size)));
        int strips = (plane.height() + ROWS_PER_STRIP - 1) / ROWS_PER_STRIP;
        long[] positions = new long[strips];
        long[] lengths = new long[strips];
        short[] row = new short[plane.width()];
        for (int strip = 0; strip < strips; strip++) {
            int rows = Math.min(ROWS_PER_STRIP, plane.height() - strip * ROWS_PER_STRIP);
            ByteBuffer bytes = ByteBuffer.allocate(rows * rowBytes).order(ByteOrder.LITTLE_ENDIAN);
            for (int y = 0; y < rows; y++) {
                plane.readRow(strip * ROWS_PER_STRIP + y, row);
                for (short grey : row) {
                    bytes.putShort((short) codes[grey & 0xFFFF]);
                }
            }
            positions[strip] = header.length + (long) strip * ROWS_PER_STRIP * rowBytes;
            lengths[strip] = bytes.position();
            put(out, bytes.flip());
        }
        TiffFields directory = new TiffFields(big);
        directory.longs(256, plane.width());
        directory.longs(257, plane.height());
        directory.shorts(258, 16);
        directory.shorts(259, 1);
        directory.shorts(262, 1);
        directory.positions(273, positions);
        directory.shorts(277, 1);
        directory.longs(278, ROWS_PER_STRIP);
        directory.positions(279, lengths);
        put(out, ByteBuffer.wrap(directory.bytes(header.length + size, 0)));
    }

    private static void put(WritableByteChannel out, ByteBuffer bytes) throws IOException {
        while (bytes.hasRemaining()) {
            out.write(bytes);
        }
    }
}
