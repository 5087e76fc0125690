package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Dust from proposal to film: listed, chosen, healed, kept with the film, left out again. */
class SpotsIT {
    private static final Path LAKE = Path.of("testimages/wash-lake.png");

    @TempDir
    Path folder;

    private String made(String film, Object... more) {
        Object[] words = Stream.concat(Stream.of("positive", LAKE, "--out", folder.resolve(film)), Arrays.stream(more))
                .toArray();
        return Attempt.done(words).out();
    }

    private byte[] bytes(String file) throws Exception {
        return Files.readAllBytes(folder.resolve(file));
    }

    private Object[] fresh(Object... more) {
        return Stream.concat(
                        Stream.of("--plate", "60x45mm", "--resolution", "720", "--date", "2026-12-01"),
                        Arrays.stream(more))
                .toArray();
    }

    @Test
    void whatIsChosenIsHealedKeptAndLeftOutAgain() throws Exception {
        Path list = folder.resolve("spots.json");
        Path rings = folder.resolve("rings.png");
        String plain = made("plain.pdf", fresh("--spots-out", list, "--spots-picture", rings));
        assertFalse(plain.contains("healed"), plain);
        assertTrue(ImageIO.read(rings.toFile()).getWidth() >= 700);
        made("none.pdf", fresh("--spots", "none"));
        assertArrayEquals(bytes("plain.pdf"), bytes("none.pdf"));

        String text = Files.readString(list);
        assertTrue(text.contains("\"accepted\": false"), "what is the picture's own is refused at first");
        Files.writeString(list, text.replace("\"accepted\": false", "\"accepted\": true"));
        String healed = made("healed.pdf", fresh("--spots", list));
        assertTrue(healed.contains(" healed, "), healed);
        assertFalse(Arrays.equals(bytes("plain.pdf"), bytes("healed.pdf")));
        Files.delete(list);

        Path film = folder.resolve("healed.pdf");
        made("again.pdf", "--job", film);
        assertArrayEquals(bytes("healed.pdf"), bytes("again.pdf"));
        made("undone.pdf", "--job", film, "--spots", "none");
        assertArrayEquals(bytes("plain.pdf"), bytes("undone.pdf"));
        String proof = Attempt.done("proof", film, "--out", folder.resolve("print.png"))
                .out();
        assertTrue(proof.contains("spots ") && proof.contains(" healed, "), proof);
    }

    @Test
    void turningMovesNoSpot() throws Exception {
        Path list = folder.resolve("spots.json");
        Files.writeString(
                list,
                "{\"greyground\": \"spots\", \"version\": 1, \"spots\": [{\"placePixels\": [[200, 150]], \"widthPixels\": 60}]}");
        String straight = made("straight.pdf", fresh("--spots", list));
        String turned = made("turned.pdf", fresh("--spots", list, "--rotate", "90"));
        assertTrue(straight.contains("1 healed") && turned.contains("1 healed"), straight + turned);
    }

    @Test
    void aFileThatIsNoneIsRefusedInOneLine() throws Exception {
        Path list = folder.resolve("spots.json");
        Files.writeString(
                list,
                "{\"greyground\": \"spots\", \"version\": 1, \"spots\": [{\"placePixels\": [[20, 15]], \"widthPixels\": 600}]}");
        for (Object spots : new Object[] {list, folder.resolve("missing.json"), "fund"}) {
            Attempt attempt = Attempt.of(
                    "positive", LAKE, "--plate", "60x45mm", "--spots", spots, "--out", folder.resolve("f.pdf"));
            assertEquals(1, attempt.err().lines().count(), attempt.err());
            assertTrue(attempt.status() != 0);
        }
    }
}
