package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import greyground.art.OutsideTools;
import java.awt.image.BufferedImage;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Films on a sheet of film, as poppler sees them: every pixel as in the film's own PDF, every word where it belongs. */
class GatherIT {
    private static final double DPI = 720;

    @TempDir
    static Path folder;

    @BeforeAll
    static void films() {
        film("leaf", "leaf-alpha.png", "--plate=40x60mm");
        film("lake", "wash-lake.png", "--plate=130x30mm");
        film("lines", "gravel.png", "--plate=130x30mm", "--ruling=30", "--dots=line");
        film("coarse", "gravel.png", "--plate=40x30mm", "--resolution=600");
        film("continuous", "gravel.png", "--plate=40x30mm", "--process=photogravure");
    }

    private static void film(String name, String art, String... options) {
        List<Object> words = new ArrayList<>(List.of(
                "positive",
                "testimages/" + art,
                "--out",
                pdf(name),
                "--title",
                name,
                "--strip=none",
                "--resolution=720"));
        words.addAll(Arrays.asList(options));
        if (name.equals("coarse")) {
            words.remove("--resolution=720");
        }
        assertEquals(0, Attempt.of(words.toArray()).status(), name);
    }

    private static Path pdf(String name) {
        return folder.resolve(name + ".pdf");
    }

    @Test
    void everyPixelIsAsItIsInTheFilm() throws Exception {
        assertEquals(List.of(false, false), turnsOfExactFilms(297, 420, "--upright"));
    }

    @Test
    void everyPixelIsAsItIsInTheFilmTurned() throws Exception {
        assertTrue(turnsOfExactFilms(150, 420).get(1), "the long film goes on its side only");
    }

    private static List<Boolean> turnsOfExactFilms(int width, int height, String... more) throws Exception {
        OutsideTools.need("pdfimages");
        List<String> words = new ArrayList<>(List.of("--sheet=" + width + "x" + height + "mm", "leaf", "lake"));
        words.addAll(List.of(more));
        JsonNode answer = gathered(words.toArray(String[]::new));
        BufferedImage sheet = picture(pdf("sheet"), 1);
        assertEquals(Math.round(width * DPI / 25.4), sheet.getWidth());
        assertEquals(Math.round(height * DPI / 25.4), sheet.getHeight());
        long black = 0;
        List<Boolean> turns = new ArrayList<>();
        for (JsonNode place : answer.get("films")) {
            BufferedImage film = picture(folder.resolve(place.get("film").asText()), 1);
            boolean turned = place.get("turned").asBoolean();
            turns.add(turned);
            int left = pixels(place.get("leftMillimetres"));
            int top = pixels(place.get("topMillimetres"));
            for (int y = 0; y < film.getHeight(); y++) {
                for (int x = 0; x < film.getWidth(); x++) {
                    int there = turned
                            ? sheet.getRGB(left + film.getHeight() - 1 - y, top + x)
                            : sheet.getRGB(left + x, top + y);
                    if (film.getRGB(x, y) != there) {
                        throw new AssertionError(place + " differs at " + x + ", " + y);
                    }
                    black += (there & 0xFF) == 0 ? 1 : 0;
                }
            }
        }
        long all = 0;
        for (int y = 0; y < sheet.getHeight(); y++) {
            for (int x = 0; x < sheet.getWidth(); x++) {
                all += (sheet.getRGB(x, y) & 0xFF) == 0 ? 1 : 0;
            }
        }
        assertEquals(framesOf(answer), all - black, "besides the films there are lines to cut along and nothing else");
        return turns;
    }

    /** Pixels of frames of 0.15 mm whose outsides lie half the gap of 4 mm from the films. */
    private static long framesOf(JsonNode answer) {
        int line = (int) Math.round(0.15 * DPI / 25.4);
        // The gap is made up to whole bytes of eight pixels.
        int gap = (int) Math.ceil(Math.round(4 * DPI / 25.4) / 8.0) * 8;
        long pixels = 0;
        for (JsonNode place : answer.get("films")) {
            long across = pixels(place.get("widthMillimetres")) + gap;
            long down = pixels(place.get("heightMillimetres")) + gap;
            pixels += across * down - (across - 2L * line) * (down - 2L * line);
        }
        return pixels;
    }

    @Test
    void wordsGoWithTheirFilm() throws Exception {
        OutsideTools.need("pdftotext");
        JsonNode lake =
                gathered("--sheet=150x420mm", "leaf", "lake").get("films").get(1);
        double[] own = word(pdf("lake"), "lake");
        double[] there = word(pdf("sheet"), "lake");
        double height = picture(pdf("lake"), 1).getHeight() / DPI * 25.4;
        // Turned clockwise, what was at x, y lies at height - y, x.
        assertEquals(lake.get("leftMillimetres").asDouble() + height - own[1], there[0], 0.05);
        assertEquals(lake.get("topMillimetres").asDouble() + own[0], there[1], 0.05);
    }

