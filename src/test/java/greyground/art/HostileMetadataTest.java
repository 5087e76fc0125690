package greyground.art;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import greyground.raster.GreyPlane;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
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

/** What is written beside the pixels may lie, swell or call for other files: the picture is the same as without it, or refused. */
class HostileMetadataTest {
    private static final Path SEEDS = Path.of("src/test/resources/greyground/fuzz/art/seeds");
    private static final Duration LONGEST = Duration.ofSeconds(10);
    private static final byte[] LAUGHS = laughs();

    @TempDir
    Path folder;

    /** Ten entities of ten each, to the tenth power; and one that fetches a file, and one that fetches a page. */
    private static byte[] laughs() {
        StringBuilder text = new StringBuilder("<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY l0 \"ha\">");
        for (int i = 1; i <= 10; i++) {
            text.append("<!ENTITY l")
                    .append(i)
                    .append(" \"")
                    .append(("&l" + (i - 1) + ";").repeat(10))
                    .append("\">");
        }
        return text.append("<!ENTITY file SYSTEM \"file:///etc/hostname\">")
                .append("<!ENTITY page SYSTEM \"http://192.0.2.1/x\">]>")
                .append("<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">&l10;&file;&page;</x:xmpmeta>")
                .toString()
                .getBytes(StandardCharsets.UTF_8);
    }

    private int[] samples(byte[] picture) throws IOException {
        Path file = Files.write(folder.resolve("art"), picture);
        return assertTimeoutPreemptively(LONGEST, () -> {
            try (GreyPlane plane = Picture.decode(file)) {
                return Picture.samples(plane);
            }
        });
    }

    private static byte[] inserted(byte[] into, int at, byte[] piece) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(into, 0, at);
        out.writeBytes(piece);
        out.write(into, at, into.length - at);
        return out.toByteArray();
    }

    private static byte[] chunk(String name, byte[] data) throws IOException {
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

    private static byte[] joined(String head, byte[] tail) {
        return inserted(head.getBytes(StandardCharsets.ISO_8859_1), head.length(), tail);
    }

    private static byte[] deflated(byte[] bytes) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflate = new DeflaterOutputStream(out)) {
            deflate.write(bytes);
        }
        return out.toByteArray();
    }

    /** A PNG's chunks begin after its signature and head: 8 and 25 bytes (PNG specification, 5.2 and 11.2.2). */
    @Test
    void xmlThatMultipliesInAPngIsNeverRead() throws Exception {
        byte[] png = Files.readAllBytes(SEEDS.resolve("rgb8.png"));
        byte[] text = joined("XML:com.adobe.xmp\0\0\0\0\0", LAUGHS);
        assertArrayEquals(samples(png), samples(inserted(png, 33, chunk("iTXt", text))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"iTXt", "zTXt"})
    void textThatSwellsInAPngIsNeverUnpacked(String kind) throws Exception {
        byte[] png = Files.readAllBytes(SEEDS.resolve("rgb8.png"));
        String head = kind.equals("iTXt") ? "Comment\0\1\0\0\0" : "Comment\0\0";
        byte[] swelling = joined(head, deflated(new byte[64 << 20]));
        assertArrayEquals(samples(png), samples(inserted(png, 33, chunk(kind, swelling))));
    }

    @Test
    void aProfileThatSwellsIsPassedOverAndSaidSo() throws Exception {
        byte[] png = Files.readAllBytes(SEEDS.resolve("rgb8.png"));
        byte[] swelling = joined("icc\0\0", deflated(new byte[64 << 20]));
        byte[] bomb = inserted(png, 33, chunk("iCCP", swelling));
        assertArrayEquals(samples(png), samples(bomb));
        assertEquals(1, Art.open(folder.resolve("art")).remarks().size());
    }

    @Test
    void xmlThatMultipliesInAJpegIsNeverRead() throws Exception {
        byte[] jpeg = Files.readAllBytes(SEEDS.resolve("plain.jpg"));
        byte[] text = joined("http://ns.adobe.com/xap/1.0/\0", LAUGHS);
        byte[] segment = inserted(
                ByteBuffer.allocate(4)
                        .putShort((short) 0xFFE1)
                        .putShort((short) (text.length + 2))
                        .array(),
                4,
                text);
        assertArrayEquals(samples(jpeg), samples(inserted(jpeg, 2, segment)));
    }

    /** XMP lies in TIFF's tag 700, and what other programs call ImageDescription, 270, is as little read. */
    @ParameterizedTest
    @ValueSource(ints = {700, 270})
    void xmlThatMultipliesInATiffIsNeverRead(int tag) throws Exception {
        TestTiff tiff = TestTiff.of(2, 2, 1, 1, 0, 20_000, 40_000, 65_535);
        int[] plain = samples(tiff.bytes());
        int place = tiff.bytes().length + 12;
        byte[] told = tiff.with(tag, place).bytes();
        ByteBuffer.wrap(told).order(java.nio.ByteOrder.LITTLE_ENDIAN);
        byte[] whole = inserted(told, told.length, LAUGHS);
        // The entry just made is one LONG; it becomes so many bytes that lie behind the directory.
        ByteBuffer bytes = ByteBuffer.wrap(whole).order(java.nio.ByteOrder.LITTLE_ENDIAN);
        int entry = bytes.getInt(4) + 2;
        while ((bytes.getShort(entry) & 0xFFFF) != tag) {
            entry += 12;
        }
        bytes.putShort(entry + 2, (short) 1).putInt(entry + 4, LAUGHS.length).putInt(entry + 8, told.length);
        assertArrayEquals(plain, samples(whole));
    }

    /** Lengths, counts and places in the profile that can't be (ICC.1:2022, 7.2 and 7.3): the art then counts as without one. */
    @ParameterizedTest
    @ValueSource(ints = {0, 128, 132, 136, 140})
    void profilesThatLieOfTheirSizesArePassedOver(int place) throws Exception {
        TestTiff tiff = TestTiff.of(1, 2, 3, 2, 0, 20_000, 40_000, 65_535, 1, 1);
        int[] plain = samples(tiff.bytes());
        for (int lie : new int[] {Integer.MAX_VALUE, -1, 0x7FFF_FFF0}) {
            byte[] profile = TestProfiles.rgb(TestProfiles.gamma(2.2)).clone();
            ByteBuffer.wrap(profile).putInt(place, lie);
            int[] found = samples(tiff.profile(profile).bytes());
            Art art = Art.open(folder.resolve("art"));
            if (!art.remarks().isEmpty()) {
                assertArrayEquals(plain, found);
            }
            assertEquals(2, found.length);
        }
    }

    @Test
    void aTableProfileWithMoreNodesThanBytesIsPassedOver() throws Exception {
        TestTiff tiff = TestTiff.of(1, 2, 3, 2, 0, 20_000, 40_000, 65_535, 1, 1);
        int[] plain = samples(tiff.bytes());
        byte[] profile = TestProfiles.table("RGB ", 3, 5).clone();
        int table = new String(profile, StandardCharsets.ISO_8859_1).indexOf("mft2");
        // Input channels, output channels and grid points of lut16Type, bytes 8 to 10 (ICC.1:2022, 10.10).
        profile[table + 8] = 15;
        profile[table + 10] = (byte) 255;
        assertArrayEquals(plain, samples(tiff.profile(profile).bytes()));
        assertEquals(1, Art.open(folder.resolve("art")).remarks().size());
    }
}
