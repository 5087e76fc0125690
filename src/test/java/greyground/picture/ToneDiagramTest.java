package greyground.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.compose.GrainPatches;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.output.ExternalTool;
import greyground.plan.BenchConditions;
import greyground.plate.FilmPatches;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.plate.VirtualPlate;
import greyground.plate.VirtualResponse;
import greyground.quantity.Resolution;
import greyground.tone.ArtRange;
import greyground.tone.Compensation;
import greyground.tone.RangeMapping;
import greyground.workshop.Workshop;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;

class ToneDiagramTest {
    private static ToneDiagram diagram;
    private static VirtualResponse response;

    @BeforeAll
    static void drawOnce() {
        Grain grain = new Grain.Stochastic(240, 1);
        Resolution resolution = new Resolution(720);
        FilmPatches patches = GrainPatches.of(grain, ThresholdTile.of(grain, resolution), resolution);
        PlateConditions conditions = BenchConditions.ofDepth(
                Workshop.assumed(),
                new PlateProcess.EtchedFilm(),
                Workshop.assumed().usualDepthMicrometres(),
                true);
        response = VirtualResponse.of(new VirtualPlate(conditions, null, 12), patches);
        Compensation compensation =
                Compensation.of("test", new ArtRange(0.9, 0.01), RangeMapping.named("lightness"), response);
        diagram = ToneDiagram.of(
                "jug & \"pears\" <study>", compensation.nodes(), response, Optional.empty(), response.turningPoint());
    }

    @Test
    void svgIsWellFormedAndNamesItsAxesWithTheirUnits() throws Exception {
        String svg = diagram.svg();
        Document document = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        String words = document.getDocumentElement().getTextContent();
        for (String axis : new String[] {"art, L*", "black on the film, %", "ink in the plate, \u00b5m", "print, L*"}) {
            assertTrue(words.contains(axis), axis);
        }
        assertTrue(words.contains("jug & \"pears\" <study>"));
        assertTrue(words.contains("turning point, " + Math.round(100 * response.turningPoint()) + " %"), words);
        assertEquals(
                "svg",
                document.getDocumentElement().getLocalName() == null
                        ? document.getDocumentElement().getTagName()
                        : document.getDocumentElement().getLocalName());
    }

    @Test
    void theSameNumbersGiveTheSameBytes() throws Exception {
        ByteArrayOutputStream one = new ByteArrayOutputStream();
        ByteArrayOutputStream other = new ByteArrayOutputStream();
        diagram.writePdf(one);
        diagram.writePdf(other);
        assertArrayEquals(one.toByteArray(), other.toByteArray());
        assertArrayEquals(diagram.picture().samples(), diagram.picture().samples());
    }

    @Test
    void otherProgramsReadThePdf(@TempDir Path folder) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        diagram.writePdf(out);
        Files.write(folder.resolve("tones.pdf"), out.toByteArray());
        ExternalTool.run(folder, "qpdf", "--check", "tones.pdf");
        String words = ExternalTool.run(folder, "pdftotext", "-layout", "tones.pdf", "-");
        assertTrue(words.contains("How each tone travels") && words.contains("print against art"), words);
        ExternalTool.run(folder, "pdftoppm", "-r", "40", "-png", "tones.pdf", "tones");
        assertTrue(Files.exists(folder.resolve("tones-1.png")));
    }

    /** Pixels, SVG and PDF draw the same marks: the accent's share of the picture shows that lines are there at all. */
    @Test
    void pixelsShowCurvesAndAccent() {
        Picture picture = diagram.picture();
        int ink = 0;
        int accent = 0;
        for (int y = 0; y < picture.height(); y++) {
            for (int x = 0; x < picture.width(); x++) {
                ink += picture.colour(x, y) == Palette.INK ? 1 : 0;
                accent += picture.colour(x, y) == Palette.ACCENT ? 1 : 0;
            }
        }
        assertTrue(ink > 5000, "ink pixels " + ink);
        assertTrue(accent > 1000, "accent pixels " + accent);
    }
}
