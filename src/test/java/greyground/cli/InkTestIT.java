package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import greyground.app.files.KeptFiles;
import greyground.colour.Lab;
import greyground.colour.Xyz;
import greyground.ink.InkSet;
import greyground.simulation.ComposedPrint;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Test plates of three inks, from their films through an invented shop's colour print and scan to an inks file, and films made with it. */
class InkTestIT {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @TempDir
    private static Path folder;

    private static ComposedPrint print;

    @BeforeAll
    static void make() throws Exception {
        Files.writeString(
                file("inks.json"),
                "{\"greyground\": \"inks\", \"version\": 1, \"inks\": [{\"name\": \"yellow\", \"lab\": [86, -3, 70]},"
                        + " {\"name\": \"magenta\", \"lab\": [48, 60, 0]}, {\"name\": \"blue\", \"lab\": [45, -20, -38]}]}");
        Attempt.done(
                "wedge",
                "--inks",
                file("inks.json"),
                "--resolution",
                "720",
                "--date",
                "2026-11-20",
                "--out",
                file("set.pdf"));
        print = ComposedPrint.of(file("set.pdf"), 11);
        print.write(print.scan(0b111), file("scan.png"));
        Files.writeString(file("measured.csv"), print.measured(26));
    }

    private static Path file(String name) {
        return folder.resolve(name);
    }

    private static Attempt read(String scan, Object... more) {
        List<Object> words =
                new ArrayList<>(List.of("read", file(scan), "--wedge", file("set.pdf"), "--date", "2026-11-25"));
        words.addAll(List.of(more));
        return Attempt.of(words.toArray());
    }

    private static void refused(String said, Attempt attempt) {
        assertTrue(attempt.err().contains(said), attempt.err() + attempt.out());
        assertEquals(1, attempt.err().strip().lines().count(), attempt.err());
    }

    @Test
    void theInksAreLearntAndFilmsFollowThem() throws Exception {
        Attempt attempt = read("scan.png", "--measured", file("measured.csv"), "--out", file("learnt.json"), "--json");
        assertEquals("", attempt.err());
        JsonNode told = JSON.readTree(attempt.out());
        assertEquals(3, told.get("inks").size());
        assertEquals(4, told.get("over").size());
        assertTrue(told.get("checks").get("middle").doubleValue() < 3, attempt.out());
        assertTrue(told.get("colours").textValue().startsWith("good to \u00b1 "), attempt.out());
        InkSet learnt = KeptFiles.inks(file("learnt.json"));
        for (int ink = 0; ink < 3; ink++) {
            double off = learnt.inks()
                    .get(ink)
                    .tones()
                    .orElseThrow()
                    .colours()
                    .get(9)
                    .difference(print.full(1 << ink));
            assertTrue(off < 2, "ink " + ink + " is " + off + " off");
        }

        BufferedImage art = new BufferedImage(80, 60, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < 80 * 60; i++) {
            art.getRaster().setSample(i % 80, i / 80, 0, 40 + 2 * (i % 80));
        }
        ImageIO.write(art, "png", file("art.png").toFile());
        String made = Attempt.done(
                        "plates",
                        file("art.png"),
                        file("art.png"),
                        file("art.png"),
                        "--inks",
                        file("learnt.json"),
                        "--plate",
                        "40x30mm",
                        "--resolution",
                        "720",
                        "--out",
                        file("dusk.pdf"))
                .out();
        assertTrue(made.contains("1  yellow, printed first"), made);
        String curve = KeptFiles.carried(file("dusk.pdf"), "2-curve.json").orElseThrow();
        assertTrue(curve.contains("\"known\" : \"measured\"") || curve.contains("\"known\": \"measured\""), curve);
        String shown = Attempt.done("proof", file("dusk.pdf"), "--at", "72", "--out", file("dusk.png"))
                .out();
        assertTrue(shown.contains("overprints"), shown);
        assertTrue(Files.size(file("dusk.png")) > 1000);
        provenAsLearnt(learnt);
    }

