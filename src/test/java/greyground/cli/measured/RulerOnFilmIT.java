package greyground.cli.measured;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.cli.measured.PrintedPage.Run;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a printmaker measures on a film with a ruler, in millimetres. Outside authority: poppler's pixels and boxes. The lengths are those
 * of docs/guide.md, written here anew.
 */
class RulerOnFilmIT {
    private static final int DPI = 720;

    /** One film pixel, to which everything is laid. */
    private static final double PIXEL = 25.4 / DPI + 1e-9;

    /** A quarter point. */
    private static final double LINE = 25.4 / 288;

    private static final double WIDE = 60;
    private static final double HIGH = 40;

    @TempDir
    private static Path folder;

    private static PrintedPage page;
    private static PrintedPage mirrored;

    @BeforeAll
    static void printFilms() throws Exception {
        BufferedImage white = new BufferedImage(120, 80, BufferedImage.TYPE_BYTE_GRAY);
        int[] row = new int[120 * 80];
        Arrays.fill(row, 255);
        white.getRaster().setSamples(0, 0, 120, 80, 0, row);
        ImageIO.write(white, "png", folder.resolve("white.png").toFile());
        page = printed("down");
        mirrored = printed("up");
    }

    private static PrintedPage printed(String inkSide) throws Exception {
        Path film = folder.resolve(inkSide + ".pdf");
        PrintedPage.make(film, folder.resolve("white.png"), "60x40mm", DPI, "--ink-side", inkSide);
        return PrintedPage.of(film, DPI);
    }

    private static Run only(List<Run> runs) {
        assertEquals(1, runs.size(), runs.toString());
        return runs.get(0);
    }

    private static void assertRun(double from, double to, Run run, String what) {
        assertEquals(from, run.from(), PIXEL, what);
        assertEquals(to, run.to(), PIXEL, what);
    }

    /** Crosses of 10 mm and circles of 5 mm stand 12 mm off each corner, both ways; their lines are a quarter point wide. */
    @Test
    void registerMarksStandTwelveMillimetresOffEachCorner() {
        for (double x : new double[] {-12, WIDE + 12}) {
            for (double y : new double[] {-12, HIGH + 12}) {
                String corner = "mark at " + x + ", " + y;
                assertRun(x - 5, x + 5, only(page.across(y, x - 5.5, x + 5.5)), corner);
                assertRun(y - 5, y + 5, only(page.down(x, y - 5.5, y + 5.5)), corner);
                assertEquals(LINE, only(page.down(x + 4, y - 1, y + 1)).length(), PIXEL, corner);
                assertEquals(LINE, only(page.across(y + 4, x - 1, x + 1)).length(), PIXEL, corner);
                // Half a millimetre off its middle a circle's chord is twice the root of 2.5 2.5 - 0.5 0.5; circle and
                // cross may each
                // be a pixel off.
                double chord = Math.sqrt(2.5 * 2.5 - 0.5 * 0.5);
                List<Run> row = page.across(y + 0.5, x - 4, x + 4);
                List<Run> column = page.down(x - 0.5, y - 4, y + 4);
                for (List<Run> runs : List.of(row, column)) {
                    assertEquals(3, runs.size(), corner + ": " + runs);
                }
                assertEquals(x - chord, row.get(0).from(), 2 * PIXEL, corner);
                assertEquals(x, row.get(1).middle(), PIXEL, corner);
                assertEquals(x + chord, row.get(2).to(), 2 * PIXEL, corner);
                assertEquals(y - chord, column.get(0).from(), 2 * PIXEL, corner);
                assertEquals(y, column.get(1).middle(), PIXEL, corner);
                assertEquals(y + chord, column.get(2).to(), 2 * PIXEL, corner);
            }
        }
    }

    /** The F is 4 x 6 mm, its strokes 1 mm, its arms 4 and 3 mm; it stands 18 mm right of the plate's top right corner. */
    @Test
    void theLetterFStandsRightOfThePlateAndTurnsWithTheFilm() {
        double x = WIDE + 18;
        for (double[] arm : new double[][] {{0.5, 4}, {1.75, 1}, {3, 3}, {4.5, 1}}) {
            assertRun(x, x + arm[1], only(page.across(arm[0], x - 1, x + 5)), "at " + arm[0] + " mm");
            Run turned = only(mirrored.across(arm[0], -18 - 5, -18 + 0.5));
            assertRun(-18 - arm[1], -18, turned, "turned, at " + arm[0] + " mm");
        }
        assertRun(0, 6, only(page.down(x + 0.5, -1, 8)), "upright");
        List<Run> arms = page.down(x + 2, -1, 8);
        assertEquals(2, arms.size(), arms.toString());
        assertRun(0, 1, arms.get(0), "upper arm");
        assertRun(2.5, 3.5, arms.get(1), "lower arm");
    }

