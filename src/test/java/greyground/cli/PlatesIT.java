package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.output.ExternalTool;
import greyground.raster.PixelRect;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Films of several plates for one print. */
class PlatesIT {
    private static final List<String> PLATE =
            List.of("--plate=40x30mm", "--resolution=720", "--strip=none", "--date=2026-01-02");

    @TempDir
    static Path folder;

    @BeforeAll
    static void make() throws Exception {
        inks("one", "{\"name\": \"black\"}");
        inks("two", "{\"name\": \"grey\", \"strength\": 0.2}, {\"name\": \"black\"}");
        inks(
                "three",
                "{\"name\": \"yellow\", \"screen\": \"#EFCF3A\"}, {\"name\": \"blue\", \"screen\": \"#2F6FA8\"}, {\"name\": \"black\"}");
        String colours =
                "{\"name\": \"yellow\", \"screen\": \"#EFCF3A\"}, {\"name\": \"red\", \"screen\": \"#C23A52\"},"
                        + " {\"name\": \"blue\", \"screen\": \"#2F6FA8\"}";
        inks("four", colours + ", {\"name\": \"black\"}");
        inks("five", colours + ", {\"name\": \"green\", \"screen\": \"#4F8A5A\"}, {\"name\": \"black\"}");
        inks("alike", "{\"name\": \"black\"}, {\"name\": \"ebony\", \"strength\": 1.001}");
        for (int plate = 1; plate <= 4; plate++) {
            BufferedImage art = new BufferedImage(80, plate == 4 ? 61 : 60, BufferedImage.TYPE_BYTE_GRAY);
            for (int y = 0; y < art.getHeight(); y++) {
                for (int x = 0; x < art.getWidth(); x++) {
                    art.getRaster().setSample(x, y, 0, 60 + (x * plate + y) % 180);
                }
            }
            ImageIO.write(art, "png", folder.resolve(plate + ".png").toFile());
        }
        BufferedImage patches = new BufferedImage(80, 60, BufferedImage.TYPE_INT_RGB);
        int[] seen = {0xFFFFFF, 0xE3C964, 0xB05A5A, 0x6F86A6, 0x808080, 0x303030, 0x8A7A5C, 0x000000};
        for (int i = 0; i < 80 * 60; i++) {
            patches.setRGB(i % 80, i / 80, seen[i % 80 / 20 + (i / 80 < 30 ? 0 : 4)]);
        }
        ImageIO.write(patches, "png", file("patches.png").toFile());
        made("set", "three", "1.png", "2.png", "3.png");
    }

    /** How dark a plate's grey art is in one of the eight patches, 0 to 1. */
    private static double ink(String parts, String plate, int patch) throws Exception {
        BufferedImage art =
                ImageIO.read(file(parts).resolve("patches-" + plate + ".tif").toFile());
        return 1 - art.getRaster().getSample(10 + patch % 4 * 20, patch < 4 ? 15 : 45, 0) / 65_535.0;
    }

    private static void inks(String name, String list) throws Exception {
        Files.writeString(
                folder.resolve(name + ".json"), "{\"greyground\": \"inks\", \"version\": 1, \"inks\": [" + list + "]}");
    }

    private static Path file(String name) {
        return folder.resolve(name);
    }

    private static Attempt asked(String command, String set, List<String> more, String... arts) {
        List<Object> words = new ArrayList<>(List.of(command));
        for (String art : arts) {
            words.add(file(art));
        }
        words.addAll(PLATE);
        words.addAll(more);
        words.add("--out=" + file(set + ".pdf"));
        return Attempt.of(words.toArray());
    }

    private static void made(String set, String inks, String... arts) {
        Attempt attempt = asked("plates", set, List.of("--title=T", "--inks=" + file(inks + ".json")), arts);
        assertEquals("", attempt.err());
        assertEquals(0, attempt.status());
    }

    private static byte[] bits(String set, int plate) throws Exception {
        return FilmBits.of(file(set + ".pdf"), plate).rows();
    }

