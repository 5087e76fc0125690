package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import greyground.app.files.KeptFiles;
import greyground.app.recipe.JobPlate;
import greyground.chart.LevelPatch;
import greyground.chart.TestPlate;
import greyground.film.job.Job;
import greyground.output.Attachment;
import greyground.output.FilmPdfReader;
import greyground.plate.VirtualResponse;
import greyground.simulation.HiddenWorkshop;
import greyground.simulation.ProofOfFilm;
import greyground.tone.Lightness;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A test plate's proof, painted by an invented workshop of hidden numbers, through the command and into that workshop's file, and films
 * made from what it learned.
 */
class ReadIT {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String BY_HAND =
            "{ \"greyground\": \"workshop\", \"version\": 1, \"name\": \"quay\", \"cat\": 7 }\n";

    @TempDir
    private static Path folder;

    private static Path film;
    private static Path proof;
    private static HiddenWorkshop hidden;
    private static String white;

    @BeforeAll
    static void printAndScan() throws Exception {
        film = folder.resolve("test.pdf");
        proof = folder.resolve("proof.png");
        Attempt.done("wedge", "--kind", "strip", "--plate", "110x40mm", "--date", "2026-11-20", "--out", film);
        hidden = ProofOfFilm.scan(film, 3, 300, proof);
        white = Double.toString(
                Lightness.ofDensity(hidden.secret().paper().whiteDensity().value()));
    }

    private static Path shop(String name) throws Exception {
        return Files.writeString(folder.resolve(name), BY_HAND);
    }

    private static Attempt read(Path shop, Object... more) {
        List<Object> words = new ArrayList<>(List.of(
                "read",
                proof,
                "--wedge",
                film,
                "--workshop",
                shop,
                "--depth",
                hidden.gauge().micrometres() + "um",
                "--paper",
                white,
                "--date",
                "2026-11-25"));
        words.addAll(List.of(more));
        return Attempt.of(words.toArray());
    }

    @Test
    void readingAloneChangesNothingAndAcceptingMakesFilmsFollowWhatWasMeasured() throws Exception {
        Path shop = shop("quay.json");
        Path curve = folder.resolve("curve.svg");
        Attempt looked = read(shop, "--curve", curve);
        assertEquals("", looked.err());
        assertTrue(looked.out().contains("quay.json is untouched: add --accept"), looked.out());
        assertEquals(BY_HAND, Files.readString(shop));
        assertTrue(Files.readString(curve).contains("predicted once taught"));

        JsonNode told = JSON.readTree(read(shop, "--accept", "--json").out());
        assertTrue(told.get("accepted").booleanValue());
        assertEquals(BY_HAND, Files.readString(Path.of(told.get("kept").textValue())));
        String taught = Files.readString(shop);
        assertTrue(taught.contains("\"cat\": 7"));
        Workshop learned = WorkshopFile.read(taught);
        String chart = KeptFiles.chart(film).id();
        assertEquals(chart, learned.responses().get(0).chart());
        assertEquals("2026-11-25", learned.responses().get(0).date().toString());
        assertTrue(told.get("changes").size() >= 2, told.get("changes").toString());
        for (JsonNode change : told.get("changes")) {
            Figure figure = learned.figures().get(change.get("path").textValue());
            assertEquals("measured 2026-11-25", figure.provenance().words());
        }

        Path art = grey(118);
        Path made = folder.resolve("made.pdf");
        String words = Attempt.done(
                        "positive",
                        art,
                        "--plate",
                        "32x32mm",
                        "--workshop",
                        shop,
                        "--date",
                        "2026-11-26",
                        "--out",
                        made)
                .out();
        assertTrue(words.contains("measured on 2026-11-25, chart " + chart), words);
        Path again = folder.resolve("again.pdf");
        Attempt.done("positive", art, "--plate", "32x32mm", "--workshop", shop, "--date", "2026-11-26", "--out", again);
        assertArrayEquals(Files.readAllBytes(made), Files.readAllBytes(again));

        // The film brings its workshop along: what the shop forgets or learns later doesn't touch it.
        Attempt.done("read", "--take-back", "--workshop", shop);
        assertEquals(BY_HAND, Files.readString(shop));
        Attempt.done("positive", art, "--job", made, "--out", again);
        assertArrayEquals(Files.readAllBytes(made), Files.readAllBytes(again));
        Path before = folder.resolve("before.pdf");
        Attempt.done("positive", art, "--plate", "32x32mm", "--workshop", shop, "--out", before);
        checkTruth(before, made);
    }