    /** Rulers of 100 mm, 18 mm above and left of the plate: a tick of 2 mm each millimetre, of 3 mm each fifth, of 4 mm each tenth. */
    @Test
    void rulerTicksStandOnTheirMillimetreWithFivesAndTens() {
        assertEquals(100, only(page.across(-18 + LINE / 2, -2, 101)).length(), LINE + PIXEL);
        assertEquals(100, only(page.down(-18 + LINE / 2, -2, 101)).length(), LINE + PIXEL);
        double[][] heights = {{1, 1}, {1.9, 1}, {2.1, 5}, {2.9, 5}, {3.1, 10}, {3.9, 10}};
        for (double[] height : heights) {
            double step = height[1];
            for (List<Run> ticks :
                    List.of(page.across(-18 - height[0], -2, 101), page.down(-18 - height[0], -2, 101))) {
                assertEquals((int) (100 / step) + 1, ticks.size(), height[0] + " mm off the ruler: " + ticks);
                for (int i = 0; i < ticks.size(); i++) {
                    assertEquals(i * step, ticks.get(i).from(), PIXEL, height[0] + " mm off the ruler");
                    assertEquals(LINE, ticks.get(i).length(), PIXEL);
                }
            }
        }
        assertEquals(List.of(), page.across(-18 - 4.1, -2, 101));
        assertEquals(List.of(), page.down(-18 - 4.1, -2, 101));
    }

    /** Ticks of 5 mm, 1 mm off a bleed of 3 mm, whose inner sides are the plate's edges; ticks of 3 mm at a bevel of 2 mm. */
    @Test
    void ticksCarryThePlatesEdgesAndItsBevel() {
        double[] across = {-LINE, 2, (WIDE - LINE) / 2, WIDE - 2 - LINE, WIDE};
        double[] down = {-LINE, 2, (HIGH - LINE) / 2, HIGH - 2 - LINE, HIGH};
        for (double off : new double[] {-5, HIGH + 5}) {
            checkTicks(across, page.across(off, -1, WIDE + 1));
        }
        for (double off : new double[] {-5, WIDE + 5}) {
            checkTicks(down, page.down(off, -1, HIGH + 1));
        }
        assertRun(-9, -4, only(page.down(-LINE / 2, -10, -1)), "the edge's tick");
        assertRun(-7, -4, only(page.down(2 + LINE / 2, -10, -1)), "the bevel's tick");
    }

    private static void checkTicks(double[] wanted, List<Run> ticks) {
        assertEquals(wanted.length, ticks.size(), ticks.toString());
        for (int i = 0; i < wanted.length; i++) {
            assertEquals(wanted[i], ticks.get(i).from(), PIXEL, ticks.toString());
        }
        assertEquals(0, ticks.get(0).to(), 1e-2, "the edge itself");
    }

    /**
     * Fields of 5.5 mm, 6 mm apart, from 18 mm under the plate's left edge on, in two rows 7 mm apart, each with a tick under its middle;
     * the lower row's hold 0 to 100 % black by tens, the upper row's grow darker.
     */
    @Test
    void wedgeFieldsStandWhereTheyAreReadAndHoldTheirCoverage() {
        double upper = HIGH + 18;
        double lower = upper + 7;
        for (int i = 0; i <= 10; i++) {
            double share = page.black(6 * i + 0.1, lower + 0.1, 6 * i + 5.4, lower + 5.4)
                    .share();
            assertEquals(i / 10.0, share, i == 0 || i == 10 ? 0 : 0.01, "field " + i);
        }
        Run solid = only(page.across(lower + 2.7, 59.7, 66));
        assertRun(60, 65.5, solid, "the solid field");
        assertRun(lower, lower + 5.5, only(page.down(62, lower - 1, lower + 5.6)), "the solid field");
        double before = -1e-9;
        for (int i = 0; i <= 20; i++) {
            double share = page.black(6 * i + 0.1, upper + 0.1, 6 * i + 5.4, upper + 5.4)
                    .share();
            assertTrue(share > before - 0.005, "grey " + i + " is lighter than the one before it: " + share);
            assertEquals(
                    0,
                    page.black(6 * i + 5.55, upper, 6 * i + 5.95, upper + 5.5).share(),
                    "between fields");
            before = share;
        }
        assertTrue(before > 0.5, "the art's black: " + before);
        for (double row : new double[] {upper, lower}) {
            for (int i = 0; i <= (row == upper ? 20 : 10); i++) {
                Run tick = only(page.across(row + 6, 6 * i, 6 * i + 5.5));
                assertEquals(6 * i + 2.75, tick.middle(), PIXEL, "tick of field " + i);
            }
        }
    }
}