    @Test
    void aSetOfOneBlackPlateIsThePositivesFilm() throws Exception {
        made("alone", "one", "1.png");
        assertEquals(
                0, asked("positive", "positive", List.of("--title=T"), "1.png").status());
        assertArrayEquals(bits("positive", 0), bits("alone", 0));
    }

    /** By the job and the workshop that the set carries for it, a plate's film is made by itself, bit for bit. */
    @Test
    void eachFilmIsThatOfItsOwnJob() throws Exception {
        for (int plate = 1; plate <= 3; plate++) {
            for (String kept : List.of("job.json", "workshop.json")) {
                Files.writeString(
                        file("own-" + kept),
                        KeptFiles.carried(file("set.pdf"), plate + "-" + kept).orElseThrow());
            }
            Attempt.done(
                    "positive",
                    file(plate + ".png"),
                    "--job=" + file("own-job.json"),
                    "--workshop=" + file("own-workshop.json"),
                    "--out=" + file("own.pdf"));
            assertArrayEquals(bits("own", 0), bits("set", plate - 1), "plate " + plate);
        }
    }

    @Test
    void oneChangedPlateLeavesTheOthersAsTheyWere() throws Exception {
        made("changed", "three", "1.png", "1.png", "3.png");
        assertArrayEquals(bits("set", 0), bits("changed", 0));
        assertFalse(Arrays.equals(bits("set", 1), bits("changed", 1)));
        assertArrayEquals(bits("set", 2), bits("changed", 2));
    }

    @Test
    void aSetIsMadeAgainByWhatItCarries() throws Exception {
        Attempt.done(
                "plates",
                file("1.png"),
                file("2.png"),
                file("3.png"),
                "--inks=" + file("set.pdf"),
                "--job=" + file("set.pdf"),
                "--out=" + file("again.pdf"));
        assertArrayEquals(Files.readAllBytes(file("set.pdf")), Files.readAllBytes(file("again.pdf")));
    }

    /** As poppler sees them: outside the picture every pixel of all films is the same, so that their marks lie on one another. */
    @Test
    void marksOfAllFilmsLieAtTheSamePlaces() throws Exception {
        ExternalTool.run(folder, "pdfimages", "-png", "-l", "3", "set.pdf", "film");
        PixelRect plate = FilmBits.of(file("set.pdf"), 0).film().plate();
        int bleed = (int) Math.ceil(6 / 25.4 * 720);
        BufferedImage first = ImageIO.read(file("film-000.png").toFile());
        for (int other = 1; other < 3; other++) {
            BufferedImage film = ImageIO.read(file("film-00" + other + ".png").toFile());
            assertEquals(first.getWidth(), film.getWidth());
            assertEquals(first.getHeight(), film.getHeight());
            long black = 0;
            long within = 0;
            for (int y = 0; y < film.getHeight(); y++) {
                for (int x = 0; x < film.getWidth(); x++) {
                    boolean picture = x >= plate.left() - bleed
                            && x < plate.right() + bleed
                            && y >= plate.top() - bleed
                            && y < plate.bottom() + bleed;
                    boolean same = first.getRGB(x, y) == film.getRGB(x, y);
                    assertTrue(picture || same, x + ", " + y);
                    black += !picture && (film.getRGB(x, y) & 0xFF) == 0 ? 1 : 0;
                    within += picture && !same ? 1 : 0;
                }
            }
            assertTrue(black > 5000, "marks there are");
            assertTrue(within > 5000, "pictures differ");
        }
        String words = ExternalTool.run(folder, "pdftotext", "-l", "3", "set.pdf", "-");
        assertTrue(words.contains("T: plate 1 of 3, yellow, printed first"), words);
        assertTrue(words.contains("T: plate 2 of 3, blue, printed second"), words);
        assertTrue(words.contains("T: plate 3 of 3, black, printed last"), words);
    }