    /** The middle of the first word that reads so on the first page, in millimetres from the top left. */
    private static double[] word(Path pdf, String word) throws Exception {
        String page = OutsideTools.run(folder, "pdftotext -f 1 -l 1 -bbox " + pdf.getFileName() + " -");
        Matcher found = Pattern.compile(
                        "xMin=\"([\\d.]+)\" yMin=\"([\\d.]+)\" xMax=\"([\\d.]+)\" yMax=\"([\\d.]+)\">" + word + "<")
                .matcher(page);
        assertTrue(found.find(), () -> word + " stands in " + page);
        double inch = 25.4 / 72;
        return new double[] {
            (Double.parseDouble(found.group(1)) + Double.parseDouble(found.group(3))) / 2 * inch,
            (Double.parseDouble(found.group(2)) + Double.parseDouble(found.group(4))) / 2 * inch
        };
    }

    @Test
    void plansFollow() throws Exception {
        OutsideTools.need("pdfinfo");
        gathered("--sheet=A3", "leaf", "lake");
        assertEquals(1 + pages(pdf("leaf")) - 1 + pages(pdf("lake")) - 1, pages(pdf("sheet")));
        String carried = OutsideTools.run(folder, "pdfdetach -list sheet.pdf");
        assertTrue(
                carried.contains("1-job.json") && carried.contains("2-plan.json") && carried.contains("sheet.json"),
                carried);
    }

    private static int pages(Path pdf) throws Exception {
        Matcher pages =
                Pattern.compile("Pages:\\s+(\\d+)").matcher(OutsideTools.run(folder, "pdfinfo " + pdf.getFileName()));
        assertTrue(pages.find());
        return Integer.parseInt(pages.group(1));
    }

    @Test
    void whatMayNotTurnStays() {
        Attempt refused = attempt("--sheet=150x420mm", "leaf", "lines");
        assertEquals(CommandLine.FAILED, refused.status());
        assertTrue(refused.err().contains("lines.pdf is a film of "), refused.err());
        assertEquals(
                CommandLine.FAILED,
                attempt("--sheet=150x420mm", "leaf", "lake", "--upright").status());
    }

    @Test
    void manyTakeAsManySheetsAsAreAllowed() throws Exception {
        Attempt refused = attempt("--sheet=A4", "leaf", "lake", "leaf", "lake");
        assertTrue(refused.err().contains("the 4 films take 2 sheets of 210 x 297 mm"), refused.err());
        JsonNode answer = gathered("--sheet=A4", "leaf", "lake", "leaf", "lake", "--most-sheets=2");
        assertEquals(2, answer.get("sheets").asInt());
        assertEquals(4, answer.get("films").size());
        assertEquals(
                "pages 1 and 2 on film, the rest on paper", answer.get("print").asText());
    }

    @Test
    void unlikeFilmsAreRefusedInALine() {
        assertRefused("coarse.pdf has 600 dpi and leaf.pdf 720", "--sheet=A3", "leaf", "coarse");
        assertRefused(
                "leaf.pdf is a film of dots and continuous.pdf one of continuous tone in 16 bits",
                "--sheet=A3",
                "leaf",
                "continuous");
        assertRefused("1 film is given", "--sheet=A3", "leaf");
        assertRefused("gap is 1 mm; it must lie between 2 and 50 mm", "--sheet=A3", "leaf", "lake", "--gap=1mm");
        assertRefused("number of sheets is 0", "--sheet=A3", "leaf", "lake", "--most-sheets=0");
        assertRefused("there is no file", "--sheet=A3", "leaf", "none");
    }

    private static void assertRefused(String words, String... line) {
        Attempt refused = attempt(line);
        assertTrue(refused.status() != 0);
        assertEquals(1, refused.err().lines().count(), refused.err());
        assertTrue(refused.err().contains(words), refused.err());
    }

    @Test
    void aSheetIsNotTakenForAFilm() throws Exception {
        gathered("--sheet=A3", "leaf", "lake");
        for (String command : List.of("proof", "plan")) {
            Attempt refused = Attempt.of(command, pdf("sheet"));
            assertTrue(refused.err().contains("is a sheet of several films"), command + ": " + refused.err());
        }
    }

    private static JsonNode gathered(String... words) throws Exception {
        Attempt done = attempt(words);
        assertEquals("", done.err());
        return new ObjectMapper().readTree(done.out());
    }

    /** Gathers films named without ending. */
    private static Attempt attempt(String... words) {
        List<Object> line = new ArrayList<>(List.of("gather", "--json", "--out", pdf("sheet")));
        for (String word : words) {
            line.add(word.startsWith("-") ? word : pdf(word));
        }
        return Attempt.of(line.toArray());
    }

    private static int pixels(JsonNode millimetres) {
        return (int) Math.round(millimetres.asDouble() * DPI / 25.4);
    }

    private static BufferedImage picture(Path pdf, int page) throws Exception {
        OutsideTools.run(folder, "pdfimages -png -f " + page + " -l " + page + " " + pdf.getFileName() + " bits");
        File file = folder.resolve("bits-000.png").toFile();
        BufferedImage picture = ImageIO.read(file);
        Files.delete(file.toPath());
        return picture;
    }
}