    /** What the shop's secret numbers make of both films' curves, against what each of them promised. */
    private static void checkTruth(Path before, Path taught) throws Exception {
        Job job = KeptFiles.job(taught);
        JobPlate plate = JobPlate.of(hidden.believed(), job);
        VirtualResponse truth = plate.response(hidden.truth());
        double was = missed(curve(before), truth);
        double now = missed(curve(taught), truth);
        // Noise of 0.4 L* a level and uneven wiping are in it.
        assertTrue(now < 1.5, "with the measured tones prints miss by " + now + " L*");
        assertTrue(was > 2 * now, "without them they miss by " + was + " L*, with them by " + now);
        assertEquals("measured", curve(taught).get("known").textValue());
        assertEquals("predicted", curve(before).get("known").textValue());
        assertNotEquals(curve(before).get("nodes"), curve(taught).get("nodes"));
    }

    private static JsonNode curve(Path film) throws Exception {
        try (FilmPdfReader reader = FilmPdfReader.open(film)) {
            return JSON.readTree(reader.attachment(Attachment.CURVE).orElseThrow());
        }
    }

    private static double missed(JsonNode curve, VirtualResponse truth) {
        double squares = 0;
        int tones = 0;
        for (JsonNode node : curve.get("nodes")) {
            if (node.get("attained").booleanValue()) {
                double printed = truth.lightness(node.get("coverage").doubleValue());
                squares += Math.pow(printed - node.get("wishedLightness").doubleValue(), 2);
                tones++;
            }
        }
        assertTrue(tones > 20, tones + " tones");
        return Math.sqrt(squares / tones);
    }

