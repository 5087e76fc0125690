package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.output.Archivable;
import greyground.output.ExternalTool;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The main job from its command line to its files, which independent programs then read. */
class MainJobIT {
    private static final Path ART = Path.of("testimages/still-life.png");

    @TempDir
    static Path folder;

    private static Path film;
    private static Attempt made;

    @BeforeAll
    static void theFilmIsMade() {
        film = folder.resolve("film.pdf");
        made = Attempt.done(
                "positive",
                ART,
                "--plate",
                "80x100mm",
                "--resolution",
                "720",
                "--date",
                "2026-03-31",
                "--out",
                film,
                "--tiff",
                folder.resolve("film.tif"));
    }

    private static String ask(String... command) throws Exception {
        return ExternalTool.run(folder, command);
    }

    @Test
    void tellsWhereTheFilmIs() throws Exception {
        assertTrue(made.out().startsWith("film    " + film), made.out());
        assertEquals(List.of(), Attempt.unfinished(folder));
    }

    /** Outside authority: the veraPDF validation model, profile PDF/A-3b. */
    @Test
    void anIndependentValidatorAcceptsTheFilm() throws Exception {
        Archivable.check(Files.readAllBytes(film));
    }

    @Test
    void otherReadersFindItSound() throws Exception {
        assertTrue(ask("qpdf", "--check", "film.pdf").contains("No syntax or stream encoding errors found"));
        String mupdf = ask("mutool", "info", "film.pdf");
        assertTrue(mupdf.contains("Pages: "), mupdf);
        assertFalse(mupdf.contains("error") || mupdf.contains("warning"), mupdf);
    }

    /**
     * Poppler reads the boxes. The sheet is as wide as the 126 mm wedge and 24 mm on either side; the plate is 80 x 100 mm.
     * One point is 1/72 inch; poppler prints to 0.01 point, and edges lie on whole pixels of a tenth of a point.
     */
    @Test
    void theBoxesHaveTheSizesOfSheetAndPlate() throws Exception {
        String boxes = ask("pdfinfo", "-box", "film.pdf");
        double[] media = box(boxes, "MediaBox");
        double[] trim = box(boxes, "TrimBox");
        double[] bleed = box(boxes, "BleedBox");
        assertEquals(points(2 * 24 + 126), media[2] - media[0], 0.06);
        assertEquals(points(80), trim[2] - trim[0], 0.06);
        assertEquals(points(100), trim[3] - trim[1], 0.06);
        assertEquals(points(86), bleed[2] - bleed[0], 0.12);
        assertEquals(points(106), bleed[3] - bleed[1], 0.12);
        assertEquals(points(3), trim[0] - bleed[0], 0.06);
        assertEquals(points(24), media[3] - trim[3], 0.06);
        BufferedImage tiff = ImageIO.read(folder.resolve("film.tif").toFile());
        assertEquals(tiff.getWidth() * 72 / 720.0, media[2] - media[0], 0.02);
        assertEquals(tiff.getHeight() * 72 / 720.0, media[3] - media[1], 0.02);
    }

    private static double points(double millimetres) {
        return millimetres * 72 / 25.4;
    }

    private static double[] box(String boxes, String name) {
        Matcher found = Pattern.compile(name + ":\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)")
                .matcher(boxes);
        assertTrue(found.find(), boxes);
        double[] box = new double[4];
        for (int i = 0; i < 4; i++) {
            box[i] = Double.parseDouble(found.group(i + 1));
        }
        return box;
    }

    /** Poppler takes the bitmap out of the PDF; the platform's image reader reads both. */
    @Test
    void theBitmapIsTheTiffsBitForBit() throws Exception {
        String[] lines = ask("pdfimages", "-list", "film.pdf").strip().split("\n");
        assertEquals(3, lines.length, "a heading, a rule and one picture");
        String[] fields = lines[2].strip().split("\\s+");
        assertEquals("1", fields[7], "bits per component");
        assertEquals("720", fields[12], "pixels per inch across");
        assertEquals("720", fields[13], "pixels per inch down");
        ask("pdfimages", "-png", "film.pdf", "bits");
        BufferedImage pdf = ImageIO.read(folder.resolve("bits-000.png").toFile());
        BufferedImage tiff = ImageIO.read(folder.resolve("film.tif").toFile());
        int width = tiff.getWidth();
        assertEquals(width, pdf.getWidth());
        assertEquals(tiff.getHeight(), pdf.getHeight());
        long black = 0;
        for (int y = 0; y < tiff.getHeight(); y++) {
            int[] expected = tiff.getRGB(0, y, width, 1, null, 0, width);
            assertArrayEquals(expected, pdf.getRGB(0, y, width, 1, null, 0, width), "row " + y);
            for (int pixel : expected) {
                black += (pixel & 0xFFFFFF) == 0 ? 1 : 0;
            }
        }
        double share = (double) black / width / tiff.getHeight();
        assertTrue(share > 0.05 && share < 0.6, "neither empty nor negative: " + share);
    }

    @Test
    void planJobWorkshopAndCurveAreAttached() throws Exception {
        String list = ask("pdfdetach", "-list", "film.pdf");
        assertTrue(list.startsWith("5 embedded files"), list);
        for (String name : List.of("job.json", "workshop.json", "curve.json", "plan.json", "plan.txt")) {
            assertTrue(list.contains(": " + name), list);
        }
    }

    @Test
    void whatIsWrittenOnItIsText() throws Exception {
        String text = ask("pdftotext", "-layout", "film.pdf", "-");
        for (String words : List.of("still-life", "2026-03-31", "INK SIDE", "150 s", "80 x 100 mm", "720 dpi")) {
            assertTrue(text.contains(words), words + " in " + text);
        }
    }

    /** Times: 27, 10 and 20 min, and 60 + 90 s, are the workshop's documented assumptions. */
    @Test
    void thePlanIsPrintedWithWhereItsNumbersComeFrom() {
        String plan = Attempt.done("plan", film).out();
        for (String words : List.of("27 min", "10 min", "20 min", "150 s", "assumed")) {
            assertTrue(plan.contains(words), words + " in " + plan);
        }
        String json = Attempt.done("plan", film, "--json").out();
        assertTrue(json.startsWith("{"), json);
    }

    @Test
    void theJobItCarriesGivesTheSameBytes() throws Exception {
        Path again = folder.resolve("again.pdf");
        Attempt.done("positive", ART, "--job", film, "--out", again);
        assertEquals(-1, Files.mismatch(film, again));
        ask("pdfdetach", "-savefile", "job.json", "-o", "taken.json", "film.pdf");
        Files.delete(again);
        Attempt.done("positive", ART, "--job", folder.resolve("taken.json"), "--out", again);
        assertEquals(-1, Files.mismatch(film, again));
    }

    /** Another process, which sees one processor and so works with one thread, in another locale and time zone. */
    @Test
    void oneThreadElsewhereGivesTheSameBytes() throws Exception {
        Path again = folder.resolve("elsewhere.pdf");
        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        ExternalTool.run(
                folder,
                java.toString(),
                "-XX:ActiveProcessorCount=1",
                "-Duser.language=ar",
                "-Duser.timezone=Pacific/Kiritimati",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                "greyground.Main",
                "positive",
                ART.toAbsolutePath().toString(),
                "--job",
                film.toString(),
                "--out",
                again.toString());
        assertEquals(-1, Files.mismatch(film, again));
    }
}
