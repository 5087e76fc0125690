package greyground.cli.measured;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.cli.Attempt;
import greyground.output.ExternalTool;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Films of an invented printer that prints 100.8 mm for 100 across and 98.5 mm for 100 down. */
class ScaledPrinterIT {
    private static final double SCALE_X = 1.008;
    private static final double SCALE_Y = 0.985;
    private static final double WIDE = 75;
    private static final double HIGH = 50;
    private static final int DPI = 600;
    private static final double PITCH = 25.4 / DPI;

    @TempDir
    private static Path folder;

    @BeforeAll
    static void makeFilm() throws Exception {
        BufferedImage white = new BufferedImage(120, 80, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < 80; y++) {
            for (int x = 0; x < 120; x++) {
                white.getRaster().setSample(x, y, 0, 255);
            }
        }
        ImageIO.write(white, "png", folder.resolve("white.png").toFile());
        LocalDate day = LocalDate.of(2026, 3, 31);
        Workshop shop = Workshop.assumed()
                .with("filmPrinter.scaleX", Figure.measured(SCALE_X, day, "invented for this test"))
                .with("filmPrinter.scaleY", Figure.measured(SCALE_Y, day, "invented for this test"))
                .with("paper.shrinkXPercent", Figure.measured(0.8, day, "invented for this test"));
        Files.writeString(folder.resolve("shop.json"), WorkshopFile.text(shop));
    }

    private static Attempt film(String name) {
        return Attempt.done(
                "positive",
                folder.resolve("white.png"),
                "--plate",
                "75x50mm",
                "--resolution",
                DPI,
                "--white",
                "100%",
                "--black",
                "0%",
                "--workshop",
                folder.resolve("shop.json"),
                "--out",
                folder.resolve(name));
    }

    /** Where a register mark's level line lies: its middle in printed millimetres. */
    private record Cross(double across, double down) {}

    /** The authority is poppler: what it draws of the page, stretched as the printer does, must be of true size. */
    @Test
    void marksAndRulersPrintAtTrueSize() throws Exception {
        String out = film("film.pdf").out();
        assertTrue(
                out.contains(
                        "drawn 0.79 % smaller across and 1.52 % larger down, since this printer prints 100.8 mm for"
                                + " 100 across and 98.5 down"),
                out);
        Raster page = rendered("film.pdf");
        List<Cross> crosses = new ArrayList<>();
        double longestAcross = 0;
        for (int y = 0; y < page.getHeight(); y++) {
            int start = -1;
            for (int x = 0; x <= page.getWidth(); x++) {
                boolean black = x < page.getWidth() && page.getSample(x, y, 0) < 128;
                if (black && start < 0) {
                    start = x;
                } else if (!black && start >= 0) {
                    double length = (x - start) * PITCH * SCALE_X;
                    longestAcross = Math.max(longestAcross, length);
                    if (Math.abs(length - 10) < 2 * PITCH) {
                        crosses.add(new Cross((x + start) / 2.0 * PITCH * SCALE_X, (y + 0.5) * PITCH * SCALE_Y));
                    }
                    start = -1;
                }
            }
        }
        double line = Math.rint(25.4 / 288 / PITCH) * PITCH;
        assertEquals(100 + line, longestAcross, PITCH);
        assertEquals(100 + line, longestDown(page), PITCH);
        // Marks stand 12 mm off each corner, both ways (docs/guide.md); each line of a mark has some rows.
        assertEquals(WIDE + 24, spread(crosses.stream().map(Cross::across).toList()), PITCH);
        assertEquals(
                HIGH + 24 + line - PITCH,
                spread(crosses.stream().map(Cross::down).toList()),
                PITCH);
    }

    private static double longestDown(Raster page) {
        double longest = 0;
        for (int x = 0; x < page.getWidth(); x++) {
            int run = 0;
            for (int y = 0; y < page.getHeight(); y++) {
                run = page.getSample(x, y, 0) < 128 ? run + 1 : 0;
                longest = Math.max(longest, run * PITCH * SCALE_Y);
            }
        }
        return longest;
    }

    private static double spread(List<Double> places) {
        return places.stream().mapToDouble(each -> each).max().orElseThrow()
                - places.stream().mapToDouble(each -> each).min().orElseThrow();
    }

    private static Raster rendered(String name) throws Exception {
        ExternalTool.run(
                folder,
                "pdftoppm",
                "-r",
                String.valueOf(DPI),
                "-f",
                "1",
                "-l",
                "1",
                "-singlefile",
                "-png",
                "-gray",
                name,
                "page");
        return ImageIO.read(folder.resolve("page.png").toFile()).getRaster();
    }

    @Test
    void theFilmProofsAtTrueSize() throws Exception {
        film("proofed.pdf");
        BufferedImage stretched = copper(folder.resolve("proofed.pdf"));
        Path plain = folder.resolve("plain.pdf");
        Attempt.done(
                "positive", folder.resolve("white.png"), "--plate", "75x50mm", "--resolution", DPI, "--out", plain);
        BufferedImage unscaled = copper(plain);
        assertEquals(unscaled.getWidth(), stretched.getWidth(), 1);
        assertEquals(unscaled.getHeight(), stretched.getHeight(), 1);
    }

    private static BufferedImage copper(Path film) throws Exception {
        Path picture = folder.resolve("copper.png");
        String out =
                Attempt.done("proof", film, "--at", "254", "--copper", picture).out();
        assertFalse(out.contains("outline"), out);
        return ImageIO.read(picture.toFile());
    }

    @Test
    void theJobTakesThePapersShrinkageFromTheWorkshopAndATestPlateTakesNone() throws Exception {
        film("paper.pdf");
        assertEquals(
                0.8,
                KeptFiles.job(folder.resolve("paper.pdf")).placing().shrink().acrossPercent());
        assertEquals(
                0, KeptFiles.job(folder.resolve("paper.pdf")).placing().shrink().downPercent());
        Attempt wedge = Attempt.done(
                "wedge",
                "--kind",
                "strip",
                "--plate",
                "110x35mm",
                "--resolution",
                DPI,
                "--workshop",
                folder.resolve("shop.json"),
                "--out",
                folder.resolve("wedge.pdf"));
        assertEquals(
                0, KeptFiles.job(folder.resolve("wedge.pdf")).placing().shrink().acrossPercent());
        assertTrue(wedge.out().contains("size    drawn 0.79 % smaller across"), wedge.out());
    }
}
