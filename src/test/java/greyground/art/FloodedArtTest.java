package greyground.art;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Thousands of notes beside a picture, and blank pictures that swell ten thousandfold, end in one line or none, in time. */
class FloodedArtTest {
    private static final Path SEEDS = Path.of("src/test/resources/greyground/fuzz/art/seeds");
    private static final Duration LONGEST = Duration.ofSeconds(10);

    @TempDir
    Path folder;

    private int[] samples(byte[] picture) throws Exception {
        Path file = Files.write(folder.resolve("art"), picture);
        return assertTimeoutPreemptively(LONGEST, () -> {
            try (var plane = Picture.decode(file)) {
                return Picture.samples(plane);
            }
        });
    }

    private void refused(byte[] picture, String words) throws Exception {
        Path file = Files.write(folder.resolve("art"), picture);
        String said = assertTimeoutPreemptively(
                        LONGEST,
                        () -> assertThrows(
                                Refusal.class, () -> Picture.decode(file).close()))
                .getMessage();
        assertEquals(1, said.lines().count());
        assertTrue(said.contains(words), said);
    }

    /** EXIF of one directory with 4096 entries, each of which says nothing. */
    private static byte[] exif() {
        ByteBuffer exif = ByteBuffer.allocate(10 + 12 * 4096 + 4).order(ByteOrder.LITTLE_ENDIAN);
        exif.put("II*\0".getBytes(StandardCharsets.ISO_8859_1)).putInt(8).putShort((short) 4096);
        for (int i = 0; i < 4096; i++) {
            exif.putShort((short) (1000 + i)).putShort((short) 3).putInt(1).putInt(0);
        }
        return exif.array();
    }

    private static byte[] flooded(int segments, int marker, byte[] data) throws IOException {
        byte[] jpeg = Files.readAllBytes(SEEDS.resolve("plain.jpg"));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(jpeg, 0, 2);
        for (int i = 0; i < segments; i++) {
            out.writeShort(marker);
            out.writeShort(data.length + 2);
            out.write(data);
        }
        out.write(jpeg, 2, jpeg.length - 2);
        return bytes.toByteArray();
    }

    @Test
    void exifAThousandTimesInAJpegIsReadOnce() throws Exception {
        ByteArrayOutputStream data = new ByteArrayOutputStream();
        data.writeBytes("Exif\0\0".getBytes(StandardCharsets.ISO_8859_1));
        data.writeBytes(exif());
        assertArrayEquals(flat(), samples(flooded(1000, 0xFFE1, data.toByteArray())));
    }

    private int[] flat() throws Exception {
        return samples(Files.readAllBytes(SEEDS.resolve("plain.jpg")));
    }

    @Test
    void aProfileInHundredsOfSegmentsIsPassedOver() throws Exception {
        byte[] data = new byte[60_000];
        System.arraycopy("ICC_PROFILE\0\1\1".getBytes(StandardCharsets.ISO_8859_1), 0, data, 0, 14);
        assertArrayEquals(flat(), samples(flooded(900, 0xFFE2, data)));
        assertEquals(1, Art.open(folder.resolve("art")).remarks().size());
    }

    @Test
    void moreSegmentsThanAnyWriterLeavesAreRefused() throws Exception {
        refused(flooded(20_000, 0xFFE5, new byte[8]), "no picture");
    }

    /** A PSD of one white pixel with a resource 5000 times: EXIF, a profile, a resolution (ids 0x0422, 0x040F, 0x03ED). */
    @ParameterizedTest
    @ValueSource(ints = {0x0422, 0x040F, 0x03ED})
    void resourcesByTheThousandInAPsdAreReadOnce(int id) throws Exception {
        byte[] data = id == 0x0422 ? exif() : new byte[20_000];
        int each = 12 + data.length;
        int count = 1000;
        ByteBuffer psd = ByteBuffer.allocate(26 + 4 + 4 + count * each + 4 + 2 + 1);
        psd.put("8BPS\0\1".getBytes(StandardCharsets.ISO_8859_1)).put(new byte[6]);
        psd.putShort((short) 1).putInt(1).putInt(1).putShort((short) 8).putShort((short) 1);
        psd.putInt(0).putInt(count * each);
        for (int i = 0; i < count; i++) {
            psd.put("8BIM".getBytes(StandardCharsets.US_ASCII))
                    .putShort((short) id)
                    .putShort((short) 0);
            psd.putInt(data.length).put(data);
        }
        psd.putInt(0).putShort((short) 0).put((byte) 255);
        assertArrayEquals(new int[] {65_535}, samples(psd.array()));
    }

