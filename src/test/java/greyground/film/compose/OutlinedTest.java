package greyground.film.compose;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.compose.Outlined.Lie;
import greyground.film.job.ArtChoice;
import greyground.film.job.ArtOnPlate;
import greyground.film.job.Outline;
import greyground.film.job.Outlines;
import greyground.film.job.Outlines.Tear;
import greyground.film.job.Placing;
import greyground.film.sheet.SheetLayout;
import greyground.film.sheet.TextWidth;
import greyground.grain.ThresholdTile;
import greyground.quantity.FilmPixels;
import greyground.quantity.Offset;
import greyground.quantity.PaperShrink;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.PixelRect;
import greyground.tone.ToneCurve;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutlinedTest {
    private static final Size PLATE = new Size(60, 40);

    private static Outlines outlines(Outline outline, double fade, double tear, boolean black) {
        return new Outlines(Optional.empty(), Optional.of(outline), fade, new Tear(tear, 1), black);
    }

    /** Tenths of a millimetre over the plate. */
    private static Outlined tenths(Outlines outlines) {
        return Outlined.of(outlines, PLATE, 2, new Lie(0.05, 0.05, 0.1, 0.1, 600, false), 50_000, 1000)
                .orElseThrow();
    }

    private static int[][] shares(Outlined outlined, int rows) {
        Outlined.Rows maker = outlined.rows();
        int[][] shares = new int[rows][];
        for (int y = 0; y < rows; y++) {
            shares[y] = maker.row(y).clone();
        }
        return shares;
    }

    private static double area(Outlines outlines) {
        double sum = 0;
        for (int[] row : shares(tenths(outlines), 400)) {
            for (int share : row) {
                sum += Math.max(0, share) / (double) Outlined.WHOLE;
            }
        }
        return sum / 100;
    }

    /** Areas by geometry: an ellipse, round and cut corners, a bow tie by even and odd. */
    @Test
    void shapesHaveTheirArea() {
        Optional<Outline.Box> box = Optional.of(new Outline.Box(10, 5, 40, 30));
        assertEquals(Math.PI * 20 * 15, area(outlines(new Outline.Ellipse(box), 0, 0, false)), 0.5);
        // What a fade of 4 mm adds to a convex shape: 4 pi times the integral of u S(1/2 - u / 4) from 0 to 2, which is
        // 0.2.
        assertEquals(Math.PI * (300 + 0.8), area(outlines(new Outline.Ellipse(box), 4, 0, false)), 0.1);
        assertEquals(1200, area(outlines(new Outline.Rectangle(Outline.Corner.SQUARE, 0, box), 0, 0, false)), 1e-6);
        assertEquals(
                1200 - (4 - Math.PI) * 64,
                area(outlines(new Outline.Rectangle(Outline.Corner.ROUND, 8, box), 0, 0, false)),
                0.5);
        assertEquals(
                1200 - 2 * 64, area(outlines(new Outline.Rectangle(Outline.Corner.CUT, 8, box), 0, 0, false)), 0.5);
        Outline tie = new Outline.Polygon(
                List.of(new Offset(10, 5), new Offset(50, 35), new Offset(50, 5), new Offset(10, 35)));
        assertEquals(600, area(outlines(tie, 0, 0, false)), 0.5);
        assertEquals(
                List.of(Math.PI * 20 * 15 / 2400, 1 - Math.PI * 20 * 15 / 2400),
                means(outlines(new Outline.Ellipse(box), 0, 0, false)),
                "to a thousandth");
    }

    private static List<Double> means(Outlines outlines) {
        double[] means = Outlined.means(outlines, PLATE);
        double truth = Math.PI * 20 * 15 / 2400;
        assertEquals(truth, means[0], 1e-3);
        assertEquals(1, means[0] + means[1], 1e-9);
        return List.of(truth, 1 - truth);
    }

    /** t² (3 - 2t) of the distance: 4 mm wide, a millimetre inside 0.84375, a millimetre outside 0.15625. */
    @Test
    void theFadeIsAsWideAsItSays() {
        Outline half =
                new Outline.Rectangle(Outline.Corner.SQUARE, 0, Optional.of(new Outline.Box(20.05, -50, 90, 200)));
        int[] row = shares(tenths(outlines(half, 4, 0, false)), 201)[200];
        double[][] expected = {{20, 0.5}, {21, 0.84375}, {19, 0.15625}, {22, 1}, {18, 0}, {40, 1}, {3, 0}};
        for (double[] each : expected) {
            assertEquals(each[1], row[(int) (10 * each[0])] / (double) Outlined.WHOLE, 2e-3, each[0] + " mm");
        }
    }

    /** An edge torn by 1 mm stays within 1 mm of the drawn one, uses most of that, and leaves one piece. */
    @Test
    void aTornEdgeStaysNearAndWhole() {
        Outline box = new Outline.Rectangle(Outline.Corner.SQUARE, 0, Optional.of(new Outline.Box(10, 10, 40, 20)));
        int[][] torn = shares(tenths(outlines(box, 0, 1, false)), 400);
        double most = 0;
        for (int y = 0; y < 400; y++) {
            int changes = 0;
            for (int x = 0; x < 600; x++) {
                double across = x / 10.0 + 0.05;
                double down = y / 10.0 + 0.05;
                double inside = Math.min(Math.min(across - 10, 50 - across), Math.min(down - 10, 30 - down));
                boolean whole = torn[y][x] == Outlined.WHOLE;
                if (whole != inside > 0) {
                    most = Math.max(most, Math.abs(inside));
                }
                changes += x > 0 && torn[y][x] != torn[y][x - 1] ? 1 : 0;
            }
            assertTrue(y < 112 || y > 288 || changes == 2, "row " + y + " changes " + changes + " times");
        }
        assertTrue(most > 0.4 && most < 1.1, "strays by " + most);
        int[][] other = shares(tenths(new Outlines(Optional.empty(), Optional.of(box), 0, new Tear(1, 2), false)), 400);
        assertTrue(!java.util.Arrays.deepEquals(torn, other), "another seed, another edge");
    }

    /** A round edge is torn as a straight one is: distances from its centre are those of a circle of 12 mm, strayed. */
    @Test
    void aRoundEdgeIsTornToo() {
        Outline circle = new Outline.Ellipse(Optional.of(new Outline.Box(18, 8, 24, 24)));
        int[][] torn = shares(tenths(outlines(circle, 0, 1, false)), 400);
        double most = 0;
        for (int y = 0; y < 400; y++) {
            int changes = 0;
            for (int x = 0; x < 600; x++) {
                double inside = 12 - Math.hypot(x / 10.0 + 0.05 - 30, y / 10.0 + 0.05 - 20);
                if ((torn[y][x] == Outlined.WHOLE) != inside > 0) {
                    most = Math.max(most, Math.abs(inside));
                }
                changes += x > 0 && torn[y][x] != torn[y][x - 1] ? 1 : 0;
            }
            assertTrue(y < 100 || y > 300 || changes == 2, "row " + y + " changes " + changes + " times");
        }
        assertTrue(most > 0.3 && most < 1.1, "strays by " + most);
    }

    @Test
    void pastAPlateOfItsOwnShapeTheFilmIsClear() {
        Outlines round =
                new Outlines(Optional.of(new Outline.Ellipse(Optional.empty())), Optional.empty(), 0, Tear.NONE, true);
        int[][] shares = shares(tenths(round), 400);
        assertEquals(Outlined.PAST, shares[10][10]);
        assertEquals(Outlined.WHOLE, shares[200][1], "on the plate's edge");
        assertEquals(Outlined.WHOLE, shares[200][300]);
        assertEquals(0, tenths(round).coverage(60_000, Outlined.PAST));
    }

    @Test
    void rowsAreAFunctionOfTheirPlace() {
        Outlined outlined = tenths(outlines(new Outline.Ellipse(Optional.empty()), 12, 0.7, false));
        int[][] whole = shares(outlined, 400);
        Outlined.Rows maker = outlined.rows();
        for (int y : new Random(3).ints(200, 0, 400).toArray()) {
            assertArrayEquals(whole[y], maker.row(y), "row " + y);
        }
        int[] behind = outlined.mirrored().rows().row(77);
        for (int x = 0; x < 600; x++) {
            assertEquals(whole[77][599 - x], behind[x]);
        }
    }

    /** Black by the shifted threshold exactly where the exact mixture passes the threshold and is no lighter than the lightest that holds. */
    @Test
    void theThresholdIsThatOfTheMixture() {
        Random random = new Random(5);
        for (boolean black : new boolean[] {false, true}) {
            Outlined outlined = tenths(outlines(new Outline.Ellipse(Optional.empty()), 3, 0, black));
            for (int i = 0; i < 200_000; i++) {
                int threshold = random.nextInt(65_535);
                int share = random.nextInt(Outlined.WHOLE);
                int coverage = random.nextInt(65_536);
                long mixed = (long) share * coverage + (long) (Outlined.WHOLE - share) * outlined.outside();
                boolean wanted = mixed > (long) threshold * Outlined.WHOLE
                        && mixed > (long) (outlined.least() - 1) * Outlined.WHOLE;
                assertEquals(wanted, coverage > outlined.threshold(threshold, share), threshold + " " + share);
            }
        }
    }

    /** Whole inside, clear or black outside, and mirrored and in parts the same. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aFilmEndsAtItsOutline(boolean continuous) throws Exception {
        SheetLayout layout = SheetLayout.of(
                FilmPixels.of(new Resolution(150)), PLATE, 2, 1, Optional.empty(), List.of("x"), TextWidth.GENEROUS);
        int[] codes = new Random(8).ints(90 * 60, 0, 65_536).toArray();
        ArrayPlane art = ArrayPlane.of(90, 60, (x, y) -> codes[y * 90 + x]);
        ArtOnPlate placed = ArtOnPlate.of(
                90,
                60,
                ArtChoice.Crop.ALL,
                Placing.Fit.FILL,
                PaperShrink.NONE,
                layout.pixels(),
                layout.plate(),
                layout.bleed());
        char[] table = new char[ToneCurve.CODES];
        for (int grey = 0; grey < table.length; grey++) {
            table[grey] = (char) (65_535 - grey);
        }
        ToneCurve curve = new ToneCurve("identity", table);
        char[] thresholds = new char[64 * 64];
        for (int i = 0; i < thresholds.length; i++) {
            thresholds[i] = (char) (i * 65_535L / thresholds.length);
        }
        ThresholdTile grain = new ThresholdTile(64, 64, thresholds);
        double pixel = 60.0 / layout.plate().width();
        Lie lie = new Lie(
                (0.5 - layout.plate().left()) * pixel,
                (0.5 - layout.plate().top()) * pixel,
                pixel,
                pixel,
                layout.width(),
                false);
        Optional<Outlined> outlined = Outlined.of(
                outlines(new Outline.Ellipse(Optional.of(new Outline.Box(10, 5, 40, 30))), 6, 0, false),
                PLATE,
                2,
                lie,
                0,
                500);
        List<FilmComposer> films = new ArrayList<>();
        for (FilmContent content :
                List.of(new FilmContent.Picture(art, placed), new FilmContent.Picture(art, placed, outlined))) {
            for (boolean mirrored : new boolean[] {false, true}) {
                films.add(
                        continuous
                                ? FilmComposer.continuous(layout, content, curve, 8, mirrored)
                                : FilmComposer.screened(layout, content, curve, grain, mirrored));
            }
        }
        int[][] shares = shares(outlined.orElseThrow(), layout.height());
        byte[] all = films.get(0).maker().make(0, layout.height());
        byte[] ended = films.get(2).maker().make(0, layout.height());
        byte[] behind = films.get(3).maker().make(0, layout.height());
        PixelRect image = placed.image();
        int kept = 0;
        int fading = 0;
        for (int y = image.top(); y < image.bottom(); y++) {
            for (int x = image.left(); x < image.right(); x++) {
                int before = sample(films.get(0), all, x, y);
                int after = sample(films.get(2), ended, x, y);
                assertEquals(after, sample(films.get(3), behind, layout.width() - 1 - x, y));
                if (shares[y][x] == Outlined.WHOLE) {
                    assertEquals(before, after);
                    kept++;
                } else if (shares[y][x] == 0) {
                    assertEquals(0, after);
                } else {
                    assertTrue(after <= before);
                    fading++;
                }
            }
        }
        assertTrue(kept > 5000 && fading > 5000, kept + " " + fading);
        PixelRect part = new PixelRect(image.left() + 37, image.top() + 21, 99, 80);
        byte[] seen = films.get(2).within(part).maker().make(part.top(), 80);
        for (int y = 0; y < 80; y++) {
            for (int x = part.left(); x < part.right(); x++) {
                assertEquals(sample(films.get(2), ended, x, part.top() + y), sample(films.get(2), seen, x, y));
            }
        }
    }

    private static int sample(FilmComposer film, byte[] rows, int x, int y) {
        int row = y * film.bytesPerRow();
        return film.bitsPerSample() == 1 ? rows[row + x / 8] >> (7 - x % 8) & 1 : rows[row + x] & 0xFF;
    }
}
