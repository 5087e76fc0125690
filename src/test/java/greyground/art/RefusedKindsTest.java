package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Kinds that can't be read are told by name, with what to save instead. */
class RefusedKindsTest {
    private static final Path SEEDS = Path.of("src/test/resources/greyground/fuzz/art/seeds");

    @TempDir
    Path folder;

    private void refused(String name, byte[] bytes) throws Exception {
        Path file = Files.write(folder.resolve("art"), bytes);
        String said =
                assertThrows(Refusal.class, () -> Picture.decode(file).close()).getMessage();
        assertTrue(said.contains(name), said);
        assertTrue(said.contains("TIFF or PNG"), said);
        assertEquals(1, said.lines().count());
    }

    /** Frames that the platform can't decode: ITU-T T.81 (1992), table B.1, and T.87, table C.1. */
    @ParameterizedTest
    @CsvSource({
        "C3, 8, lossless",
        "C3, 16, lossless",
        "CB, 8, lossless",
        "F7, 8, lossless",
        "C9, 8, arithmetic-coded",
        "CA, 8, arithmetic-coded",
        "C5, 8, hierarchical",
        "C1, 12, 12 bits",
        "C2, 12, 12 bits"
    })
    void jpegOfAnotherCoding(String marker, int bits, String name) throws Exception {
        byte[] jpeg = Files.readAllBytes(SEEDS.resolve("plain.jpg"));
        int frame = new String(jpeg, StandardCharsets.ISO_8859_1).indexOf("\u00ff\u00c0\0");
        jpeg[frame + 1] = (byte) Integer.parseInt(marker, 16);
        jpeg[frame + 4] = (byte) bits;
        refused(name, jpeg);
    }

    @Test
    void otherKinds() throws Exception {
        String[][] kinds = {
            {"#?RADIANCE\nFORMAT=32-bit_rle_rgbe\n\n-Y 1 +X 1\n....", "Radiance"},
            {"v/1\1\2\0\0\0", "OpenEXR"},
            {"\0\0\0\fjP  \r\n\u0087\n", "JPEG 2000"},
            {"\u00ffO\u00ffQ\0\57", "JPEG 2000"},
            {"\0\0\0\fJXL \r\n\u0087\n", "JPEG XL"},
            {"\0\0\0\34ftypavif", "AVIF"},
            {"\0\0\0\34ftypheic", "HEIF"},
            {"\0\0\0\30ftypcrx ", "raw"},
            {"II*\0\20\0\0\0CR\2\0", "raw"},
            {"IIU\0\30\0\0\0", "raw"},
            {"IIRS\b\0\0\0", "raw"},
            {"MMOR\0\0\0\b", "raw"},
            {"II\32\0\0\0HEAPCCDR", "raw"},
            {"FUJIFILMCCD-RAW ", "raw"},
            {"\0MRM\0\0\0\1", "raw"},
        };
        for (String[] kind : kinds) {
            refused(kind[1], kind[0].getBytes(StandardCharsets.ISO_8859_1));
        }
    }

    /** Fractions of L*a*b* don't say how bright their white is, and the inks of many channels aren't told: layout as in {@link PsdByHandTest}. */
    @ParameterizedTest
    @CsvSource({"32, 9, 32-bit", "8, 7, multichannel"})
    void psdOfOtherSamples(int bits, int mode, String name) throws Exception {
        ByteBuffer psd = ByteBuffer.allocate(70);
        psd.put("8BPS\0\1".getBytes(StandardCharsets.ISO_8859_1)).put(new byte[6]);
        psd.putShort((short) 3).putInt(1).putInt(1).putShort((short) bits).putShort((short) mode);
        refused(name, psd.array());
    }

    /** A drawing's second version begins, after 512 bytes for others and ten of its size, with these words. */
    @Test
    void pict() throws Exception {
        refused(
                "PICT",
                ByteBuffer.allocate(600)
                        .put(522, new byte[] {0, 0x11, 2, (byte) 0xFF, 12, 0})
                        .array());
    }

    /** Cameras' mosaics, TIFF/EP's 32 803, and linear raw light, 34 892: on the page itself, or hanging from a small copy. */
    @ParameterizedTest
    @CsvSource({"32803, true", "34892, true", "32803, false", "34892, false"})
    void rawFilesThatAreTiffByContent(int colours, boolean hanging) throws Exception {
        if (!hanging) {
            refused("raw", TestTiff.of(2, 1, 1, colours, 1, 2).bytes());
            return;
        }
        TestTiff copy = TestTiff.of(2, 1, 1, 1, 1, 2);
        int length = copy.with(330, 0).bytes().length;
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.writeBytes(copy.with(330, length).bytes());
        file.writeBytes(ByteBuffer.allocate(18)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putShort((short) 1)
                .putShort((short) 262)
                .putShort((short) 3)
                .putInt(1)
                .putInt(colours)
                .array());
        refused("raw", file.toByteArray());
    }

    /** A directory that hangs beyond the file's end, or holds another picture in small, changes nothing. */
    @Test
    void otherHangingDirectoriesAreLeftAlone() throws Exception {
        int[] plain = samples(TestTiff.of(2, 1, 1, 1, 30_000, 60_000));
        assertEquals(2, plain.length);
        assertEquals(plain[1], samples(TestTiff.of(2, 1, 1, 1, 30_000, 60_000).with(330, 1 << 30))[1]);
        assertEquals(plain[1], samples(TestTiff.of(2, 1, 1, 1, 30_000, 60_000).with(330, 12))[1]);
    }

    private int[] samples(TestTiff tiff) throws Exception {
        try (var plane = Picture.decode(Files.write(folder.resolve("art"), tiff.bytes()))) {
            return Picture.samples(plane);
        }
    }
}
