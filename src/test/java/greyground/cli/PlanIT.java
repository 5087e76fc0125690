package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The plan command, from film and from art, with every option. */
class PlanIT {
    private static final Path ART = Path.of("testimages/still-life.png");
    private static final List<String> JOB =
            List.of("--plate", "40x40mm", "--resolution", "720", "--date", "2026-03-31");

    @TempDir
    static Path folder;

    private static Path film;

    @BeforeAll
    static void aFilmIsMade() {
        film = folder.resolve("film.pdf");
        Attempt.done(words("positive", ART, JOB, "--out", film));
    }

    private static Object[] words(Object... words) {
        List<Object> flat = new ArrayList<>();
        for (Object word : words) {
            if (word instanceof List<?> several) {
                flat.addAll(several);
            } else {
                flat.add(word);
            }
        }
        return flat.toArray();
    }

    private static JsonNode json(Object... words) throws Exception {
        return new ObjectMapper().readTree(Attempt.done(words).out());
    }

    private static void checkPage(String text) {
        text.lines().forEach(line -> assertTrue(line.length() <= 80, "80 columns: " + line));
        assertTrue(text.contains("safety data sheet"), text);
    }

    @Test
    void artPlansAsItsFilmWill() {
        assertEquals(
                Attempt.done("plan", film).out(),
                Attempt.done(words("plan", ART, JOB)).out());
        assertEquals(
                Attempt.done("plan", film, "--json").out(),
                Attempt.done(words("plan", ART, "--job", film, "--json")).out());
    }

    @Test
    void helpTeachesWithoutAComplaint() {
        String help = Attempt.done("plan", "--help").out();
        assertTrue(help.contains("what 20 % less or more does"), help);
    }

    @Test
    void planningWritesNothing() throws Exception {
        Path alone = Files.createDirectory(folder.resolve("alone"));
        Path copy = Files.copy(ART, alone.resolve("art.png"));
        Attempt.done(words("plan", copy, JOB));
        try (var files = Files.list(alone)) {
            assertEquals(List.of(copy), files.toList());
        }
    }

    /** The film is as it would be without; and the plan's pages are those that the film carries, less the word of what is film. */
    @Test
    void aPlanGoesToAFileOfItsOwn() throws Exception {
        Path again = folder.resolve("again.pdf");
        Path pages = folder.resolve("pages.pdf");
        String said = Attempt.done(words("positive", ART, JOB, "--out", again, "--plan-out", pages))
                .out();
        assertTrue(said.contains("pages   " + pages), said);
        assertTrue(said.contains("print   page 1 on film, the rest on paper"), said);
        assertEquals(-1, Files.mismatch(film, again));
        Path asked = folder.resolve("asked.pdf");
        assertEquals(
                "pages   " + asked + "\n",
                Attempt.done("plan", film, "--plan-out", asked).out());
        assertEquals(-1, Files.mismatch(pages, asked));
        Path ofArt = folder.resolve("of-art.pdf");
        Attempt.done(words("plan", ART, JOB, "--plan-out", ofArt));
        assertEquals(-1, Files.mismatch(pages, ofArt));
        try (PDDocument plan = Loader.loadPDF(pages.toFile());
                PDDocument whole = Loader.loadPDF(film.toFile())) {
            assertEquals(whole.getNumberOfPages() - 1, plan.getNumberOfPages());
            assertFalse(new PDFTextStripper().getText(plan).contains("on film, the rest"));
        }
    }