    private static Path grey(int code) throws Exception {
        BufferedImage image = new BufferedImage(64, 64, BufferedImage.TYPE_BYTE_GRAY);
        image.getRaster()
                .setSamples(
                        0,
                        0,
                        64,
                        64,
                        0,
                        java.util.stream.IntStream.generate(() -> code)
                                .limit(64 * 64)
                                .toArray());
        Path file = folder.resolve("grey.png");
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    /** And tones of another bite than a job's are not used for it. */
    @Test
    void valuesTypedInTeachTheSameWay() throws Exception {
        Path shop = folder.resolve("new.json");
        Path values = folder.resolve("values.csv");
        TestPlate plate = KeptFiles.chart(film);
        StringBuilder text = new StringBuilder("coverage;density\n");
        for (LevelPatch field : plate.patches().stream()
                .sorted(Comparator.comparingInt(LevelPatch::coveragePerMille))
                .toList()) {
            double lightness = 94 - 72 * Math.min(1, field.coverage() / 0.9);
            text.append(field.coveragePerMille() / 10.0)
                    .append(';')
                    .append(Lightness.toDensity(lightness))
                    .append('\n');
        }
        Files.writeString(values, text.toString().replace('.', ','));
        String told = Attempt.done(
                        "read",
                        "--values",
                        values,
                        "--wedge",
                        film,
                        "--workshop",
                        shop,
                        "--date",
                        "2026-11-25",
                        "--bite",
                        "26min",
                        "--accept")
                .out();
        assertTrue(told.contains("densitometer"), told);
        assertTrue(told.contains("a bite of 26 min, not 20"), told);
        assertTrue(told.contains("bitten 26 min, exposed 150 s"), told);
        Workshop learned = WorkshopFile.read(Files.readString(shop));
        assertEquals(94 - 72 * 0.5 / 0.9, learned.responses().get(0).response().lightness(0.5), 0.1);
        String words = Attempt.done(
                        "positive",
                        grey(118),
                        "--plate",
                        "32x32mm",
                        "--workshop",
                        shop,
                        "--out",
                        folder.resolve("other.pdf"))
                .out();
        assertTrue(words.contains("(predicted, virtual plate"), words);
        assertTrue(words.contains("for a bite of 26 min, not 20: predicted tones are used; etch a test plate"), words);
        Attempt.done("read", "--take-back", "--workshop", shop);
        assertEquals(KeptFiles.workshop(film), WorkshopFile.read(Files.readString(shop)));
    }

    /** A check plate judges the workshop that made it and teaches it nothing. */
    @Test
    void aCheckPlatesScanIsJudgedToneByTone() throws Exception {
        Path shop = shop("checked.json");
        Path check = folder.resolve("check.pdf");
        Path scan = folder.resolve("check.png");
        Attempt.done("wedge", "--kind", "check", "--plate", "60x80mm", "--workshop", shop, "--out", check);
        ProofOfFilm.scan(check, 3, 300, scan);
        Path plot = folder.resolve("check.svg");
        Attempt judged = Attempt.done("read", scan, "--wedge", check, "--workshop", shop, "--curve", plot);
        // An unmeasured workshop predicts this invented one's tones wrong, and the check must say so.
        assertTrue(judged.out().contains("too dark") || judged.out().contains("too light"), judged.out());
        assertFalse(judged.out().contains("--accept"), judged.out());
        assertTrue(Files.readString(plot).contains("<svg"));
        assertEquals(BY_HAND, Files.readString(shop));
    }

    @Test
    void whatCannotBeReadLeavesTheWorkshopAsItWas() throws Exception {
        Path shop = shop("kept.json");
        Path fault = Files.writeString(folder.resolve("fault.csv"), "row,column,density\n1,1,0.1\n1,2,black\n");
        Path exposure = folder.resolve("exposure.pdf");
        Attempt.done("wedge", "--kind", "exposure", "--plate", "80x60mm", "--resolution", "720", "--out", exposure);
        Path damaged = Files.writeString(folder.resolve("damaged.json"), BY_HAND.substring(0, 30));
        Path text = Files.writeString(folder.resolve("text.tif"), "no picture");
        List<List<Object>> wrong = List.of(
                List.of(2, "line 3: density is \"black\"", "--values", fault, "--wedge", film, "--workshop", shop),
                List.of(1, "", grey(200), "--wedge", film, "--workshop", shop),
                List.of(1, "can't be read", text, "--wedge", film, "--workshop", shop),
                List.of(1, "", folder.resolve("none.png"), "--wedge", film, "--workshop", shop),
                List.of(2, "is no film PDF", proof, "--wedge", proof, "--workshop", shop),
                List.of(2, "not JSON", proof, "--wedge", film, "--workshop", damaged),
                List.of(2, "would replace the film", proof, "--wedge", film, "--workshop", film),
                List.of(2, "no test plate's film is given", proof, "--workshop", shop),
                List.of(2, "nothing to read is given", "--wedge", film, "--workshop", shop),
                List.of(2, "both given", proof, "--values", fault, "--wedge", film, "--workshop", shop),
                List.of(2, "reads nothing", proof, "--take-back", "--workshop", shop),
                List.of(1, "can be taken back", "--take-back", "--workshop", shop),
                List.of(2, "would replace the scan", proof, "--wedge", film, "--workshop", shop, "--curve", proof),
                List.of(2, "bite", proof, "--wedge", film, "--workshop", shop, "--bite", "20"));
        for (List<Object> each : wrong) {
            List<Object> words = new ArrayList<>(List.of("read"));
            words.addAll(each.subList(2, each.size()));
            if (!words.contains("--take-back")) {
                words.add("--accept");
            }
            Attempt attempt = Attempt.of(words.toArray());
            assertEquals(each.get(0), attempt.status(), words + attempt.err());
            assertTrue(attempt.err().contains(String.valueOf(each.get(1))), words + attempt.err());
            assertEquals(1, attempt.err().lines().count(), attempt.err());
            assertEquals(BY_HAND, Files.readString(shop));
        }
        try (Stream<Path> files = Files.list(folder)) {
            assertFalse(files.anyMatch(file -> file.getFileName().toString().startsWith("kept.before")));
        }
        assertEquals(List.of(), Attempt.unfinished(folder));
    }
}
