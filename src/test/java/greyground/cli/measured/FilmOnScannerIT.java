package greyground.cli.measured;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.art.Art;
import greyground.chart.TestPlate;
import greyground.cli.Attempt;
import greyground.fit.MeasuredPatch;
import greyground.output.ExternalTool;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.scan.ChartReader;
import greyground.scan.ScanChoices;
import greyground.scan.ScanReading;
import greyground.tone.Lightness;
import greyground.tone.Srgb;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The film itself on a scanner: drawn by the program, rendered by poppler, found and read among its marks and words. */
class FilmOnScannerIT {
    @TempDir
    private static Path folder;

    @Test
    void aRenderedFilmIsFoundAndItsCoveragesRead() throws Exception {
        Path film = folder.resolve("strip.pdf");
        String said = Attempt.done(
                        "wedge",
                        "--kind",
                        "strip",
                        "--plate",
                        "100x30mm",
                        "--resolution",
                        "720",
                        "--date",
                        "2026-03-31",
                        "--out",
                        film)
                .out();
        Matcher code = Pattern.compile("GG1[A-Z0-9]{26}").matcher(said);
        assertTrue(code.find(), said);
        // As on every film of this plate since version 0.2.0: films and prints that hang in workshops must go on being
        // read.
        assertEquals("GG1S0255S00N5C1JK0001214GGQ70", code.group());
        TestPlate plate = TestPlate.ofCode(code.group());
        ExternalTool.run(folder, "pdftoppm", "-r", "300", "-gray", "-png", "-f", "1", "-l", "1", "strip.pdf", "film");
        try (GreyPlane scan = Art.open(folder.resolve("film-1.png")).decode(Progress.NONE, 1L << 30, folder)) {
            ScanReading reading = ChartReader.read(
                    scan, plate, new ScanChoices(List.of(), List.of(), Optional.of(0.0), 100), Progress.NONE);
            assertFalse(reading.place().mirrored());
            // 100 mm at 300 pixels to the inch, between the plate's corners.
            double width = reading.place().x(plate.recipe().widthMicrometres(), 0)
                    - reading.place().x(0, 0);
            assertEquals(100 / 25.4 * 300, width, 0.6);
            assertEquals(plate.patches().size(), reading.patches().size());
            for (MeasuredPatch patch : reading.patches()) {
                // Poppler averages a film's pixels in their coding: black and clear wholly mixed within a pixel are the
                // code
                // 1 - c, not mixed at all the light 1 - c, and grain lies between (Jensen's inequality).
                double clear = 1 - patch.coverage();
                double mixed = Lightness.ofLuminance(Srgb.decode(clear));
                double apart = Lightness.ofLuminance(clear);
                assertTrue(patch.lightness() > mixed - 1, patch::toString);
                assertTrue(patch.lightness() < apart + 1, patch::toString);
            }
        }
    }
}
