package greyground.cli.measured;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.cli.Attempt;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.function.IntBinaryOperator;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What lies past the platemark, in millimetres as poppler draws the page: the art where there is more of it, else its mirror image. */
class BleedOnFilmIT {
    private static final int DPI = 600;
    /** Millimetres that an edge of the art, drawn large, is left aside. */
    private static final double EDGE = 0.5;

    @TempDir
    Path folder;

    /** A film of a plate of 60 x 60 mm on which a pixel of the art is a millimetre. */
    private PrintedPage film(int side, IntBinaryOperator grey, String... words) throws Exception {
        BufferedImage art = new BufferedImage(side, side, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                art.getRaster().setSample(x, y, 0, grey.applyAsInt(x, y));
            }
        }
        ImageIO.write(art, "png", folder.resolve("art.png").toFile());
        Path pdf = folder.resolve("film.pdf");
        Attempt made = PrintedPage.make(pdf, folder.resolve("art.png"), "60x60mm", DPI, (Object[]) words);
        assertTrue(made.out().contains("60"), made.out());
        return PrintedPage.of(pdf, DPI);
    }

    private static void dark(PrintedPage page, double left, double top, double right, double bottom) {
        double share =
                page.black(left + EDGE, top + EDGE, right - EDGE, bottom - EDGE).share();
        assertTrue(share > 0.5, share + " black from " + left + ", " + top + " to " + right + ", " + bottom);
    }

    private static void light(PrintedPage page, double left, double top, double right, double bottom) {
        double share =
                page.black(left + EDGE, top + EDGE, right - EDGE, bottom - EDGE).share();
        assertTrue(share < 0.1, share + " black from " + left + ", " + top + " to " + right + ", " + bottom);
    }

    /** Black along the left edge, 2 mm, and along the lower, 3 mm. */
    @Test
    void pastTheArtsEdgeItsMirrorImageLies() throws Exception {
        PrintedPage page = film(60, (x, y) -> x < 2 || y >= 57 ? 0 : 255, "--bleed", "6mm");
        dark(page, -2, 10, 2, 50);
        light(page, -6, 10, -2, 50);
        dark(page, 10, 57, 50, 63);
        light(page, 10, 63, 50, 66);
        // At the corner both.
        dark(page, -6, 57, 0, 63);
        light(page, -6, 63, -2, 66);
        // And nothing on the sides that are white.
        light(page, 60, 5, 66, 50);
        light(page, 10, -6, 55, 0);
    }

    /** Cropped from art of 80 x 80, which is black from the 3rd to the 7th pixel off the crop. */
    @Test
    void whereTheArtGoesOnBeyondTheCropItIsTheBleed() throws Exception {
        PrintedPage page = film(
                80,
                (x, y) -> (x >= 3 && x < 7) || (y >= 73 && y < 77) ? 0 : 255,
                "--crop",
                "10,10,60,60",
                "--bleed",
                "6mm");
        light(page, -3, 5, 0, 55);
        dark(page, -6, 5, -3, 55);
        light(page, 5, 60, 55, 63);
        dark(page, 5, 63, 55, 66);
        assertEquals(0, page.across(30, 1, 59).size());
    }
}