    @Test
    void aPlanIsNeverWrittenOverWhatItIsMadeFrom() throws Exception {
        byte[] before = Files.readAllBytes(film);
        for (Object[] words : List.of(
                words("plan", film, "--plan-out", film),
                words("positive", ART, JOB, "--out", folder.resolve("x.pdf"), "--plan-out", folder.resolve("x.pdf")),
                words("positive", ART, JOB, "--job", film, "--out", folder.resolve("x.pdf"), "--plan-out", film),
                words("wedge", "--workshop", film, "--out", folder.resolve("x.pdf"), "--plan-out", film),
                words("plan", film, "--plan-out", folder.resolve("plan.txt")),
                words("plan", film, "--depth", "30um", "--plan-out", folder.resolve("plan.pdf")))) {
            Attempt attempt = Attempt.of(words);
            assertEquals(2, attempt.status(), attempt.toString());
            assertEquals(1, attempt.err().lines().count(), attempt.err());
        }
        assertArrayEquals(before, Files.readAllBytes(film));
        assertFalse(Files.exists(folder.resolve("x.pdf")) || Files.exists(folder.resolve("plan.pdf")));
    }

    @Test
    void aColderBathWithCopperPlansLongerBites() {
        String plain = Attempt.done("plan", film).out();
        String told = Attempt.done("plan", film, "--bath-temperature", "15C", "--bath-copper", "30g/L")
                .out();
        assertFalse(plain.equals(told));
        assertTrue(told.contains("15 °C"), told);
        assertTrue(told.contains("30.0 g/L"), told);
        checkPage(told);
    }

    @Test
    void aDepthTellsItsMinutesAndWhatAFifthMoreDoes() throws Exception {
        String text = Attempt.done("plan", film, "--depth", "30um").out();
        checkPage(text);
        assertTrue(text.startsWith("BITE PLAN"), text);
        assertTrue(text.contains("Ferric chloride is acidic"), text);
        JsonNode bite = json("plan", film, "--depth", "30um", "--json").path("bite");
        assertEquals(5, bite.path("rows").size());
        double depth = 0;
        double darkest = 100;
        for (JsonNode row : bite.path("rows")) {
            assertTrue(row.path("depthMicrometres").asDouble() > depth);
            assertTrue(row.path("printableRange").get(1).asDouble() < darkest, "these depths darken: " + row);
            assertTrue(row.path("turningPoint").asDouble() > 0.5);
            depth = row.path("depthMicrometres").asDouble();
            darkest = row.path("printableRange").get(1).asDouble();
        }
        assertEquals(30, bite.path("rows").get(2).path("depthMicrometres").asDouble(), 1e-9);
    }

    @Test
    void aDarkestToneFindsItsDepth() throws Exception {
        JsonNode bite = json("plan", film, "--darkest", "26", "--json")
                .path("bite")
                .path("rows")
                .get(2);
        double darkest = bite.path("printableRange").get(1).asDouble();
        assertTrue(darkest <= 26 && darkest > 24.5, bite.toString());
        checkPage(Attempt.done("plan", film, "--darkest", "26").out());
    }

    @Test
    void aProofTellsHowMuchLonger() throws Exception {
        JsonNode again = json("plan", film, "--depth", "30um", "--bitten", "12min", "--proof-depth", "18um", "--json")
                .path("biteAgain");
        // 18 um in 12 min is 1.5 um/min: 12 um more take 8 min, and a little for the copper that the plate gives.
        assertEquals(8, again.path("minutesMore").asDouble(), 0.2);
        assertTrue(again.path("minutesMore").asDouble() > 8);
        String text = Attempt.done("plan", film, "--bitten", "12min", "--proof-density", "1.1")
                .out();
        checkPage(text);
        assertTrue(text.contains("the workshop's usual depth"), text);
        assertTrue(text.contains("bite again for"), text);
    }

