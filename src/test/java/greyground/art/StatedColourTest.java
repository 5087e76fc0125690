package greyground.art;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What chunks beside the pixels of a PNG state (PNG specification, 3rd edition, 4.3 and 11.3.2), and what stands after them. */
class StatedColourTest {
    @TempDir
    Path folder;

    private static byte[] chunk(String name, byte[] data) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        byte[] kind = name.getBytes(StandardCharsets.US_ASCII);
        CRC32 sum = new CRC32();
        sum.update(kind);
        sum.update(data);
        out.writeInt(data.length);
        out.write(kind);
        out.write(data);
        out.writeInt((int) sum.getValue());
        return bytes.toByteArray();
    }

    private static byte[] gamma(int hundredThousandths) throws Exception {
        return chunk("gAMA", ByteBuffer.allocate(4).putInt(hundredThousandths).array());
    }

    /** One row of 8-bit samples of a colour kind, with chunks before its data and {@code surplus} MiB of noughts after its row. */
    private int[] decoded(int kind, int width, byte[] row, int surplus, byte[]... chunks) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes("\u0089PNG\r\n\u001a\n".getBytes(StandardCharsets.ISO_8859_1));
        byte[] head = ByteBuffer.allocate(13)
                .putInt(width)
                .putInt(1)
                .put(new byte[] {8, (byte) kind, 0, 0, 0})
                .array();
        out.writeBytes(chunk("IHDR", head));
        for (byte[] each : chunks) {
            out.writeBytes(each);
        }
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        Deflater deflater = new Deflater();
        byte[] piece = new byte[1 << 16];
        deflater.setInput(ByteBuffer.allocate(1 + row.length).put(1, row).array());
        packed.write(piece, 0, deflater.deflate(piece, 0, piece.length, Deflater.FULL_FLUSH));
        if (surplus == 0) {
            deflater.finish();
        } else {
            deflater.setInput(new byte[1 << 20]);
        }
        // A piece that is flushed in full refers to nothing before it, so that it can be repeated.
        int count = deflater.deflate(piece, 0, piece.length, Deflater.FULL_FLUSH);
        deflater.end();
        for (int i = 0; i < Math.max(1, surplus); i++) {
            packed.write(piece, 0, count);
        }
        out.writeBytes(chunk("IDAT", packed.toByteArray()));
        out.writeBytes(chunk("IEND", new byte[0]));
        Path file = Files.write(folder.resolve("x.png"), out.toByteArray());
        try (GreyPlane plane = Picture.decode(file)) {
            return Picture.samples(plane);
        }
    }

    /** 11.3.2.2: the sample to the power of one over the stated gamma is light. */
    @Test
    void greyGoesByItsStatedGamma() throws Exception {
        int[] found = decoded(0, 3, new byte[] {0, (byte) 128, (byte) 255}, 0, gamma(100_000));
        assertArrayEquals(
                new double[] {0, 65_535 * 128 / 255.0, 65_535},
                Arrays.stream(found).asDoubleStream().toArray(),
                2);
        found = decoded(0, 1, new byte[] {(byte) 128}, 0, gamma(55_556));
        assertEquals(65_535 * Math.pow(128 / 255.0, 1.8), found[0], 4);
    }

    @Test
    void theUsualGammaIsHowSrgbIsSpelt() throws Exception {
        byte[] row = {0, 30, (byte) 128, (byte) 255};
        assertArrayEquals(decoded(0, 4, row, 0), decoded(0, 4, row, 0, gamma(45_455)));
    }

    @Test
    void theSrgbChunkStandsAboveGamma() throws Exception {
        byte[] row = {0, 30, (byte) 128, (byte) 255};
        assertArrayEquals(decoded(0, 4, row, 0), decoded(0, 4, row, 0, gamma(100_000), chunk("sRGB", new byte[1])));
    }

    /** Equal primaries and white, stated, change nothing; swapped red and blue change the weights; white stays white. */
    @Test
    void lightsGoByTheirChromaticities() throws Exception {
        int[] srgb = {31_270, 32_900, 64_000, 33_000, 30_000, 60_000, 15_000, 6_000};
        int[] swapped = {31_270, 32_900, 15_000, 6_000, 30_000, 60_000, 64_000, 33_000};
        byte[] row = {(byte) 255, 0, 0, 0, 0, (byte) 255, (byte) 255, (byte) 255, (byte) 255};
        int[] plain = decoded(2, 3, row, 0);
        assertArrayEquals(plain, decoded(2, 3, row, 0, lights(srgb)));
        int[] other = decoded(2, 3, row, 0, lights(swapped));
        // Y of the red and blue of ITU-R BT.709 adapted to D50 by the linear Bradford transform: 0.2225 and 0.0606.
        assertEquals(0.0606, other[0] / 65_535.0, 0.0005);
        assertEquals(0.2225, other[1] / 65_535.0, 0.0005);
        assertEquals(65_535, other[2], 2);
    }

    private static byte[] lights(int[] numbers) throws Exception {
        ByteBuffer buffer = ByteBuffer.allocate(32);
        for (int each : numbers) {
            buffer.putInt(each);
        }
        return chunk("cHRM", Arrays.copyOf(buffer.array(), 32));
    }

    @Test
    void codesForOtherColoursThanSrgbAreRefused() throws Exception {
        byte[] row = {0, 30};
        assertArrayEquals(decoded(0, 2, row, 0), decoded(0, 2, row, 0, chunk("cICP", new byte[] {1, 13, 0, 1})));
        assertThrows(Refusal.class, () -> decoded(0, 2, row, 0, chunk("cICP", new byte[] {9, 16, 0, 1})));
    }

    /** A palette's colours go through the profile as any others do. */
    @Test
    void paletteColoursGoByTheirGamma() throws Exception {
        byte[] palette = chunk("PLTE", new byte[] {0, 0, 0, (byte) 128, (byte) 128, (byte) 128});
        int[] found = decoded(3, 2, new byte[] {0, 1}, 0, gamma(100_000), palette);
        assertEquals(65_535 * 128 / 255.0, found[1], 20);
    }

    @Test
    void surplusAfterThePictureCostsNoTime() {
        byte[] row = {0, 30};
        assertTimeoutPreemptively(Duration.ofSeconds(10), () -> assertEquals(2, decoded(0, 2, row, 2600).length));
    }
}