    private static void chunk(DataOutputStream out, String name, byte[] data) throws IOException {
        byte[] kind = name.getBytes(StandardCharsets.US_ASCII);
        CRC32 sum = new CRC32();
        sum.update(kind);
        sum.update(data);
        out.writeInt(data.length);
        out.write(kind);
        out.write(data);
        out.writeInt((int) sum.getValue());
    }

    /** A thousand chunks of a profile each, in a PNG of one white pixel: none is a profile that can be used, and one line says so. */
    @Test
    void profileChunksByTheThousandInAPngAreReadOnce() throws Exception {
        ByteArrayOutputStream swelling = new ByteArrayOutputStream();
        swelling.writeBytes("icc\0\0".getBytes(StandardCharsets.ISO_8859_1));
        try (DeflaterOutputStream deflate = new DeflaterOutputStream(swelling)) {
            deflate.write(new byte[32 << 20]);
        }
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflate = new DeflaterOutputStream(packed)) {
            deflate.write(new byte[] {0, (byte) 255});
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.write("\u0089PNG\r\n\u001a\n".getBytes(StandardCharsets.ISO_8859_1));
        chunk(
                out,
                "IHDR",
                ByteBuffer.allocate(13).putInt(1).putInt(1).put((byte) 8).array());
        for (int i = 0; i < 1000; i++) {
            chunk(out, "iCCP", swelling.toByteArray());
        }
        chunk(out, "IDAT", packed.toByteArray());
        chunk(out, "IEND", new byte[0]);
        assertArrayEquals(new int[] {65_535}, samples(bytes.toByteArray()));
        assertEquals(1, Art.open(folder.resolve("art")).remarks().size());
    }

    @Test
    void aBlankPngOf900MegapixelsInAHundredKilobytesIsRefused() throws Exception {
        int side = 30_000;
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflate = new DeflaterOutputStream(packed)) {
            byte[] row = new byte[1 + side / 8];
            for (int y = 0; y < side; y++) {
                deflate.write(row);
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.write("\u0089PNG\r\n\u001a\n".getBytes(StandardCharsets.ISO_8859_1));
        chunk(
                out,
                "IHDR",
                ByteBuffer.allocate(13).putInt(side).putInt(side).put((byte) 1).array());
        chunk(out, "IDAT", packed.toByteArray());
        chunk(out, "IEND", new byte[0]);
        assertTrue(bytes.size() < 150_000, "bytes: " + bytes.size());
        refused(bytes.toByteArray(), "30000 x 30000");
    }

    /** Lossless WebP states its size in twice 14 bits (RFC 9649, 3.4); the rest is nothing. */
    @Test
    void aBlankWebpOf268MegapixelsIsRefused() throws Exception {
        ByteBuffer webp = ByteBuffer.allocate(12 + 8 + 40).order(ByteOrder.LITTLE_ENDIAN);
        webp.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(52);
        webp.put("WEBPVP8L".getBytes(StandardCharsets.US_ASCII)).putInt(40).put((byte) 0x2F);
        webp.putInt(16_383 | 16_383 << 14);
        refused(webp.array(), "16384 x 16384");
    }

    @Test
    void aBlankGifOf400MegapixelsIsRefused() throws Exception {
        ByteBuffer gif = ByteBuffer.allocate(60).order(ByteOrder.LITTLE_ENDIAN);
        gif.put("GIF89a".getBytes(StandardCharsets.US_ASCII))
                .putShort((short) 20_000)
                .putShort((short) 20_000);
        gif.put(new byte[] {(byte) 0x80, 0, 0, 0, 0, 0, 1, 1, 1, ','}).putInt(0);
        gif.putShort((short) 20_000).putShort((short) 20_000).put(new byte[] {0, 2, 1, 4, 0, ';'});
        refused(gif.array(), "20000 x 20000");
    }
}
