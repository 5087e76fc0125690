package greyground.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.InflaterInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Streams are read back by the JDK's zlib, which also checks the Adler-32. */
class DeflatedRowsTest {
    private enum Kind {
        BLANK,
        NOISE,
        LONG_RUNS,
        RARE_MARKS,
        STEEPLY_UNEVEN,
        RUNS_OF_EVERY_LENGTH
    }

    @ParameterizedTest
    @EnumSource
    void everyLengthReadsBack(Kind kind) throws Exception {
        for (int length : new int[] {1, 2, 257, 258, 259, 260, 516, 517, 518, 65_535, 65_536, 65_537, 200_000}) {
            byte[] bytes = bytes(kind, length);
            assertArrayEquals(bytes, inflated(deflated(bytes, 1, 2)), kind + " " + length);
        }
    }

    @ParameterizedTest
    @EnumSource
    void manyPiecesReadBackAndThreadsChangeNothing(Kind kind) throws Exception {
        byte[] bytes = bytes(kind, 1000 * 2126);
        byte[] alone = deflated(bytes, 2126, 1);
        assertArrayEquals(bytes, inflated(alone));
        assertArrayEquals(alone, deflated(bytes, 2126, 2));
        assertArrayEquals(alone, deflated(bytes, 2126, 5));
    }

    @Test
    void blankFilmCostsAlmostNothing() throws Exception {
        int size = deflated(new byte[1000 * 2126], 2126, 2).length;
        assertTrue(size < 20_000, size + " bytes");
    }

    private static byte[] bytes(Kind kind, int length) {
        Random random = new Random(3);
        byte[] bytes = new byte[length];
        int run = 1;
        int left = 1;
        byte value = 0;
        for (int i = 0; i < length; i++) {
            if (--left == 0) {
                run = run % 600 + 1;
                left = run;
                value++;
            }
            bytes[i] = switch (kind) {
                case BLANK -> 0;
                case NOISE -> (byte) random.nextInt();
                case LONG_RUNS -> (byte) (i / 700);
                case RARE_MARKS -> (byte) (random.nextInt(300) == 0 ? 1 : 0);
                // Each value half as frequent as the one before: the plain Huffman code would pass 15 bits.
                case STEEPLY_UNEVEN -> (byte) Long.numberOfTrailingZeros(random.nextLong() | 1L << 60);
                case RUNS_OF_EVERY_LENGTH -> value;
            };
        }
        return bytes;
    }

    private static Bands.Maker<byte[]> cut(byte[] bytes, int bytesPerRow) {
        return (first, count) -> Arrays.copyOfRange(bytes, first * bytesPerRow, (first + count) * bytesPerRow);
    }

    private static byte[] deflated(byte[] bytes, int bytesPerRow, int threads) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int rows = bytes.length / bytesPerRow;
        DeflatedRows.write(rows, bytesPerRow, () -> cut(bytes, bytesPerRow), threads, out, Progress.NONE);
        return out.toByteArray();
    }

    private static byte[] inflated(byte[] stream) throws Exception {
        return new InflaterInputStream(new ByteArrayInputStream(stream)).readAllBytes();
    }
}
