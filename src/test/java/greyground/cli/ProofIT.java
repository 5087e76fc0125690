package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProofIT {
    private static final String ART = "testimages/still-life.png";

    /** Small and coarse, so that every picture is quick. */
    private static final List<String> JOB =
            List.of("--plate", "32x30mm", "--resolution", "720", "--grain", "240um", "--date", "2026-01-02");

    @TempDir
    static Path folder;

    private static Path film;

    @BeforeAll
    static void makeFilm() {
        film = folder.resolve("still.pdf");
        positive(film);
    }

    private static void positive(Path to, String... more) {
        Attempt.done(words("positive", ART, JOB, "--out", to, List.of(more)));
    }

    private static Object[] words(Object... parts) {
        return java.util.Arrays.stream(parts)
                .flatMap(part -> part instanceof List<?> list ? list.stream() : java.util.stream.Stream.of(part))
                .toArray();
    }

    @Test
    void artAndItsFilmGiveTheSamePictures() throws Exception {
        Path fromArt = folder.resolve("art.png");
        Path fromFilm = folder.resolve("film.png");
        Path copper = folder.resolve("copper.png");
        Attempt.done(words("proof", ART, JOB, "--out", fromArt, "--at", "200dpi"));
        Attempt.done(words("proof", film, "--out", fromFilm, "--at", "200dpi", "--copper", copper));
        assertArrayEquals(Files.readAllBytes(fromArt), Files.readAllBytes(fromFilm));
        assertTrue(ImageIO.read(copper.toFile()).getWidth() > 100);
        assertEquals(List.of(), Attempt.unfinished(folder));
    }

    /**
     * Over one more transfer the film is the mirror, pixel for pixel, and the plate reads like the print. What hangs on the wall is
     * the same, and so are the places that will not hold.
     */
    @Test
    void aMirroredFilmPrintsTheRightWayRound() throws Exception {
        Path deep = folder.resolve("deep.json");
        Files.writeString(
                deep,
                "{\"greyground\": \"workshop\", \"version\": 1, \"name\": \"deep bench\", \"bath\": {\"etchFactor\":"
                        + " {\"value\": 0.7, \"known\": \"assumed\", \"basis\": \"a test\"}}}");
        Path mirrored = folder.resolve("offset.pdf");
        Path straight = folder.resolve("straight.pdf");
        // Without a reserve, so that the other workshop's bath bites wide fields open.
        positive(straight, "--reserve", "0");
        positive(mirrored, "--reserve", "0", "--transfers", "2");
        JsonNode[] reports = new JsonNode[2];
        byte[][] prints = new byte[2][];
        byte[][] coppers = new byte[2][];
        for (int i = 0; i < 2; i++) {
            Path print = folder.resolve("hung" + i + ".png");
            Path copper = folder.resolve("face" + i + ".png");
            Attempt shown = Attempt.done(words(
                    "proof",
                    i == 0 ? straight : mirrored,
                    "--workshop",
                    deep,
                    "--out",
                    print,
                    "--copper",
                    copper,
                    "--at",
                    "100dpi",
                    "--json"));
            reports[i] = JsonMapper.builder().build().readTree(shown.out());
            prints[i] = Files.readAllBytes(print);
            coppers[i] = Files.readAllBytes(copper);
        }
        assertArrayEquals(prints[0], prints[1]);
        assertFalse(java.util.Arrays.equals(coppers[0], coppers[1]));
        JsonNode warnings = reports[0].path("warnings");
        assertTrue(warnings.size() > 5, warnings.size() + " warnings");
        JsonNode first = warnings.get(0);
        assertTrue(first.path("xMillimetres").asDouble() > 0
                && first.path("xMillimetres").asDouble() < 32);
        // The widest few; a site as wide in many places may be told at any of them.
        for (int i = 0; i < 5; i++) {
            JsonNode one = warnings.get(i);
            JsonNode other = reports[1].path("warnings").get(i);
            assertEquals(one.path("kind"), other.path("kind"));
            assertEquals(
                    one.path("xMillimetres").asDouble(),
                    other.path("xMillimetres").asDouble(),
                    0.1,
                    one + " " + other);
            assertEquals(one.path("yMillimetres"), other.path("yMillimetres"));
        }
    }

    @Test
    void theReportAsJsonHasResponseTurningPointRangeAndWarnings() throws Exception {
        JsonNode tree = JsonMapper.builder()
                .build()
                .readTree(Attempt.done(words("proof", film, "--json")).out());
        assertTrue(tree.path("response").size() >= 33);
        double turn = tree.path("turningPoint").asDouble();
        assertTrue(turn > 0 && turn <= 1, "turning point " + turn);
        JsonNode range = tree.path("printableRange");
        assertTrue(range.path("bare").asDouble() > range.path("darkest").asDouble());
        assertTrue(tree.path("warnings").isArray());
        assertEquals(
                "assumed",
                tree.path("conditions").path("bath.etchFactor").path("known").asText());
        assertFalse(tree.path("computed").asText().isEmpty());
    }

    @Test
    void loupeBitesAndDiagramAreWrittenBesideThePrint() throws Exception {
        Path print = folder.resolve("p.png");
        Path diagram = folder.resolve("tones.svg");
        Attempt done = Attempt.done(words(
                "proof",
                film,
                "--out",
                print,
                "--at",
                "72dpi",
                "--loupe",
                "12mm,9mm",
                "--loupe-width",
                "1mm",
                "--bite",
                "10,20min",
                "--diagram",
                diagram));
        assertTrue(done.out().contains("p-loupe.png") && done.out().contains("p-bites.png"), done.out());
        BufferedImage loupe = ImageIO.read(folder.resolve("p-loupe.png").toFile());
        BufferedImage bites = ImageIO.read(folder.resolve("p-bites.png").toFile());
        assertTrue(loupe.getWidth() > 1600 && bites.getHeight() > 500);
        assertTrue(Files.readString(diagram).startsWith("<?xml"));
        assertTrue(done.out().contains("turns"), done.out());
    }

    @Test
    void photogravureAndSprayedAquatintAreShownToo() throws Exception {
        for (String process : List.of("photogravure", "sprayed-aquatint", "unetched-film")) {
            List<Object> job = new java.util.ArrayList<>(
                    List.of("--plate", "30x30mm", "--resolution", "720", "--reserve", "0", "--process", process));
            job.addAll(
                    process.equals("photogravure")
                            ? List.of("--screen-spacing", "300um")
                            : List.of("--grain", "360um"));
            if (process.equals("sprayed-aquatint")) {
                job.addAll(List.of("--aquatint-grain", "90um"));
            }
            Path made = folder.resolve(process + ".pdf");
            Attempt.done(words("positive", ART, job, "--date", "2026-01-02", "--out", made));
            Path fromFilm = folder.resolve(process + "-film.png");
            Path fromArt = folder.resolve(process + "-art.png");
            Attempt.done(words("proof", made, "--out", fromFilm));
            Attempt.done(words("proof", ART, job, "--date", "2026-01-02", "--out", fromArt));
            assertArrayEquals(Files.readAllBytes(fromArt), Files.readAllBytes(fromFilm), process);
        }
        Attempt unbitten = Attempt.of(words(
                "proof",
                folder.resolve("unetched-film.pdf"),
                "--bite",
                "10min",
                "--bite-out",
                folder.resolve("b.png")));
        assertEquals(2, unbitten.status());
        assertTrue(unbitten.err().contains("not bitten"), unbitten.err());
    }

    @Test
    void badPlacesTimesAndNamesAreRefusedInOneLineAndNothingIsWritten() throws Exception {
        Path print = folder.resolve("never.png");
        refused("stay on the plate", "--out", print, "--loupe", "60mm,5mm");
        refused("pair", "--out", print, "--loupe", "60mm");
        refused("between 0.2 and 20", "--out", print, "--loupe", "6mm,5mm", "--loupe-width", "50mm");
        refused("a duration", "--out", print, "--bite", "soon");
        refused("has no unit", "--out", print, "--bite", "5,10");
        refused("between 0.1 and 1000", "--out", print, "--bite", "5,9000min");
        refused("dpi", "--out", print, "--at", "5000dpi");
        refused(".png", "--out", folder.resolve("never.jpg"));
        refused(".svg", "--diagram", folder.resolve("never.txt"));
        refused("nowhere to go", "--loupe", "5mm,5mm");
        refused("would replace", "--out", print, "--copper", print);
        refused("already prepared", "--out", print, "--plate", "40x30mm");
        assertFalse(Files.exists(print));
        assertEquals(List.of(), Attempt.unfinished(folder));
    }

    private static void refused(String because, Object... options) {
        Attempt attempt = Attempt.of(words("proof", film, List.of(options)));
        assertEquals(2, attempt.status(), attempt.err());
        assertEquals(1, attempt.err().strip().lines().count(), attempt.err());
        assertTrue(attempt.err().contains(because), attempt.err());
    }
}
