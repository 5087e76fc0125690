package greyground.art.packing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import greyground.art.page.ArtBytes;
import greyground.art.page.Unreadable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.function.IntUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the Java platform's own TIFF writer packs (TIFF 6.0 section 13) comes back, in pieces of any size. */
class LzwTest {
    private static final int SIDE = 512;

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(ints = {1, 7, 8, 9, 255, 4096, 50_000, SIDE * SIDE})
    void stringsOfAnyLengthComeBackInPiecesOfAnySize(int piece) throws IOException {
        byte[] noise = new byte[SIDE * SIDE];
        new Random(3).nextBytes(noise);
        // Noise has strings of one or two bytes; few values make some of dozens; one value makes them grow to
        // thousands.
        comesBack(i -> noise[i], piece);
        comesBack(i -> noise[i] & 1, piece);
        comesBack(i -> 7, piece);
        comesBack(i -> i / SIDE % 5 == 0 ? noise[i] : i / 300, piece);
    }

    @Test
    void dataThatEndEarlyGiveWhatTheyHoldAndThenSaySo() throws IOException {
        LzwPacked packed = packed(i -> i * i);
        try (ArtBytes file = new ArtBytes(packed.file())) {
            Lzw lzw = new Lzw(new Stretch(file, packed.from(), packed.count(), false));
            byte[] read = new byte[SIDE * SIDE];
            lzw.read(read, 0, read.length);
            assertArrayEquals(packed.plain(), read);
            assertThrows(Unreadable.class, () -> lzw.read(read, 0, 1));
            Lzw half = new Lzw(new Stretch(file, packed.from(), packed.count() / 2, false));
            assertThrows(Unreadable.class, () -> half.read(read, 0, read.length));
        }
    }

    @Test
    void anotherRunIsReadAsIfItWereTheFirst() throws IOException {
        LzwPacked packed = packed(i -> i / 5);
        try (ArtBytes file = new ArtBytes(packed.file())) {
            Lzw lzw = new Lzw(new Stretch(file, packed.from(), packed.count(), false));
            lzw.read(new byte[1000], 0, 1000);
            lzw.begin(new Stretch(file, packed.from(), packed.count(), false));
            byte[] read = new byte[SIDE * SIDE];
            lzw.read(read, 0, read.length);
            assertArrayEquals(packed.plain(), read);
        }
    }

    @Test
    void aCodeThatWasNeverLearnedIsRefused() throws IOException {
        Path file = folder.resolve("codes");
        // 9 bits each: clear, 65, 300. Only 258 can have been learned by then.
        int codes = 256 << 18 | 65 << 9 | 300;
        Files.write(
                file,
                new byte[] {(byte) (codes >> 19), (byte) (codes >> 11), (byte) (codes >> 3), (byte) (codes << 5)});
        try (ArtBytes bytes = new ArtBytes(file)) {
            Lzw lzw = new Lzw(new Stretch(bytes, 0, 4, false));
            byte[] read = new byte[2];
            lzw.read(read, 0, 1);
            assertEquals(65, read[0]);
            IOException refused = assertThrows(IOException.class, () -> lzw.read(read, 0, 1));
            assertEquals("the packed picture data are damaged", refused.getMessage());
        }
    }

    private void comesBack(IntUnaryOperator value, int piece) throws IOException {
        LzwPacked packed = packed(value);
        try (ArtBytes file = new ArtBytes(packed.file())) {
            Lzw lzw = new Lzw(new Stretch(file, packed.from(), packed.count(), false));
            byte[] read = new byte[SIDE * SIDE];
            for (int at = 0; at < read.length; at += piece) {
                lzw.read(read, at, Math.min(piece, read.length - at));
            }
            assertArrayEquals(packed.plain(), read);
        }
    }

    private LzwPacked packed(IntUnaryOperator value) throws IOException {
        return LzwPacked.of(folder.resolve("packed.tif"), SIDE, value);
    }
}
