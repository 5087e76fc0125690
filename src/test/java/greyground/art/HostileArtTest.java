package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever a file holds, it decodes or is refused in one line, within bounded time and memory, and leaves no file behind. */
class HostileArtTest {
    private static final int MUTANTS = 300;

    @TempDir
    Path folder;

    private Refusal refused(String name, byte[] bytes) throws Exception {
        Path file = folder.resolve(name);
        Files.write(file, bytes);
        Refusal refusal = assertTimeoutPreemptively(
                Duration.ofSeconds(30),
                () -> assertThrows(Refusal.class, () -> Picture.decode(file).close()));
        checkWords(refusal);
        return refusal;
    }

    private static void checkWords(Refusal refusal) {
        String said = refusal.getMessage();
        assertFalse(said.contains("\n"), said);
        assertTrue(said.contains(": "), said);
        assertFalse(said.contains("Exception"), said);
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource({
        "convert c8.ppm -compress None x.tif, x.tif",
        "convert c16.ppm -compress LZW x2.tif, x2.tif",
        "convert c16.ppm -compress Zip x3.tif, x3.tif",
        "convert c8.ppm -compress RLE x4.tif, x4.tif",
        "tiffcp -c jpeg:90 -r 16 c8.tif x5.tif, x5.tif",
        "tiffcp -c g4 -r 16 bits.tif x6.tif, x6.tif",
        "tiffcp -c lzw -t -w 16 -l 16 c8.tif x7.tif, x7.tif",
        "convert c16.ppm x.png, x.png",
        "convert c8.ppm -interlace PNG x2.png, x2.png",
        "convert c8.ppm x.jpg, x.jpg",
        "convert c8.ppm -interlace JPEG x2.jpg, x2.jpg",
        "convert c8.ppm -colorspace CMYK x3.jpg, x3.jpg",
        "convert c8.ppm -define webp:lossless=true x.webp, x.webp",
        "convert c8.ppm x2.webp, x2.webp",
        "convert c8.ppm x.psd, x.psd",
        "convert c8.ppm x.bmp, x.bmp",
        "convert c8.ppm -compress None x.ppm, x.ppm",
        "tiffcp -c lzma:2 -r 9 c8.tif x8.tif, x8.tif",
        "tiffcp -c zstd:2 -r 9 c8.tif z8.tif, z8.tif",
        "convert c16.ppm x.pam, x.pam",
        "convert c16.ppm x.pfm, x.pfm",
    })
    void mutantsDecodeOrAreRefused(String command, String name) throws Exception {
        Picture.chart(40, 33, 3).write(folder.resolve("c8.ppm"), 8);
        Picture.chart(40, 33, 3).write(folder.resolve("c16.ppm"), 16);
        OutsideTools.run(folder, "convert c8.ppm -compress None c8.tif");
        Picture.chart(40, 33, 1).write(folder.resolve("g8.pgm"), 8);
        OutsideTools.run(folder, "convert g8.pgm -threshold 50% bits.pbm");
        OutsideTools.run(folder, "convert bits.pbm -compress None bits.tif");
        OutsideTools.run(folder, command);
        byte[] sound = Files.readAllBytes(folder.resolve(name));
        Random random = new Random(name.hashCode());
        Path file = folder.resolve("mutant");
        int decoded = 0;
        List<Integer> tried = Sweep.rounds(MUTANTS);
        for (int i = 0; i < MUTANTS; i++) {
            byte[] mutant = sound.clone();
            if (i % 4 == 0) {
                mutant = Arrays.copyOf(mutant, random.nextInt(mutant.length));
            } else {
                int reach = i % 4 == 1 ? Math.min(64, mutant.length) : mutant.length;
                for (int k = 0; k <= i % 5; k++) {
                    int at = i % 4 == 2
                            ? mutant.length - 1 - random.nextInt(Math.min(300, mutant.length))
                            : random.nextInt(reach);
                    mutant[at] = (byte) random.nextInt();
                }
            }
            if (!tried.contains(i)) {
                continue;
            }
            Files.write(file, mutant);
            int seed = i;
            decoded += assertTimeoutPreemptively(
                    Duration.ofSeconds(40), () -> outcome(file), () -> name + " mutant " + seed);
        }
        assertTrue(decoded < tried.size(), "some mutants must be refused, or the test says nothing");
        for (String left : folder.toFile().list()) {
            assertFalse(left.endsWith(".spill"), left);
        }
    }

    private int outcome(Path file) {
        try (GreyPlane plane = Art.open(file).decode(Progress.NONE, 64L << 20, folder)) {
            return plane.width() > 0 ? 1 : 0;
        } catch (Refusal refusal) {
            checkWords(refusal);
            return 0;
        }
    }

    @Test
    void hugeDimensionsInASmallFileAreRefusedBeforeMemoryIsTaken() throws Exception {
        byte[] tiff = TestTiff.of(200_000, 200_000, 3, 2, new int[300]).bytes();
        assertTrue(refused("a.tif", tiff).getMessage().contains("cut short"));
        byte[] lzw =
                TestTiff.of(30_000, 30_000, 3, 2, new int[300]).with(259, 5).bytes();
        assertTrue(refused("b.tif", lzw).getMessage().contains("30000 x 30000"));
        assertTrue(refused("c.ppm", "P6 100000 9000 255 xyz".getBytes(StandardCharsets.US_ASCII))
                .getMessage()
                .contains("bytes"));
        refused("d.ppm", "P6 99999999999 9 255 xyz".getBytes(StandardCharsets.US_ASCII));
        refused("e.pgm", "P2 5 5 0 0 0 0".getBytes(StandardCharsets.US_ASCII));
        byte[] png = ByteBuffer.allocate(60)
                .put("\u0089PNG\r\n\u001a\n".getBytes(StandardCharsets.ISO_8859_1))
                .putInt(13)
                .put("IHDR".getBytes(StandardCharsets.US_ASCII))
                .putInt(Integer.MAX_VALUE)
                .putInt(Integer.MAX_VALUE)
                .put(new byte[] {8, 2, 0, 0, 0})
                .array();
        refused("f.png", png);
        byte[] bmp = ByteBuffer.allocate(200)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put("BM".getBytes(StandardCharsets.US_ASCII))
                .putInt(200)
                .putInt(0)
                .putInt(54)
                .putInt(40)
                .putInt(299_000)
                .putInt(-299_000)
                .putShort((short) 1)
                .putShort((short) 24)
                .array();
        refused("g.bmp", bmp);
        byte[] psd = ByteBuffer.allocate(64)
                .put("8BPS\0\1".getBytes(StandardCharsets.ISO_8859_1))
                .put(new byte[6])
                .putShort((short) 3)
                .putInt(30_000)
                .putInt(30_000)
                .putShort((short) 16)
                .putShort((short) 3)
                .array();
        refused("h.psd", psd);
    }

    @Test
    void zeroSizesAreRefused() throws Exception {
        refused("empty.tif", new byte[0]);
        refused("none.tif", TestTiff.of(1, 1, 1, 1, 0).with(256, 0).bytes());
        refused("none.ppm", "P6 0 9 255 xyz".getBytes(StandardCharsets.US_ASCII));
    }

    @Test
    void unreadableCompressionsAreNamed() throws Exception {
        for (String[] known : new String[][] {{"34661", "JBIG"}, {"34712", "JPEG 2000"}}) {
            byte[] tiff = TestTiff.of(1, 1, 1, 1, 0)
                    .with(259, Integer.parseInt(known[0]))
                    .bytes();
            String said = refused("c.tif", tiff).getMessage();
            assertTrue(said.contains(known[1]) && said.contains("LZW"), said);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"%PDF-1.7", "PK\3\4zip", "%!PS-Adobe", "<svg></svg>", "hello", "\0\0\0\30ftypheic"})
    void otherKindsAreNamedAndRefused(String start) throws Exception {
        String said =
                refused("other", start.getBytes(StandardCharsets.ISO_8859_1)).getMessage();
        assertTrue(said.contains("export the picture"), said);
    }

    @Test
    void foldersAndMissingFilesAreRefused() {
        checkWords(assertThrows(Refusal.class, () -> Art.open(folder)));
        checkWords(assertThrows(Refusal.class, () -> Art.open(folder.resolve("nothing.tif"))));
    }

    @Test
    void aPageThatIsNotThereIsRefusedWithTheRange() throws Exception {
        Picture.chart(20, 20, 3).write(folder.resolve("a.ppm"), 8);
        OutsideTools.run(folder, "convert a.ppm ( a.ppm -negate ) ( a.ppm -resize 10x10! ) three.tif");
        Path file = folder.resolve("three.tif");
        assertEquals(3, Art.open(file).pages());
        assertEquals(10, Art.open(file, 3).width());
        assertEquals(2, Art.open(file, 2).page());
        String said = assertThrows(Refusal.class, () -> Art.open(file, 4)).getMessage();
        assertTrue(said.contains("between 1 and 3"), said);
    }

    @Test
    void whatDoesNotFitIsRefusedWithTheNumbers() throws Exception {
        Picture.chart(1500, 1500, 3).write(folder.resolve("a.ppm"), 8);
        OutsideTools.run(folder, "convert a.ppm -interlace PNG whole.png");
        Art art = Art.open(folder.resolve("whole.png"));
        assertFalse(art.readInBands());
        String said = assertThrows(Refusal.class, () -> art.decode(Progress.NONE, 2 << 20, folder))
                .getMessage();
        assertTrue(said.contains("MiB") && said.contains("1500 x 1500") && said.contains("-Xmx"), said);
    }

    @Test
    void cancellingTravelsUnharmed() throws Exception {
        Picture.chart(300, 3000, 3).write(folder.resolve("a.ppm"), 8);
        OutsideTools.run(folder, "convert a.ppm a.jpg");
        for (String name : new String[] {"a.ppm", "a.jpg"}) {
            Art art = Art.open(folder.resolve(name));
            assertThrows(
                    CancellationException.class,
                    () -> art.decode(
                            fraction -> {
                                throw new CancellationException("enough");
                            },
                            1 << 30,
                            folder));
        }
    }

    @Test
    void theFingerprintIsTheFilesSha256() throws Exception {
        // FIPS 180-4's example: SHA-256 of "abc".
        Path file = folder.resolve("abc.pgm");
        Files.write(file, "P5 1 1 255\nx".getBytes(StandardCharsets.US_ASCII));
        Art art = Art.open(file);
        Files.write(file, "abc".getBytes(StandardCharsets.US_ASCII));
        assertEquals(
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
                art.fingerprint().join());
    }
}
