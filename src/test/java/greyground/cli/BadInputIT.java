package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What cannot be done is refused in one line, soon, and leaves the earlier film alone. */
class BadInputIT {
    private static final Path SCENE = Path.of("testimages/still-life.png");
    private static final String EARLIER = "an earlier film";

    @TempDir
    Path folder;

    private Path film;

    @BeforeEach
    void anEarlierFilmStandsThere() throws Exception {
        film = Files.writeString(folder.resolve("film.pdf"), EARLIER);
    }

    private Attempt refused(Object... words) throws Exception {
        String line = Arrays.toString(words);
        Attempt attempt = assertTimeoutPreemptively(Duration.ofSeconds(30), () -> Attempt.of(words), line);
        assertTrue(attempt.status() == 1 || attempt.status() == 2, line + ": status " + attempt.status());
        assertTrue(attempt.err().startsWith("greyground: "), line + ": " + attempt.err());
        assertTrue(attempt.err().endsWith("\n"), line + ": " + attempt.err());
        assertEquals(1, attempt.err().strip().lines().count(), line + ": " + attempt.err());
        for (String ours : List.of("Exception", "Error:", "at java", "unforeseen", ": null")) {
            assertFalse(attempt.err().contains(ours), line + ": " + attempt.err());
        }
        assertTrue(attempt.err().length() < 900, line + ": " + attempt.err());
        assertEquals("", attempt.out(), line);
        assertEquals(EARLIER, Files.readString(film), line);
        assertEquals(List.of(), Attempt.unfinished(folder), line);
        return attempt;
    }