    @Test
    void photogravureSearchesItsExposures() throws Exception {
        JsonNode tree = json(words(
                "plan",
                ART,
                JOB,
                "--process",
                "photogravure",
                "--split",
                "workshop",
                "--screen-black",
                "50%",
                "--search-exposure",
                "--json"));
        JsonNode advised = tree.path("exposure").path("advised");
        JsonNode today = tree.path("exposure").path("today");
        assertTrue(advised.path("range").asDouble() > today.path("range").asDouble());
        assertTrue(advised.path("lightGap").asDouble() < today.path("lightGap").asDouble());
        assertEquals(0, tree.path("interference").size());
        double widest = 0;
        for (JsonNode row : tree.path("exposure").path("trade")) {
            widest = Math.max(widest, row.path("range").asDouble());
        }
        for (JsonNode row : tree.path("exposure").path("trade")) {
            boolean eligible = row.path("range").asDouble() >= 0.95 * widest;
            assertTrue(!eligible
                    || row.path("lightGap").asDouble()
                            >= advised.path("lightGap").asDouble());
        }
        String split = tree.path("exposure").path("split").asText();
        JsonNode made = json(words(
                "positive",
                ART,
                JOB,
                "--process",
                "photogravure",
                "--split",
                split,
                "--reserve",
                "0",
                "--out",
                folder.resolve("split.pdf"),
                "--json"));
        assertEquals(
                advised.path("darkest").asDouble(),
                made.path("curve").path("darkestLightness").asDouble(),
                2.5,
                "one option takes the advice over; the search reads its tones off straight lines, some 2 L* too pale there");
    }

    @Test
    void aScaleIsComparedWithThePlan() throws Exception {
        String page = Attempt.done("plan", film, "--weighed", "1.5g", "--proof-depth", "35um")
                .out();
        checkPage(page);
        assertTrue(page.contains("COPPER BY WEIGHT") && page.contains("weighed / computed"), page);
        JsonNode told = json("plan", film, "--weighed", "1.5g", "--json").get("copperByWeight");
        // 16 cm2 by 8.96 g/cm3: 1.5 g are 104.6 um all over; 2 L hold 0.75 g/L more.
        assertEquals(104.63, told.get("meanDepthMicrometres").asDouble(), 0.01);
        assertEquals(0.75, told.get("copperGramsPerLitre").asDouble(), 1e-9);
        assertFalse(told.get("depthMeasured").asBoolean());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--depth 30",
                "--depth 0um",
                "--depth deep",
                "--darkest 0",
                "--darkest black",
                "--darkest 2",
                "--depth 30um --darkest 24",
                "--bitten 12min",
                "--bitten 12 --proof-depth 18um",
                "--proof-depth 18um",
                "--weighed 5g --depth 30um",
                "--weighed 5kg",
                "--weighed 20g",
                "--bitten 12min --proof-depth 18um --proof-density 1.1",
                "--bitten 12min --proof-density 0.01",
                "--bitten 12min --proof-density 3",
                "--bath-temperature 18",
                "--bath-temperature 80C --depth 30um",
                "--bath-copper 20",
                "--bath-copper 100g/L --depth 30um",
                "--search-exposure",
                "--plate 40x40mm",
                "--seed 2 --depth 30um",
                "--workshop none.json",
                "--job none.json",
                "extra.pdf",
            })
    void whatCannotBePlannedIsRefusedInOneLine(String options) {
        Attempt attempt = Attempt.of(words("plan", film, Arrays.asList(options.split(" "))));
        assertTrue(attempt.status() == 2 || (options.contains("none.json") && attempt.status() > 0), options + attempt);
        assertEquals("", attempt.out());
        assertEquals(1, attempt.err().lines().count(), attempt.err());
        assertTrue(attempt.err().startsWith("greyground: "), attempt.err());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "--plate 40x40mm --screen-black 40%",
                "--plate 40x40mm --process photogravure --screen-black 90%",
                "--plate 40x40mm --process photogravure --screen-spacing 150",
                "--plate 40x40mm --process unetched-film --depth 30um",
                "--plate 40x40mm --search-exposure",
                "--plate 40x40mm --process unetched-film --bitten 5min --proof-depth 5um",
                "--plate 40x40mm --process unetched-film --weighed 1g",
            })
    void artThatCannotBePlannedIsRefusedInOneLine(String options) {
        List<String> more = options.isEmpty() ? List.of() : Arrays.asList(options.split(" "));
        Attempt attempt = Attempt.of(words("plan", ART, "--resolution", "720", more));
        assertEquals(2, attempt.status(), options + attempt);
        assertEquals(1, attempt.err().lines().count(), attempt.err());
        assertFalse(attempt.err().contains("unforeseen"), attempt.err());
    }
}