    /** The darkest tone of one ink, on a film of its own, is shown in the colour that its test plate printed. */
    private static void provenAsLearnt(InkSet learnt) throws Exception {
        for (int code : new int[] {0, 255}) {
            BufferedImage even = new BufferedImage(80, 60, BufferedImage.TYPE_BYTE_GRAY);
            for (int i = 0; i < 80 * 60; i++) {
                even.getRaster().setSample(i % 80, i / 80, 0, code);
            }
            ImageIO.write(even, "png", file(code + ".png").toFile());
        }
        Attempt.done(
                "plates",
                file("255.png"),
                file("255.png"),
                file("0.png"),
                "--inks",
                file("learnt.json"),
                "--plate=40x30mm",
                "--resolution=720",
                "--white=100%",
                "--black=0%",
                "--out",
                file("full.pdf"));
        Attempt.done("proof", file("full.pdf"), "--at=72", "--out", file("full.png"));
        BufferedImage shown = ImageIO.read(file("full.png").toFile());
        double[] light = new double[3];
        for (int y = 50; y < 80; y++) {
            for (int x = 50; x < 110; x++) {
                double[] here = Xyz.ofCode(shown.getRGB(x, y) & 0xFFFFFF).light();
                for (int i = 0; i < 3; i++) {
                    light[i] += here[i] / (30 * 60);
                }
            }
        }
        Lab full = learnt.inks().get(2).tones().orElseThrow().colours().get(9);
        double off = Lab.of(Xyz.ofLight(light)).difference(full);
        // The film stops short of the darkest tone, for the bath.
        assertTrue(off < 2.5, "shown " + Lab.of(Xyz.ofLight(light)) + ", learnt " + full);
    }

    /** The same inks, however the scan lies and is packed. */
    @ParameterizedTest
    @ValueSource(strings = {"turned.png", "deep.png", "linear.tiff", "scan.jpg"})
    void aTurnedDeepOrPackedScanTeachesTheSame(String scan) throws Exception {
        BufferedImage seen = print.scan(0b111);
        switch (scan) {
            case "turned.png" -> print.write(ComposedPrint.turned(seen), file(scan));
            case "deep.png" -> print.write(print.deepScan(0b111), file(scan));
            case "linear.tiff" ->
                ImageIO.write(print.linearScan(0b111), "tiff", file(scan).toFile());
            default -> ImageIO.write(seen, "jpg", file(scan).toFile());
        }
        Path out = file(scan + ".json");
        Attempt attempt = read(scan, "--measured", file("measured.csv"), "--out", out);
        assertEquals("", attempt.err());
        assertEquals(scan.equals("turned.png"), attempt.out().contains("upside down"), attempt.out());
        for (int ink = 0; ink < 3; ink++) {
            double off = KeptFiles.inks(out)
                    .inks()
                    .get(ink)
                    .tones()
                    .orElseThrow()
                    .colours()
                    .get(9)
                    .difference(print.full(1 << ink));
            assertTrue(off < 2, scan + ": ink " + ink + " is " + off + " off");
        }
    }

    /** By the profile that a scan carries, or as sRGB: nothing is promised, but the inks of the scan's own colours are written. */
    @Test
    void withoutMeasuredFieldsNothingIsPromised() throws Exception {
        String words = read("scan.png", "--out", file("unmeasured.json")).out();
        assertTrue(
                words.contains("colours not determined: the scan says nothing of its colours, sRGB is assumed"), words);
        ImageIO.write(print.linearScan(0b111), "tiff", file("profiled.tiff").toFile());
        String stated = read("profiled.tiff", "--out", file("profiled.json")).out();
        assertTrue(stated.contains("colours not determined: by the scan's own colour profile"), stated);
        for (int ink = 0; ink < 3; ink++) {
            Lab plain = KeptFiles.inks(file("unmeasured.json"))
                    .inks()
                    .get(ink)
                    .patch()
                    .orElseThrow();
            Lab profiled = KeptFiles.inks(file("profiled.json"))
                    .inks()
                    .get(ink)
                    .patch()
                    .orElseThrow();
            assertTrue(plain.difference(profiled) < 0.5, plain + ", " + profiled);
        }
    }

