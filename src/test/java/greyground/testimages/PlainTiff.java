package greyground.testimages;

import java.awt.image.Raster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/** Writes 8-bit colour pages as a TIFF 6.0 file: little-endian, one Deflate strip a page, 300 dpi, an orientation tag. */
final class PlainTiff {
    /** TIFF 6.0 orientation 1: as stored. */
    static final int UPRIGHT = 1;

    /** TIFF 6.0 orientation 6: to be turned a quarter to the right for looking. */
    static final int TURN_RIGHT = 6;

    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;
    private static final int ENTRIES = 13;

    private PlainTiff() {}

    static void write(Path file, List<? extends Raster> pages, int orientation) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(buffer(8)
                .put((byte) 'I')
                .put((byte) 'I')
                .putShort((short) 42)
                .putInt(8)
                .array());
        for (int page = 0; page < pages.size(); page++) {
            byte[] strip = strip(pages.get(page));
            int start = out.size();
            int values = start + 2 + 12 * ENTRIES + 4;
            int data = values + 6 + 16;
            int next = page == pages.size() - 1 ? 0 : data + strip.length + strip.length % 2;
            ByteBuffer b = buffer(data - start);
            b.putShort((short) ENTRIES);
            entry(b, 256, LONG, 1, pages.get(page).getWidth());
            entry(b, 257, LONG, 1, pages.get(page).getHeight());
            entry(b, 258, SHORT, 3, values);
            entry(b, 259, SHORT, 1, 8); // Deflate
            entry(b, 262, SHORT, 1, 2); // RGB
            entry(b, 273, LONG, 1, data);
            entry(b, 274, SHORT, 1, orientation);
            entry(b, 277, SHORT, 1, 3);
            entry(b, 278, LONG, 1, pages.get(page).getHeight());
            entry(b, 279, LONG, 1, strip.length);
            entry(b, 282, RATIONAL, 1, values + 6);
            entry(b, 283, RATIONAL, 1, values + 14);
            entry(b, 296, SHORT, 1, 2); // inches
            b.putInt(next);
            b.putShort((short) 8).putShort((short) 8).putShort((short) 8);
            b.putInt(300).putInt(1).putInt(300).putInt(1);
            out.write(b.array());
            out.write(strip);
            if (strip.length % 2 == 1) {
                out.write(0);
            }
        }
        Files.write(file, out.toByteArray());
    }

    private static ByteBuffer buffer(int size) {
        return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static void entry(ByteBuffer b, int tag, int type, int count, int value) {
        b.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
    }

    private static byte[] strip(Raster page) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        Deflater deflater = new Deflater(9);
        try (DeflaterOutputStream out = new DeflaterOutputStream(packed, deflater)) {
            int[] samples = new int[page.getWidth() * 3];
            byte[] row = new byte[samples.length];
            for (int y = 0; y < page.getHeight(); y++) {
                page.getPixels(0, y, page.getWidth(), 1, samples);
                for (int i = 0; i < row.length; i++) {
                    row[i] = (byte) samples[i];
                }
                out.write(row);
            }
        } finally {
            deflater.end();
        }
        return packed.toByteArray();
    }
}
