package greyground.art;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Four faults that turn a sound picture into a wrong film without a word: a negative, a shear, a mask whose highest bit counts as a sign, a
 * gamma upside down. The same picture is stored in two ways and must come out the same; gamma's turn is in {@link StatedColourTest}.
 */
class ReversalsTest {
    private static final int[] SLOPE = {0, 9_000, 30_000, 50_000, 60_000, 65_535};

    @TempDir
    Path folder;

    private int[] decoded(byte[] picture) throws Exception {
        try (var plane = Picture.decode(Files.write(folder.resolve("art"), picture))) {
            return Picture.samples(plane);
        }
    }

    private static int[] light(int[] codes) {
        return Arrays.stream(codes)
                .map(code -> (int) Math.round(65_535 * Picture.linear(code / 65_535.0)))
                .toArray();
    }

    /** TIFF 6.0, PhotometricInterpretation: 0 white is 0, 1 black is 0. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void photometric(int photometric) throws Exception {
        int[] stored = Arrays.stream(SLOPE)
                .map(code -> photometric == 0 ? 65_535 - code : code)
                .toArray();
        assertArrayEquals(
                light(SLOPE), decoded(TestTiff.of(3, 2, 1, photometric, stored).bytes()));
    }

    /** TIFF 6.0 section 15: a tile is whole, however little of it the picture fills. */
    @Test
    void tileStride() throws Exception {
        int[] tile = new int[16 * 16];
        Arrays.fill(tile, 777);
        System.arraycopy(SLOPE, 0, tile, 0, 3);
        System.arraycopy(SLOPE, 3, tile, 16, 3);
        TestTiff tiff = TestTiff.of(16, 16, 1, 1, tile).with(256, 3).with(257, 2);
        assertArrayEquals(
                light(SLOPE),
                decoded(tiff.with(322, 16)
                        .with(323, 16)
                        .with(324, 8)
                        .with(325, 512)
                        .bytes()));
    }

    /** Masks that reach bit 31, where a number of 32 bits has its sign, and the same 8 bits lower. */
    @Test
    void maskSign() throws Exception {
        assertArrayEquals(light(new int[] {0, 100 * 257, 200 * 257, 65_535}), decoded(masked(24)));
        assertArrayEquals(decoded(masked(16)), decoded(masked(24)));
    }

    private static byte[] masked(int shift) {
        ByteBuffer bmp = ByteBuffer.allocate(14 + 40 + 12 + 16).order(ByteOrder.LITTLE_ENDIAN);
        bmp.put("BM".getBytes(StandardCharsets.US_ASCII))
                .putInt(bmp.capacity())
                .putInt(0)
                .putInt(66);
        bmp.putInt(40)
                .putInt(4)
                .putInt(1)
                .putShort((short) 1)
                .putShort((short) 32)
                .putInt(3)
                .putInt(16);
        bmp.put(new byte[16]);
        for (int c = 0; c < 3; c++) {
            bmp.putInt(0xFF << (shift - 8 * c));
        }
        for (int grey : new int[] {0, 100, 200, 255}) {
            bmp.putInt(grey << shift | grey << (shift - 8) | grey << (shift - 16));
        }
        return bmp.array();
    }

    /** The palette's transparent index, image resource 0x0417 of the public description: paper shows where it stands. */
    @Test
    void clearEntryOfAPaletteInAPsd() throws Exception {
        ByteBuffer psd = ByteBuffer.allocate(26 + 4 + 768 + 4 + 14 + 4 + 2 + 3);
        psd.put("8BPS\0\1".getBytes(StandardCharsets.ISO_8859_1)).put(new byte[6]);
        psd.putShort((short) 1).putInt(1).putInt(3).putShort((short) 8).putShort((short) 2);
        psd.putInt(768).position(psd.position() + 768);
        psd.putInt(14)
                .put("8BIM".getBytes(StandardCharsets.US_ASCII))
                .putShort((short) 0x0417)
                .putShort((short) 0);
        psd.putInt(2).putShort((short) 5);
        psd.putInt(0).putShort((short) 0).put(new byte[] {4, 5, 6});
        assertArrayEquals(new int[] {0, 65_535, 0}, decoded(psd.array()));
        assertEquals(1, Art.open(folder.resolve("art")).pages());
    }
}