    /** Grains of two plates don't know of each other: where each is black on its share, both are on the product. */
    @Test
    void grainsAreIndependent() throws Exception {
        BufferedImage grey = new BufferedImage(8, 6, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < 48; i++) {
            grey.getRaster().setSample(i % 8, i / 8, 0, i % 8 < 7 ? 110 : i < 24 ? 255 : 0);
        }
        ImageIO.write(grey, "png", file("grey.png").toFile());
        made("flat", "three", "grey.png", "grey.png", "grey.png");
        for (int[] pair : new int[][] {{0, 1}, {0, 2}, {1, 2}}) {
            FilmBits one = FilmBits.of(file("flat.pdf"), pair[0]);
            FilmBits other = FilmBits.of(file("flat.pdf"), pair[1]);
            PixelRect plate = one.film().plate();
            long[] counts = new long[4];
            for (int y = plate.top(); y < plate.bottom(); y++) {
                for (int x = plate.left(); x < plate.left() + plate.width() * 3 / 4; x++) {
                    counts[(one.black(x, y) ? 1 : 0) + (other.black(x, y) ? 2 : 0)]++;
                }
            }
            double all = counts[0] + counts[1] + counts[2] + counts[3];
            double share = (counts[1] + counts[3]) / all;
            double otherShare = (counts[2] + counts[3]) / all;
            assertTrue(share > 0.1 && share < 0.9, "a tone: " + share);
            assertEquals(share * otherShare, counts[3] / all, 0.005);
        }
    }

    @Test
    void twoPlatesShareTheTones() throws Exception {
        Attempt attempt = asked(
                "plates",
                "tone",
                List.of("--inks=" + file("two.json"), "--by=tone", "--separations=" + file("parts")),
                "1.png");
        assertEquals("", attempt.err());
        assertTrue(FilmBits.of(file("tone.pdf"), 0).coverage()
                > FilmBits.of(file("tone.pdf"), 1).coverage() + 0.1);
        BufferedImage pale = ImageIO.read(file("parts").resolve("1-1-grey.tif").toFile());
        assertEquals(80, pale.getWidth());
        Attempt again = asked("plates", "tone-again", List.of("--inks=" + file("two.json"), "--by=tone"), "1.png");
        assertEquals("", again.err());
        assertArrayEquals(Files.readAllBytes(file("tone.pdf")), Files.readAllBytes(file("tone-again.pdf")));
        // By hand with what was kept, white to black as it stands, the films are the same.
        Attempt byHand = asked(
                "plates",
                "by-hand",
                List.of("--inks=" + file("two.json"), "--white=100%", "--black=0%"),
                "parts/1-1-grey.tif",
                "parts/1-2-black.tif");
        assertEquals("", byHand.err());
        assertArrayEquals(bits("tone", 0), bits("by-hand", 0));
        assertArrayEquals(bits("tone", 1), bits("by-hand", 1));
    }

    @Test
    void oneColourPictureIsPartedBetweenItsInks() throws Exception {
        for (String key : List.of("0", "100")) {
            Attempt attempt = asked(
                    "plates",
                    "colour" + key,
                    List.of(
                            "--inks=" + file("four.json"),
                            "--by=colour",
                            "--key=" + key + "%",
                            "--separations=" + file("by-colour" + key)),
                    "patches.png");
            assertEquals("", attempt.err());
            assertTrue(attempt.out().contains("of the picture is moved by more than 1"), attempt.out());
        }
        for (String plate : List.of("1-yellow", "2-red", "3-blue", "4-black")) {
            assertEquals(0, ink("by-colour0", plate, 0), 0.01, "white paper on plate " + plate);
        }
        assertTrue(ink("by-colour0", "1-yellow", 1) > 1.5 * ink("by-colour0", "3-blue", 1), "yellow");
        assertTrue(ink("by-colour0", "2-red", 2) > 3 * ink("by-colour0", "3-blue", 2), "red");
        assertTrue(ink("by-colour0", "3-blue", 3) > 3 * ink("by-colour0", "1-yellow", 3), "blue");
        // A grey is made of three inks or of the key, and looks the same.
        assertTrue(ink("by-colour100", "4-black", 5) > ink("by-colour0", "4-black", 5) + 0.2, "key");
        assertTrue(ink("by-colour100", "3-blue", 5) < ink("by-colour0", "3-blue", 5) - 0.1, "less of the others");
        Attempt byHand = asked(
                "plates",
                "colours-by-hand",
                List.of("--inks=" + file("four.json"), "--white=100%", "--black=0%"),
                "by-colour0/patches-1-yellow.tif",
                "by-colour0/patches-2-red.tif",
                "by-colour0/patches-3-blue.tif",
                "by-colour0/patches-4-black.tif");
        assertEquals("", byHand.err());
        for (int plate = 0; plate < 4; plate++) {
            assertArrayEquals(bits("colour0", plate), bits("colours-by-hand", plate), "plate " + plate);
        }
    }

