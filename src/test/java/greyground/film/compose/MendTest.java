package greyground.film.compose;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.sheet.FilledPlate;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.SheetLayout;
import greyground.film.sheet.SheetTiles;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.plan.BenchConditions;
import greyground.plate.PlateProcess;
import greyground.plate.inspect.FilmFindings;
import greyground.plate.inspect.FilmInspection;
import greyground.plate.inspect.FilmLimits;
import greyground.plate.inspect.FilmPitch;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.Bands;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.ToneCurve;
import greyground.workshop.Workshop;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class MendTest {
    private static final Resolution RESOLUTION = new Resolution(1270);

    /** 1270 dpi are 50 film pixels to the millimetre; the plate is 40 x 30 mm and a pixel of art a tenth of a millimetre. */
    private static final int DOTS = 50;

    private static final FilmLimits LIMITS = FilmLimits.of(BenchConditions.ofDepth(
            Workshop.assumed(),
            new PlateProcess.EtchedFilm(),
            Workshop.assumed().usualDepthMicrometres(),
            true));

    static final Grain GRAIN = new Grain.Stochastic(180, 1);
    static final Grain DOTS_OF_HALFTONE = new Grain.Halftone(new Ruling(60), 45, Grain.DotShape.ROUND);
    private static final Map<Grain, ThresholdTile> TILES = Map.of(
            GRAIN,
            ThresholdTile.of(GRAIN, RESOLUTION),
            DOTS_OF_HALFTONE,
            ThresholdTile.of(DOTS_OF_HALFTONE, RESOLUTION));

    /** Art in millimetres of plate. */
    private interface Scene {
        boolean black(double across, double down);
    }

    record Made(SheetLayout layout, FilmComposer film, Mend mend) {}

    private static ArrayPlane drawn(Scene scene) {
        return ArrayPlane.of(400, 300, (x, y) -> scene.black((x + 0.5) / 10, (y + 0.5) / 10) ? 0 : 65_535);
    }

    static Made made(ArrayPlane art, Grain grain, double most, boolean mirrored) {
        SheetLayout layout = FilledPlate.sheet(RESOLUTION, new Size(40, 30), "mend");
        FilmContent.Picture picture = FilledPlate.picture(art, layout);
        char[] table = new char[ToneCurve.CODES];
        for (int grey = 0; grey < table.length; grey++) {
            table[grey] = (char) (most * (ToneCurve.SOLID - grey));
        }
        ToneCurve curve = new ToneCurve("even", table);
        FilmComposer film = FilmComposer.screened(layout, picture, curve, TILES.get(grain), mirrored);
        WishedBlack wished = WishedBlack.of(layout, picture, curve, ArtRange.WHOLE, mirrored);
        return new Made(layout, film, new Mend(film.sheet(), film, wished, LIMITS));
    }

    private static Made made(Scene scene) {
        return made(drawn(scene), GRAIN, 0.87, false);
    }

    private static byte[] bits(FilmRows rows) throws Exception {
        return rows.maker().make(0, rows.height());
    }

    private static boolean black(FilmRows rows, byte[] bits, int x, int y) {
        return (bits[y * rows.bytesPerRow() + x / 8] & 0x80 >> (x & 7)) != 0;
    }

    static FilmFindings inspected(Made made, FilmRows rows) throws Exception {
        PixelRect plate = made.film().sheet().plate();
        try (FilmInspection inspection = new FilmInspection(
                LIMITS,
                new FilmPitch(RESOLUTION.pitchMicrometres(), RESOLUTION.pitchMicrometres()),
                rows.width(),
                rows.height(),
                new PixelRect(plate.left(), plate.top(), plate.width(), plate.height()),
                2)) {
            Bands.inOrder(rows.height(), 100, 2, rows::maker, inspection, Progress.NONE);
            return inspection.finish();
        }
    }

    private static boolean bars(double across, double down) {
        boolean stroke = across > 5 && across < 5.4 && down > 3 && down < 27;
        boolean square = across > 15 && across < 25 && down > 10 && down < 20;
        boolean slanted = Math.abs(across - down - 14) < 0.3 && down > 3 && down < 9;
        return stroke || square || slanted;
    }

    @Test
    void strokesBecomeSolidAndWideBlacksKeepGrainWithinASolidRim() throws Exception {
        Made made = made(MendTest::bars);
        byte[] plain = bits(made.film());
        FilmRows rows = made.mend().rows();
        byte[] mended = bits(rows);
        PixelRect plate = made.layout().plate();
        // Half the depth is 1/sqrt 2 of the critical width, 0.490 mm of copper or 0.449 mm of film: a stroke of 0.4 mm
        // is all
        // solid, half a pixel of art (where its edge is drawn) aside.
        assertEquals(0.651, LIMITS.widestBlackMicrometres() / 1000, 0.002);
        for (int y = plate.top() + (int) (3.1 * DOTS); y < plate.top() + 26.9 * DOTS; y++) {
            for (int x = plate.left() + (int) (5.05 * DOTS); x < plate.left() + 5.35 * DOTS; x++) {
                assertTrue(black(rows, mended, x, y), "stroke at " + x + ", " + y);
            }
        }
        double rim = LIMITS.widestBlackMicrometres() / 3000;
        int lands = 0;
        for (int y = plate.top() + 11 * DOTS; y < plate.top() + 19 * DOTS; y++) {
            // Rim: to a third of that, from the edge of the square inwards.
            for (int x = (int) (15.05 * DOTS); x < (15 + rim - 0.05) * DOTS; x++) {
                assertTrue(black(rows, mended, plate.left() + x, y), "rim at " + x + ", " + y);
            }
            for (int x = (int) ((15 + rim + 0.1) * DOTS); x < (25 - rim - 0.1) * DOTS; x++) {
                int column = plate.left() + x;
                assertEquals(black(made.film(), plain, column, y), black(rows, mended, column, y));
                lands += black(rows, mended, column, y) ? 0 : 1;
            }
        }
        assertTrue(lands > 1000, "lands within the wide black: " + lands);
        assertEquals(0, inspected(made, rows).openBiteCount());
    }

    /** Enlarging rings: it would draw a black line along the edge of any dark tone. */
    @Test
    void darkTonesBesideWhiteAreLeftAsTheyAre() throws Exception {
        ArrayPlane art = ArrayPlane.of(400, 300, (x, y) -> x + y / 3 < 200 ? 2500 : 65_535);
        Made made = made(art, GRAIN, 0.87, false);
        assertArrayEquals(bits(made.film()), bits(made.mend().rows()));
    }

    @Test
    void aCurveWithoutAnyBlackLeavesNothingToMend() throws Exception {
        Made made = made(drawn(MendTest::bars), GRAIN, 0, false);
        assertArrayEquals(bits(made.film()), bits(made.mend().rows()));
    }

    @Test
    void reportCountsWhatChanged() throws Exception {
        Made made = made(MendTest::bars);
        MendReport report = MendReport.of(made.mend(), 2, Progress.NONE);
        assertEquals(1, report.wideBlacks());
        double inner = 10 - 2 * LIMITS.widestBlackMicrometres() / 3000;
        assertEquals(inner * inner, report.grainSquareMillimetres(), 0.1 * 4 * inner);
        byte[] plain = bits(made.film());
        byte[] mended = bits(made.mend().rows());
        PixelRect plate = made.layout().plate();
        long changed = 0;
        for (int y = plate.top(); y < plate.bottom(); y++) {
            for (int x = plate.left(); x < plate.right(); x++) {
                boolean now = black(made.film(), mended, x, y);
                boolean before = black(made.film(), plain, x, y);
                assertTrue(now || !before, "mending never clears");
                changed += now != before ? 1 : 0;
            }
        }
        assertEquals((double) changed / DOTS / DOTS, report.solidSquareMillimetres(), 1e-6);
    }

    @Test
    void marksAndWedgeStripStayAsTheyAre() throws Exception {
        Made made = made((across, down) -> true);
        byte[] plain = bits(made.film());
        byte[] mended = bits(made.mend().rows());
        PixelRect image = made.film().sheet().image();
        for (int y = 0; y < made.film().height(); y++) {
            for (int x = 0; x < made.film().width(); x++) {
                boolean inside = x >= image.left() && x < image.right() && y >= image.top() && y < image.bottom();
                if (!inside && black(made.film(), plain, x, y) != black(made.film(), mended, x, y)) {
                    assertEquals(black(made.film(), plain, x, y), black(made.film(), mended, x, y), x + ", " + y);
                }
            }
        }
        assertEquals(0, inspected(made, made.mend().rows()).openBiteCount());
    }

    @Test
    void bandsAndThreadsChangeNothing() throws Exception {
        Made made = made(MendTest::bars);
        FilmRows rows = made.mend().rows();
        byte[] whole = bits(rows);
        byte[] banded = new byte[whole.length];
        Bands.inOrder(
                rows.height(),
                300,
                3,
                rows::maker,
                (first, count, part) -> System.arraycopy(part, 0, banded, first * rows.bytesPerRow(), part.length),
                Progress.NONE);
        assertArrayEquals(whole, banded);
        // Made in slabs that all bands share, rows would agree even if a slab saw too little of the film about it.
        int top = made.layout().plate().top();
        for (int height : new int[] {1, 37, 211}) {
            for (int y = top + 480; y < top + 480 + 4 * height; y += height) {
                byte[] part = made.mend().parts().make(y, height).film();
                byte[] wanted = Arrays.copyOfRange(whole, y * rows.bytesPerRow(), (y + height) * rows.bytesPerRow());
                assertArrayEquals(wanted, part, height + " rows from " + y);
            }
        }
    }

    @Test
    void mirroredFilmIsMendedAsThePlainOneSeenFromBehind() throws Exception {
        Made plain = made(MendTest::bars);
        Made mirrored = made(drawn(MendTest::bars), GRAIN, 0.87, true);
        byte[] seen = bits(plain.mend().rows());
        byte[] behind = bits(mirrored.mend().rows());
        int width = plain.film().width();
        for (int y = 0; y < plain.film().height(); y++) {
            for (int x = 0; x < width; x++) {
                boolean one = black(plain.film(), seen, x, y);
                if (one != black(plain.film(), behind, width - 1 - x, y)) {
                    assertEquals(one, !one, "at " + x + ", " + y);
                }
            }
        }
    }

    @Test
    void tilesOfAMendedFilmShowTheMendedFilm() throws Exception {
        Made made = made(MendTest::bars);
        FilmRows rows = made.mend().rows();
        byte[] whole = bits(rows);
        List<SheetTiles.Tile> tiles = SheetTiles.of(made.film().sheet(), rows, new Size(110, 110), 0);
        assertTrue(tiles.size() > 1);
        SheetTiles.Tile tile = tiles.get(0);
        byte[] part = bits(tile.rows());
        for (int y = 0; y < tile.window().height(); y++) {
            for (int x = 0; x < tile.window().width(); x++) {
                boolean here = black(tile.rows(), part, x + tile.border(), y + tile.border());
                if (here
                        != black(
                                rows,
                                whole,
                                x + tile.window().left(),
                                y + tile.window().top())) {
                    assertEquals(here, !here, "at " + x + ", " + y);
                }
            }
        }
    }
}
