package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Random;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Art of 400 megapixels goes through a small heap into a spill file. */
class LargeArtIT {
    private static final int SIDE = 20_000;
    private static final long BUDGET = 200L << 20;

    @TempDir
    Path folder;

    /** A page of {@link #SIDE} squared pixels all of whose strips of 50 rows are one and the same stretch of the file. */
    private void write(Path file, int channels, int compression, byte[] strip) throws IOException {
        int strips = SIDE / 50;
        ByteBuffer directory =
                ByteBuffer.allocate(2 + 12 * 9 + 4 + strips * 8 + 16).order(ByteOrder.LITTLE_ENDIAN);
        int at = 8 + strip.length;
        int arraysAt = at + 2 + 12 * 9 + 4;
        directory.putShort((short) 9);
        long[][] entries = {
            {256, 4, 1, SIDE},
            {257, 4, 1, SIDE},
            {258, 3, 1, 8},
            {259, 3, 1, compression},
            {262, 3, 1, channels == 3 ? 2 : 1},
            {273, 4, strips, arraysAt},
            {277, 3, 1, channels},
            {278, 4, 1, 50},
            {279, 4, strips, arraysAt + 4L * strips}
        };
        for (long[] entry : entries) {
            directory
                    .putShort((short) entry[0])
                    .putShort((short) entry[1])
                    .putInt((int) entry[2])
                    .putInt((int) entry[3]);
        }
        directory.putInt(0);
        for (int i = 0; i < strips; i++) {
            directory.putInt(8);
        }
        for (int i = 0; i < strips; i++) {
            directory.putInt(strip.length);
        }
        try (RandomAccessFile out = new RandomAccessFile(file.toFile(), "rw")) {
            out.write(new byte[] {'I', 'I', 42, 0});
            out.writeInt(Integer.reverseBytes(at));
            out.write(strip);
            out.write(directory.array());
        }
    }

    private static byte[] strip(int channels) {
        byte[] strip = new byte[50 * SIDE * channels];
        new Random(5).nextBytes(strip);
        for (int i = 0; i < strip.length; i++) {
            strip[i] &= 7;
        }
        return strip;
    }

    private void checkRows(GreyPlane plane, byte[] strip, int channels) {
        assertEquals(SIDE, plane.width());
        assertEquals(SIDE, plane.height());
        short[] row = new short[SIDE];
        double[] weights = channels == 3 ? Picture.WEIGHTS : new double[] {1};
        for (int y : new int[] {0, 49, 50, 9999, 19_999}) {
            plane.readRow(y, row);
            for (int x = 0; x < SIDE; x += 97) {
                double light = 0;
                for (int c = 0; c < channels; c++) {
                    int sample = strip[(y % 50 * SIDE + x) * channels + c];
                    light += weights[c] * Picture.linear(sample / 255.0);
                }
                assertEquals(65_535 * light, row[x] & 0xFFFF, 1, "pixel " + x + ", " + y);
            }
        }
    }

    private void checkPage(int channels, int compression, byte[] packed, byte[] strip) throws IOException {
        Path file = folder.resolve("large.tif");
        write(file, channels, compression, packed);
        Art art = Art.open(file);
        assertTrue(art.readInBands());
        try (GreyPlane plane = art.decode(Progress.NONE, BUDGET, folder)) {
            checkRows(plane, strip, channels);
        }
    }

    @Test
    void greyAsStored() throws Exception {
        byte[] strip = strip(1);
        checkPage(1, 1, strip, strip);
    }

    @Test
    void deflatedRgb() throws Exception {
        byte[] strip = strip(3);
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream out = new DeflaterOutputStream(packed, new Deflater(1))) {
            out.write(strip);
        }
        checkPage(3, 8, packed.toByteArray(), strip);
    }

    @Test
    void baselineJpeg() throws Exception {
        OutsideTools.run(folder, "vips black dark.v 20000 20000");
        OutsideTools.run(folder, "vips linear dark.v large.jpg 1 188 --uchar");
        Art art = Art.open(folder.resolve("large.jpg"));
        assertTrue(art.readInBands());
        try (GreyPlane plane = art.decode(Progress.NONE, BUDGET, folder)) {
            short[] row = new short[SIDE];
            plane.readRow(SIDE - 1, row);
            assertEquals(65_535 * Picture.linear(188 / 255.0), row[SIDE - 1] & 0xFFFF, 600);
        }
    }
}