    @Test
    void whatIsNoPrintOfTheseTestPlatesIsToldInOneLine() throws Exception {
        Path out = file("none.json");
        BufferedImage grey = new BufferedImage(300, 300, BufferedImage.TYPE_BYTE_GRAY);
        ImageIO.write(grey, "png", file("grey.png").toFile());
        refused("grey.png is grey: scan the print in colour", read("grey.png", "--out", out));
        print.write(ComposedPrint.withoutColour(print.scan(0b111)), file("colourless.png"));
        refused("the scan holds no colours", read("colourless.png", "--out", out));
        print.write(print.scan(0b101), file("two.png"));
        refused("plate 2, magenta, printed nothing", read("two.png", "--out", out));
        refused(
                "measure the very print that was scanned",
                read("two.png", "--measured", file("measured.csv"), "--out", out));
        print.write(print.scan(0b011), file("codeless.png"));
        refused("the scan shows no test plate", read("codeless.png", "--out", out));
        Attempt.done(
                "wedge", "--inks", file("inks.json"), "--resolution", "720", "--seed", "5", "--out", file("other.pdf"));
        refused(
                "the scan shows another chart",
                Attempt.of("read", file("scan.png"), "--wedge", file("other.pdf"), "--out", out));
        refused("add --wedge INKTEST.pdf", Attempt.of("read", file("scan.png"), "--out", out));
        refused("leave the rest out", read("scan.png", "--out", out, "--accept"));
        refused("add --out INKS.json", read("scan.png", "--workshop", file("none-yet.json")));
        refused("add --out INKS.json", read("scan.png", "--measured", file("measured.csv")));
        refused("add --workshop SHOP.json", read("scan.png"));
        Attempt.done(
                "wedge", "--kind", "strip", "--plate", "110x40mm", "--resolution", "720", "--out", file("grey.pdf"));
        refused(
                "the film is of a test plate in one ink",
                Attempt.of("read", file("scan.png"), "--wedge", file("grey.pdf"), "--out", out));
        Files.writeString(file("few.csv"), "row,column,L*,a*,b*\n1,1,50,0,0\n1,2,60,0,0\n");
        refused("number of colours that were measured", read("scan.png", "--measured", file("few.csv"), "--out", out));
        Files.writeString(file("wrong.csv"), "row,column,L*,a*,b*\n40,1,50,0,0\n");
        refused("wrong.csv line 2: row is \"40\"", read("scan.png", "--measured", file("wrong.csv"), "--out", out));
        assertFalse(Files.exists(out));
    }

    @ParameterizedTest
    @ValueSource(strings = {"scan.png", "measured.csv", "set.pdf", "shop.json"})
    void theInksNeverTakeThePlaceOfWhatTheyRestOn(String name) throws Exception {
        Attempt.done("wedge", "--inks", file("inks.json"), "--resolution", "720", "--out", file("again.pdf"));
        if (name.equals("shop.json")) {
            Files.writeString(file(name), "{ \"greyground\": \"workshop\", \"version\": 1, \"name\": \"quay\" }\n");
        }
        byte[] before = Files.readAllBytes(file(name));
        List<Object> words = new ArrayList<>(List.of("--measured", file("measured.csv"), "--out", file(name)));
        if (name.equals("shop.json")) {
            words.addAll(List.of("--workshop", file(name)));
        }
        Attempt attempt = read("scan.png", words.toArray());
        assertEquals(2, attempt.status(), attempt.err());
        assertArrayEquals(before, Files.readAllBytes(file(name)));
    }

    @Test
    void wrongOrdersOfTestPlatesAreToldInOneLine() throws Exception {
        Files.writeString(
                file("one.json"), "{\"greyground\": \"inks\", \"version\": 1, \"inks\": [{\"name\": \"black\"}]}");
        Path out = file("refused.pdf");
        Path inks = file("inks.json");
        refused(
                "--kind chooses a test plate in one ink",
                Attempt.of("wedge", "--inks", inks, "--kind", "full", "--out", out));
        refused(
                "too little for the 82 fields of 3 inks",
                Attempt.of("wedge", "--inks", inks, "--plate", "60x80mm", "--out", out));
        refused("lies alike on every film", Attempt.of("wedge", "--inks", inks, "--ruling", "60/cm", "--out", out));
        refused("leave it out", Attempt.of("wedge", "--inks", inks, "--plan-out", file("plan.pdf"), "--out", out));
        refused("number of inks is 1", Attempt.of("wedge", "--inks", file("one.json"), "--out", out));
        refused("\"inks\" is unknown", Attempt.of("wedge", "--kind", "inks", "--out", out));
        refused("none.json", Attempt.of("wedge", "--inks", file("none.json"), "--out", out));
        refused("would replace the inks", Attempt.of("wedge", "--inks", inks, "--out", inks));
        assertFalse(Files.exists(out));
    }
}