    private void refusedArt(Path art) throws Exception {
        Attempt attempt = refused("positive", art, "--plate", "40x40mm", "--resolution", "720", "--out", film);
        assertEquals(1, attempt.status(), attempt.err());
        assertTrue(attempt.err().contains(art.getFileName().toString().replace('\n', ' ')), attempt.err());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--plate 0x40mm",
                "--plate -40x40mm",
                "--plate 40",
                "--plate 40x40",
                "--plate 40x40yards",
                "--plate NaNx40mm",
                "--plate 1e99x40mm",
                "--plate 40x40mm --resolution 0",
                "--plate 40x40mm --resolution -720",
                "--plate 40x40mm --resolution 1e12",
                "--plate 40x40mm --resolution fine",
                "--plate 40x40mm --grain 0um",
                "--plate 40x40mm --grain 1km",
                "--plate 40x40mm --grain 180um --ruling 60",
                "--plate 40x40mm --ruling 0",
                "--plate 40x40mm --ruling 100000",
                "--plate 40x40mm --ruling 60 --angle steep",
                "--plate 40x40mm --angle 45",
                "--plate 40x40mm --ruling 60 --dots square",
                "--plate 40x40mm --process lithograph",
                "--plate 40x40mm --process photogravure --grain 180um",
                "--plate 40x40mm --crop 10%",
                "--plate 40x40mm --crop 90%,0%,20%,100%",
                "--plate 40x40mm --crop 0,0,0,0",
                "--plate 40x40mm --crop 0,0,999999999,10",
                "--plate 40x40mm --rotate left",
                "--plate 40x40mm --rotate 1e300",
                "--plate 40x40mm --fit stretch",
                "--plate 40x40mm --bleed 99mm",
                "--plate 40x40mm --bevel -1mm",
                "--plate 40x40mm --page 0",
                "--plate 40x40mm --page 9",
                "--plate 40x40mm --page two",
                "--plate 40x40mm --white 101%",
                "--plate 40x40mm --white 10% --black 20%",
                "--plate 40x40mm --white 10% --black 10%",
                "--plate 40x40mm --paper-shrink 90%,1%",
                "--plate 40x40mm --paper-shrink 1%,2%,3%",
                "--plate 40x40mm --ink-side left",
                "--plate 40x40mm --transfers 0",
                "--plate 40x40mm --sheet 20x20mm",
                "--plate 40x40mm --sheet 20x20mm --tile",
                "--plate 40x40mm --range loud",
                "--plate 40x40mm --seed one",
                "--plate 40x40mm --date 31.3.2026",
                "--plate 40x40mm --date 2026-02-31",
                "--plate 40x40mm --unknown",
                "--plate 40x40mm extra.png",
                "--plate 40x40mm --title",
                "--seed 2",
            })
    void aWrongCommandLine(String options) throws Exception {
        List<Object> words = new ArrayList<>(List.of("positive", SCENE, "--out", film));
        words.addAll(Arrays.asList((Object[]) options.split(" ")));
        refused(words.toArray());
    }

    @Test
    void aWrongStart() throws Exception {
        refused("etch", SCENE);
        refused("positive");
        refused("positive", SCENE, "--plate", "40x40mm");
        refused("plan");
        refused("plan", folder.resolve("none.pdf"));
        refused("plan", SCENE);
        refused("plan", film);
        refused("plan", folder);
    }

    @Test
    void artThatIsNotThere() throws Exception {
        refusedArt(folder.resolve("none.png"));
        refusedArt(folder);
        refusedArt(Files.createFile(folder.resolve("empty.png")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"still-life.png", "sketchbook.tif", "still-life.jpg"})
    void artThatEndsEarly(String name) throws Exception {
        byte[] whole;
        if (name.endsWith(".jpg")) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageIO.write(ImageIO.read(SCENE.toFile()), "jpg", out);
            whole = out.toByteArray();
        } else {
            whole = Files.readAllBytes(Path.of("testimages").resolve(name));
        }
        for (int share : new int[] {1, 50}) {
            int length = Math.max(20, (int) ((long) whole.length * share / 100));
            refusedArt(Files.write(folder.resolve("cut-" + share + name), Arrays.copyOf(whole, length)));
        }
    }

    @Test
    void whatIsNoPicture() throws Exception {
        refusedArt(Files.writeString(folder.resolve("letter.png"), "Dear printer,\nplease find enclosed\n".repeat(50)));
        refusedArt(Files.writeString(folder.resolve("drawing.pdf"), "%PDF-1.7\n%%EOF\n"));
        refusedArt(Files.write(folder.resolve("zeros.tif"), new byte[5000]));
        refusedArt(Files.writeString(folder.resolve("line\nbreak.png"), "no picture"));
    }

    /** Files of a few hundred bytes that say they hold a picture of thousands of millions of pixels. */
    @Test
    void artThatLiesOfItsSize() throws Exception {
        refusedArt(png("liar.png", Integer.MAX_VALUE, Integer.MAX_VALUE, new byte[100]));
        refusedArt(png("wide.png", 100_000, 60_000, new byte[100]));
        refusedArt(png("nothing.png", 0, 10, new byte[100]));
        refusedArt(Files.writeString(folder.resolve("liar.pgm"), "P5 2000000000 2000000000 255\n..."));
        ByteBuffer bmp = ByteBuffer.allocate(100).order(ByteOrder.LITTLE_ENDIAN);
        bmp.put((byte) 'B').put((byte) 'M').putInt(100).putInt(0).putInt(54).putInt(40);
        bmp.putInt(2_000_000_000).putInt(2_000_000_000).putShort((short) 1).putShort((short) 24);
        refusedArt(Files.write(folder.resolve("liar.bmp"), bmp.array()));
    }

    /** 64 MiB of rows, in 65 kB, behind the head of a picture of 16 x 16 pixels. */
    @Test
    void artThatSwells() throws Exception {
        Path many = png("many.png", 16, 16, new byte[64 << 20]);
        Attempt attempt = assertTimeoutPreemptively(
                Duration.ofSeconds(30),
                () -> Attempt.of(
                        "positive",
                        many,
                        "--plate",
                        "40x40mm",
                        "--resolution",
                        "720",
                        "--white",
                        "100%",
                        "--black",
                        "0%",
                        "--out",
                        folder.resolve("other.pdf")));
        assertTrue(attempt.status() <= 1, attempt.err());
        assertFalse(attempt.err().contains("unforeseen"), attempt.err());
    }

    private Path png(String name, int width, int height, byte[] rows) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10});
        ByteBuffer head = ByteBuffer.allocate(13).putInt(width).putInt(height);
        head.put((byte) 8).put((byte) 0).put((byte) 0).put((byte) 0).put((byte) 0);
        chunk(out, "IHDR", head.array());
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflated = new DeflaterOutputStream(packed)) {
            deflated.write(rows);
        }
        chunk(out, "IDAT", packed.toByteArray());
        chunk(out, "IEND", new byte[0]);
        return Files.write(folder.resolve(name), out.toByteArray());
    }

    private static void chunk(ByteArrayOutputStream out, String name, byte[] data) throws IOException {
        byte[] kind = name.getBytes(StandardCharsets.US_ASCII);
        CRC32 sum = new CRC32();
        sum.update(kind);
        sum.update(data);
        DataOutputStream written = new DataOutputStream(out);
        written.writeInt(data.length);
        written.write(kind);
        written.write(data);
        written.writeInt((int) sum.getValue());
    }

    @Test
    void aDestinationThatCannotBeWritten() throws Exception {
        Object[] start = {"positive", SCENE, "--plate", "40x40mm", "--resolution", "720", "--out"};
        for (Object place : List.of(
                folder.resolve("gone").resolve("film.pdf"),
                Files.createDirectory(folder.resolve("sub")),
                "/proc/film.pdf",
                "/dev/full/film.pdf",
                "",
                folder.resolve("x".repeat(300) + ".pdf"))) {
            List<Object> words = new ArrayList<>(Arrays.asList(start));
            words.add(place);
            refused(words.toArray());
        }
        List<Object> words = new ArrayList<>(Arrays.asList(start));
        words.addAll(List.of(film, "--tiff", folder.resolve("gone").resolve("film.tif")));
        refused(words.toArray());
    }

    /** Art, film, TIFF and job are four different files. */
    @Test
    void oneNameForTwoFiles() throws Exception {
        Path art = Files.copy(SCENE, folder.resolve("art.png"));
        refused("positive", art, "--plate", "40x40mm", "--resolution", "720", "--out", art);
        assertEquals(-1, Files.mismatch(SCENE, art));
        refused("positive", art, "--plate", "40x40mm", "--resolution", "720", "--out", film, "--tiff", film);
        refused("positive", art, "--plate", "40x40mm", "--resolution", "720", "--out", film, "--tiff", art);
        Path kept = folder.resolve("new.pdf");
        refused("positive", art, "--plate", "40x40mm", "--resolution", "720", "--out", kept, "--job", kept);
        assertFalse(Files.exists(kept));
        assertEquals(-1, Files.mismatch(SCENE, art));
    }

    @Test
    void anEarlierFilmGivesTheSameFilmAgain() throws Exception {
        Path again = folder.resolve("again.pdf");
        Attempt.done("positive", SCENE, "--plate", "40x40mm", "--resolution", "720", "--out", film);
        Attempt.done("positive", SCENE, "--job", film, "--out", again);
        assertEquals(-1, Files.mismatch(film, again));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "{",
                "[]",
                "{}",
                "null",
                "{\"greyground\": \"KIND\", \"version\": 99}",
                "{\"greyground\": \"KIND\", \"version\": -1}",
                "{\"greyground\": \"KIND\", \"version\": \"new\"}",
                "{\"greyground\": \"curve\", \"version\": 1}",
                "{\"greyground\": \"KIND\", \"version\": 1, \"plate\": 7, \"resist\": 7, \"light\": []}",
            })
    void aJobOrWorkshopThatCannotBeRead(String text) throws Exception {
        for (String kind : List.of("job", "workshop")) {
            Path file = Files.writeString(folder.resolve("kept.json"), text.replace("KIND", kind));
            refused("positive", SCENE, "--plate", "40x40mm", "--" + kind, file, "--out", film);
        }
    }

    @Test
    void aJobFromANewerVersionIsNamed() throws Exception {
        Path file = Files.writeString(folder.resolve("kept.json"), "{\"greyground\": \"job\", \"version\": 99}");
        assertTrue(
                refused("positive", SCENE, "--job", file, "--out", film).err().contains("99"));
        refused("positive", SCENE, "--job", SCENE, "--out", film);
        refused("positive", SCENE, "--workshop", folder.resolve("none.json"), "--plate", "40x40mm", "--out", film);
    }

    /** The picture that other tests cut short is read when whole. */
    @Test
    void theSameArtWholeIsTaken() throws Exception {
        BufferedImage art = ImageIO.read(SCENE.toFile());
        ImageIO.write(art, "jpg", folder.resolve("whole.jpg").toFile());
        Attempt.done(
                "positive", folder.resolve("whole.jpg"), "--plate", "40x40mm", "--resolution", "720", "--out", film);
    }
}
