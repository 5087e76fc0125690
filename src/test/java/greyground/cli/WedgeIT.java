package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.PlanarYUVLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.multi.qrcode.QRCodeMultiReader;
import greyground.app.files.KeptFiles;
import greyground.chart.TestPlate;
import greyground.film.sheet.ChartFile;
import greyground.output.Attachment;
import greyground.output.FilmPdfReader;
import greyground.plan.ExposurePlan;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WedgeIT {
    @TempDir
    private static Path folder;

    private static TestPlate chart(Path film) throws Exception {
        try (FilmPdfReader reader = FilmPdfReader.open(film)) {
            return ChartFile.read(
                    new String(reader.attachment(Attachment.CHART).orElseThrow(), StandardCharsets.UTF_8));
        }
    }

    @Test
    void theFilmCarriesItsChartAndPlanAndComesOutTheSameAgain() throws Exception {
        Path film = folder.resolve("full.pdf");
        Path again = folder.resolve("again.pdf");
        String[] options = {"--plate", "60x80mm", "--resolution", "720", "--date", "2026-03-31"};
        String out = Attempt.done(with(options, "wedge", "--out", film)).out();
        Attempt.done(with(options, "wedge", "--out", again));
        assertArrayEquals(Files.readAllBytes(film), Files.readAllBytes(again));
        TestPlate plate = chart(film);
        assertTrue(out.contains(plate.codeText()), out);
        assertTrue(out.contains("omits   the second bar gauge"), out);
        ExposurePlan plan = KeptFiles.plan(film);
        assertEquals("The test plate", plan.steps().get(1).title());
        assertTrue(plan.steps().stream().anyMatch(step -> !step.cautions().isEmpty()));
        assertEquals(60, KeptFiles.job(film).plate().widthMillimetres());
        // What the plan says of the bath rests on the share of black; the film must have it, to the percent that is
        // printed.
        assertEquals(FilmBits.of(film, 0).coverage(), plate.meanCoverage(), 0.01);
        assertEquals(List.of(), Attempt.unfinished(folder));
    }

    /** A constant number of times from strip to strip: 10^0.15, one step of a usual wedge. */
    @Test
    void anExposureTestPrintsItsTimetable() throws Exception {
        Path film = folder.resolve("times.pdf");
        Attempt.done("wedge", "--kind", "exposure", "--plate", "60x80mm", "--resolution", "720", "--out", film);
        ExposurePlan.Step exposure = KeptFiles.plan(film).steps().stream()
                .filter(step -> step.title().equals("Exposure"))
                .findFirst()
                .orElseThrow();
        List<String> parts = exposure.lines().stream()
                .filter(line -> line.label().startsWith("part "))
                .map(ExposurePlan.Line::value)
                .toList();
        assertEquals(chart(film).strips().size(), parts.size());
        // The middle strip of seven has had the usual 150 s; the first 150 / 10^0.45 = 53.2 s, the second 150 / 10^0.3
        // = 75.2 s.
        assertEquals("53 s, cover 1", parts.get(0));
        assertEquals("22 s, cover 2", parts.get(1));
        assertFalse(exposure.cautions().isEmpty());
    }

    @Test
    void theCodesReadFromThePredictedPrint() throws Exception {
        Path film = folder.resolve("strip.pdf");
        Path print = folder.resolve("strip.png");
        Attempt.done("wedge", "--kind", "strip", "--plate", "100x30mm", "--out", film);
        Attempt.done("proof", film, "--out", print, "--at", "300dpi");
        BufferedImage image = ImageIO.read(print.toFile());
        int width = image.getWidth();
        int height = image.getHeight();
        byte[] grey = new byte[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                grey[y * width + x] = (byte) (image.getRGB(x, y) >> 8);
            }
        }
        Result[] found = new QRCodeMultiReader()
                .decodeMultiple(
                        new BinaryBitmap(new HybridBinarizer(
                                new PlanarYUVLuminanceSource(grey, width, height, 0, 0, width, height, false))),
                        Map.of(DecodeHintType.TRY_HARDER, true));
        Set<String> wanted = new HashSet<>();
        chart(film).codes().forEach(code -> wanted.add(code.text()));
        Set<String> read = new HashSet<>();
        Arrays.stream(found).map(Result::getText).forEach(read::add);
        assertEquals(wanted, read);
    }

    @Test
    void theOutcomeAsJsonNamesTheChart() throws Exception {
        Path film = folder.resolve("json.pdf");
        JsonNode tree = JsonMapper.builder()
                .build()
                .readTree(Attempt.done(
                                "wedge",
                                "--kind",
                                "strip",
                                "--ruling",
                                "60",
                                "--resolution",
                                "720",
                                "--seed",
                                "9",
                                "--out",
                                film,
                                "--json")
                        .out());
        assertEquals(chart(film).id(), tree.path("id").asText());
        assertEquals(9, chart(film).recipe().seed());
        assertTrue(tree.path("fewestRepeats").asInt() >= 3);
    }

    @Test
    void wrongRequestsAreRefusedInOneLineAndWriteNothing() {
        Path film = folder.resolve("never.pdf");
        List<List<String>> wrong = List.of(
                List.of("--plate", "50x80mm"),
                List.of("--kind", "ramp"),
                List.of("--seed", "-1"),
                List.of("--seed", "many"),
                List.of("--process", "photogravure", "--kind", "exposure"),
                List.of("--grain", "none"),
                List.of("--sheet", "100x100mm"),
                List.of("--resolution", "20"));
        for (List<String> words : wrong) {
            Attempt attempt = Attempt.of(with(words.toArray(new String[0]), "wedge", "--out", film));
            assertEquals(2, attempt.status(), words + ": " + attempt.err());
            assertEquals(1, attempt.err().lines().count(), attempt.err());
            assertFalse(Files.exists(film));
        }
    }

    private static Object[] with(String[] options, Object... words) {
        Object[] all = Arrays.copyOf(words, words.length + options.length);
        System.arraycopy(options, 0, all, words.length, options.length);
        return all;
    }
}