    @Test
    void whoTakesOnePlatesFilmSaysSoOfASet() {
        for (Attempt attempt : List.of(
                Attempt.of("plan", file("set.pdf")),
                Attempt.of(
                        "gather",
                        file("set.pdf"),
                        file("set.pdf"),
                        "--sheet=420x297mm",
                        "--out=" + file("sheet.pdf")))) {
            assertTrue(
                    attempt.err().contains("set.pdf is a set of 3 plates, and this takes the film of one"),
                    attempt.err());
            assertEquals(1, attempt.err().strip().lines().count());
        }
    }

    @Test
    void aColourSetOfOneBlackPlateIsThePositivesFilm() throws Exception {
        Attempt set = asked(
                "plates", "black", List.of("--title=T", "--inks=" + file("one.json"), "--by=colour"), "patches.png");
        assertEquals("", set.err());
        assertEquals(
                0,
                asked("positive", "grey-film", List.of("--title=T"), "patches.png")
                        .status());
        assertArrayEquals(bits("grey-film", 0), bits("black", 0));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "four|1.png|--by=colour|1.png has no colours to be parted between inks: use --by tone",
                "five|patches.png|--by=colour|parts a picture between two to four inks, and the inks file names 5",
                "four|patches.png 1.png|--by=colour|2 pictures are given, and --by colour parts one",
                "four|patches.png|--by=colour --through=red|leave out --through and --emulsion",
                "four|patches.png|--by=colour --source=line|--source line makes strokes of ink and paper",
                "three|patches.png|--by=colour --key=50%|--key shares grey between four inks",
                "four|patches.png|--by=colour --key=120%|--key is 120 %; it must lie between 0 and 100 %",
                "three|1.png 2.png||2 pictures are given for 3 inks, yellow and blue and black: give one for each plate",
                "three|1.png 2.png 4.png||the picture of plate 3 measures 80 x 61 pixels and that of plate 1 80 x 60",
                "three|1.png||1.png holds no picture for plate 2, blue",
                "alike|1.png 2.png||inks black and ebony can't be told apart",
                "two|1.png 2.png|--by=tone|2 pictures are given, and --by tone parts one",
                "three|1.png|--by=tone|names 3 inks: name a pale and a dark one",
                "two|1.png|--by=chance|--by \"chance\" is unknown: choose hand",
                "two|1.png 2.png|--ruling=40|use --grain, of which each plate gets its own",
                "two|1.png 2.png|--process=photogravure|use --grain",
                "two|1.png 2.png|--separations=x|leave it out",
                "two|1.png 2.png|--tile --sheet=60x80mm|leave out --tile"
            })
    void wrongUseIsToldInOneLine(String inks, String arts, String more, String said) {
        List<String> options = new ArrayList<>(List.of("--inks=" + file(inks + ".json")));
        if (more != null) {
            options.addAll(List.of(more.split(" ")));
        }
        Attempt attempt = asked("plates", "wrong", options, arts.split(" "));
        assertTrue(attempt.err().contains(said), attempt.err());
        assertEquals(1, attempt.err().strip().lines().count());
        assertTrue(attempt.status() > 0);
        assertFalse(Files.exists(file("wrong.pdf")));
    }
}
