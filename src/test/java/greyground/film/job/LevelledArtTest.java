package greyground.film.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.PaperShrink;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.Bands;
import greyground.raster.Progress;
import greyground.raster.TurnedArt;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What straightened art covers, against the turned pixels themselves: black art, so that every white pixel is a blank one. */
class LevelledArtTest {
    private static ArtChoice straightened(double degrees) {
        ArtChoice whole = ArtChoice.WHOLE;
        return new ArtChoice("", "", 1, whole.crop(), 0, degrees, whole.white(), whole.black(), whole.hand());
    }

    private static Placing placing(Placing.Fit fit, double bleed, PaperShrink shrink) {
        Placing usual = Placing.USUAL;
        return new Placing(
                fit,
                bleed,
                usual.bevelMillimetres(),
                shrink,
                usual.readingSide(),
                Optional.empty(),
                usual.tiled(),
                usual.strip(),
                usual.outlines());
    }

    /** Blank pixels above and left of each place of black art once straightened. */
    private static int[][] blanks(int width, int height, double degrees) throws Exception {
        ArrayPlane art = ArrayPlane.of(width, height, (x, y) -> 0);
        int[][] sums = new int[height + 1][width + 1];
        Bands.Taker<short[]> sum = (first, count, band) -> {
            for (int y = first; y < first + count; y++) {
                for (int x = 0; x < width; x++) {
                    int blank = band[(y - first) * width + x] == 0 ? 0 : 1;
                    sums[y + 1][x + 1] = sums[y][x + 1] + sums[y + 1][x] - sums[y][x] + blank;
                }
            }
        };
        new TurnedArt(art, 0, degrees).rows(1, sum, Progress.NONE);
        return sums;
    }

    private static boolean clear(int[][] sums, int left, int top, int right, int bottom) {
        return sums[bottom][right] - sums[top][right] - sums[bottom][left] + sums[top][left] == 0;
    }

    /** The widest rectangle of a proportion, anywhere, without a blank pixel. */
    private static int widest(int[][] sums, double proportion) {
        int least = 1;
        int most = sums[0].length - 1;
        while (least < most) {
            int width = (least + most + 1) / 2;
            int height = (int) Math.max(1, Math.round(width / proportion));
            boolean found = false;
            for (int top = 0; top + height < sums.length && !found; top++) {
                for (int left = 0; left + width < sums[0].length && !found; left++) {
                    found = clear(sums, left, top, left + width, top + height);
                }
            }
            least = found ? width : least;
            most = found ? most : width - 1;
        }
        return least;
    }

    @ParameterizedTest
    @CsvSource({
        "600, 400, 7.6, 150, 100, 3, 0, 0",
        "600, 400, -7.6, 100, 150, 0, 0, 0",
        "400, 600, 0.3, 100, 150, 0, 2, 0.5",
        "400, 600, 31, 200, 50, 6, 0, 0",
        "500, 500, 45, 100, 100, 3, 0, 0",
        "700, 120, -44, 90, 80, 0, 0, 1",
    })
    void theFragmentIsTheLargestWithoutABlankPixel(
            int width,
            int height,
            double degrees,
            double across,
            double down,
            double bleed,
            double shrinkX,
            double shrinkY)
            throws Exception {
        int[][] sums = blanks(width, height, degrees);
        Size plate = new Size(across, down);
        PaperShrink shrink = new PaperShrink(shrinkX, shrinkY);
        Placing placing = placing(Placing.Fit.FILL, bleed, shrink);
        LevelledArt art = LevelledArt.of(width, height, straightened(degrees));
        ArtChoice.Crop crop = art.covered(plate, placing);
        assertFalse(art.leavesBlank(crop, placing, plate));
        // What the film shows of the art, bleed and the enlarging cubic's reach included.
        double shown = crop.width() * width * (across + 2 * bleed) / across;
        double tall = crop.height() * height * (down + 2 * bleed) / down;
        assertTrue(clear(
                sums,
                (int) Math.floor((width - shown) / 2 - 1),
                (int) Math.floor((height - tall) / 2 - 1),
                (int) Math.ceil((width + shown) / 2 + 1),
                (int) Math.ceil((height + tall) / 2 + 1)));
        // The dried print has the plate's proportion, shrunk.
        assertEquals(
                across * (1 - shrinkX / 100) / (down * (1 - shrinkY / 100)),
                crop.width() * width / (crop.height() * height),
                1e-9);
        // Two art pixels of reach on each side are all that it gives away, along the side that meets the art's edge.
        int widest = widest(sums, shown / tall);
        double given = 4 * Math.max(1, shown / tall) + 3;
        assertTrue(shown <= widest + 1 && shown >= widest - given, shown + " of " + widest);
    }

    @Test
    void levelArtIsCoveredWhole() {
        LevelledArt level = LevelledArt.of(300, 200, straightened(0));
        assertEquals(ArtChoice.Crop.ALL, level.covered(new Size(100, 50), Placing.USUAL));
        assertFalse(level.leavesBlank(ArtChoice.Crop.ALL, Placing.USUAL, new Size(100, 50)));
    }

    /** Filling cuts off a turned corner or not; past the frame the art's mirror image lies, blank or not. */
    @Test
    void blankCornersOfThePlateAreTold() {
        LevelledArt art = LevelledArt.of(600, 400, straightened(7.6));
        Size plate = new Size(150, 100);
        assertTrue(art.leavesBlank(ArtChoice.Crop.ALL, placing(Placing.Fit.FILL, 3, PaperShrink.NONE), plate));
        assertTrue(art.leavesBlank(ArtChoice.Crop.ALL, placing(Placing.Fit.WHOLE, 3, PaperShrink.NONE), plate));
        ArtChoice.Crop middle = new ArtChoice.Crop(0.2, 0.2, 0.6, 0.6);
        assertFalse(art.leavesBlank(middle, placing(Placing.Fit.FILL, 3, PaperShrink.NONE), plate));
    }
}
