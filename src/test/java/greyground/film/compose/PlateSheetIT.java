package greyground.film.compose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.PlanarYUVLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import greyground.chart.Area;
import greyground.chart.CornerCode;
import greyground.chart.LevelPatch;
import greyground.chart.Recipe;
import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.film.sheet.ChartFile;
import greyground.film.sheet.TextWidth;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.quantity.FilmPixels;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import greyground.quantity.Size;
import greyground.raster.PixelRect;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class PlateSheetIT {
    private static final Resolution RESOLUTION = new Resolution(1440);
    private static final Map<String, Made> MADE = new HashMap<>();
    private static ThresholdTile stochastic;
    private static ThresholdTile halftone;

    @BeforeAll
    static void makeGrains() {
        stochastic = ThresholdTile.of(new Grain.Stochastic(180, 1), RESOLUTION);
        halftone = ThresholdTile.of(
                new Grain.Halftone(Ruling.parse("ruling", "60"), 45, Grain.DotShape.ROUND), RESOLUTION);
    }

    private static TestPlate small(Recipe.Kind kind) {
        return kind == Recipe.Kind.STRIP ? plate(kind, 110, 35) : plate(kind, 60, 80);
    }

    private static Made made(Recipe.Kind kind, ThresholdTile grain) throws Exception {
        String key = kind + (grain == halftone ? " halftone" : " grain");
        Made made = MADE.get(key);
        if (made == null) {
            made = Made.of(small(kind), grain, false);
            MADE.put(key, made);
        }
        return made;
    }

    private static TestPlate plate(Recipe.Kind kind, double width, double height) {
        return TestPlate.of(Recipe.of(kind, new Size(width, height), 2, 5, 75, 180));
    }

    /** A film's samples from the plate's top to its bottom. */
    private record Made(PixelRect plate, int bytesPerRow, byte[] rows) {
        static Made of(TestPlate plate, ThresholdTile grain, boolean mirrored) throws Exception {
            FilmComposer film = TestPlateSheet.film(
                    plate,
                    FilmPixels.of(RESOLUTION),
                    Optional.of(grain),
                    1,
                    Optional.empty(),
                    mirrored,
                    List.of("test"),
                    List.of(),
                    TextWidth.GENEROUS);
            PixelRect copper = film.sheet().plate();
            return new Made(copper, film.bytesPerRow(), film.maker().make(copper.top(), copper.height()));
        }

        /** Black at a film pixel of the plate. */
        boolean black(int x, int y) {
            int column = plate.left() + x;
            return (rows[y * bytesPerRow + (column >> 3)] >> (7 - (column & 7)) & 1) == 1;
        }
    }

    private static int pixels(int micrometres) {
        return (int) Math.round(micrometres * 1440 / 25_400.0);
    }

    /** Of the wedge, and the darks that show stray light. */
    private static List<LevelPatch> fields(TestPlate plate) {
        List<LevelPatch> fields = new ArrayList<>(plate.patches());
        for (Target target : plate.targets()) {
            if (target instanceof Target.Dark dark) {
                fields.add(new LevelPatch(dark.area(), dark.coveragePerMille()));
            }
        }
        return fields;
    }

    @Test
    void everyPatchCarriesItsLevelToHalfAPercent() throws Exception {
        for (Recipe.Kind kind : List.of(Recipe.Kind.FULL, Recipe.Kind.STRIP, Recipe.Kind.EXPOSURE)) {
            TestPlate plate = small(kind);
            for (ThresholdTile grain : List.of(stochastic, halftone)) {
                Made made = made(kind, grain);
                for (LevelPatch patch : fields(plate)) {
                    Area area = patch.area();
                    long black = 0;
                    long all = 0;
                    for (int y = pixels(area.top()); y < pixels(area.bottom()); y++) {
                        for (int x = pixels(area.left()); x < pixels(area.right()); x++) {
                            black += made.black(x, y) ? 1 : 0;
                            all++;
                        }
                    }
                    assertEquals(patch.coverage(), (double) black / all, 0.005, patch + " of " + kind);
                }
            }
        }
    }

    @Test
    void barsAndTheBareStripHaveTheirSizeToAPixel() throws Exception {
        TestPlate plate = plate(Recipe.Kind.FULL, 150, 200);
        Made made = Made.of(plate, stochastic, false);
        int bars = 0;
        for (Target target : plate.targets()) {
            if (target instanceof Target.Bar || target instanceof Target.Bare) {
                Area area = target.area();
                int middleX = pixels(area.left() + area.width() / 2);
                int middleY = pixels(area.top() + area.height() / 2);
                assertEquals(area.width() * 1440 / 25_400.0, run(made, middleX, middleY, 1, 0), 1, target.toString());
                assertEquals(area.height() * 1440 / 25_400.0, run(made, middleX, middleY, 0, 1), 1, target.toString());
                bars++;
            }
        }
        assertEquals(2 * Target.Bar.WIDTHS.size() + 1, bars);
    }

    /** Length of the black run through a pixel in one direction, both ways. */
    private static int run(Made made, int x, int y, int across, int down) {
        assertTrue(made.black(x, y), "clear at " + x + "," + y);
        int length = 1;
        for (int way : new int[] {-1, 1}) {
            for (int step = way; made.black(x + step * across, y + step * down); step += way) {
                length++;
            }
        }
        return length;
    }

    /** Longest run of one colour across a field is the diameter of its dots or holes; a film pixel is 17.6 um. */
    @Test
    void dotsAndHolesHaveTheirSizeToAPixel() throws Exception {
        TestPlate plate = small(Recipe.Kind.FULL);
        Made made = made(Recipe.Kind.FULL, stochastic);
        int fields = 0;
        for (Target target : plate.targets()) {
            if (target instanceof Target.Dots dots) {
                assertEquals(Math.max(1, dots.diameter() * 1440 / 25_400.0), longest(made, dots.area(), true), 1);
                fields++;
            } else if (target instanceof Target.Holes holes) {
                assertEquals(Math.max(1, holes.diameter() * 1440 / 25_400.0), longest(made, holes.area(), false), 1);
                fields++;
            }
        }
        assertEquals(2 * Target.Dots.DIAMETERS.size(), fields);
    }

    private static int longest(Made made, Area area, boolean black) {
        int longest = 0;
        for (int y = pixels(area.top()) + 1; y < pixels(area.bottom()) - 1; y++) {
            int run = 0;
            for (int x = pixels(area.left()) + 1; x < pixels(area.right()) - 1; x++) {
                run = made.black(x, y) == black ? run + 1 : 0;
                longest = Math.max(longest, run);
            }
        }
        return longest;
    }

    @Test
    void linePairsAreHalfBlackAndCountTheirPeriods() throws Exception {
        TestPlate plate = small(Recipe.Kind.FULL);
        Made made = made(Recipe.Kind.FULL, stochastic);
        for (Target target : plate.targets()) {
            if (target instanceof Target.Lines lines) {
                Area area = lines.area();
                int edges = 0;
                int length = pixels(lines.upright() ? area.width() : area.height()) - 2;
                boolean before = false;
                for (int i = 1; i <= length; i++) {
                    boolean black = lines.upright()
                            ? made.black(pixels(area.left()) + i, pixels(area.top()) + 5)
                            : made.black(pixels(area.left()) + 5, pixels(area.top()) + i);
                    edges += black && !before ? 1 : 0;
                    before = black;
                }
                double periods = length * RESOLUTION.pitchMicrometres() / lines.period();
                assertEquals(periods, edges, 1.01, lines.toString());
            }
        }
    }

    @Test
    void aMirroredFilmIsThePlainFilmSeenFromBehind() throws Exception {
        TestPlate plate = small(Recipe.Kind.FULL);
        Made plain = made(Recipe.Kind.FULL, stochastic);
        Made mirrored = Made.of(plate, stochastic, true);
        int width = plain.plate().width();
        for (int y = 0; y < plain.plate().height(); y++) {
            for (int x = 0; x < width; x++) {
                if (plain.black(x, y) != mirrored.black(width - 1 - x, y)) {
                    assertEquals(plain.black(x, y), mirrored.black(width - 1 - x, y), x + "," + y);
                }
            }
        }
    }

    /** As a scan at 288 pixels per inch sees the film: five film pixels a scan pixel, and a blur of one scan pixel either way. */
    @Test
    void everyCodeOnTheFilmReads() throws Exception {
        for (ThresholdTile grain : List.of(stochastic, halftone)) {
            for (Recipe.Kind kind : List.of(Recipe.Kind.FULL, Recipe.Kind.STRIP, Recipe.Kind.EXPOSURE)) {
                TestPlate plate = small(kind);
                Made made = made(kind, grain);
                for (CornerCode code : plate.codes()) {
                    assertEquals(code.text(), read(made, code));
                }
            }
        }
    }

    /** A reader reduces its scan where modules are wide, so that the grain within them is not taken for modules. */
    private static String read(Made made, CornerCode code) throws Exception {
        Area area = code.area().grown(CornerCode.QUIET * code.area().width() / CornerCode.MODULES);
        int step = Math.max(5, pixels(code.area().width() / CornerCode.MODULES) / 5);
        int width = pixels(area.width()) / step;
        int height = pixels(area.height()) / step;
        byte[] grey = new byte[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int black = 0;
                for (int dy = -step; dy < 2 * step; dy++) {
                    for (int dx = -step; dx < 2 * step; dx++) {
                        int column = pixels(area.left()) + step * x + dx;
                        int row = pixels(area.top()) + step * y + dy;
                        black += column >= 0 && row >= 0 && made.black(column, row) ? 1 : 0;
                    }
                }
                grey[y * width + x] = (byte) (255 - black * 255 / (9 * step * step));
            }
        }
        return new QRCodeReader()
                .decode(
                        new BinaryBitmap(new HybridBinarizer(
                                new PlanarYUVLuminanceSource(grey, width, height, 0, 0, width, height, false))),
                        Map.of(DecodeHintType.TRY_HARDER, true))
                .getText();
    }

    /** Coarse dots get wide modules. */
    @Test
    void codesOfACoarseGrainReadToo() throws Exception {
        for (Grain grain : List.of(
                new Grain.Stochastic(300, 1),
                new Grain.Stochastic(420, 1),
                new Grain.Halftone(Ruling.parse("ruling", "20"), 45, Grain.DotShape.ROUND))) {
            TestPlate plate = TestPlate.of(
                    Recipe.of(Recipe.Kind.STRIP, new Size(140, 40), 2, 5, 75, GrainPatches.spacingMicrometres(grain)));
            Made made = Made.of(plate, ThresholdTile.of(grain, RESOLUTION), false);
            for (CornerCode code : plate.codes()) {
                assertEquals(code.text(), read(made, code), grain.toString());
            }
        }
    }

    @Test
    void theChartFileGivesThePlateBack() {
        for (Recipe.Kind kind : List.of(Recipe.Kind.FULL, Recipe.Kind.STRIP, Recipe.Kind.EXPOSURE)) {
            TestPlate plate = plate(kind, 150, 60);
            assertEquals(plate, ChartFile.read(ChartFile.text(plate)));
        }
    }

    @Test
    void rowsAsPrintedInThePlanNameEveryPatch() {
        TestPlate plate = plate(Recipe.Kind.FULL, 60, 80);
        int named = TestPlateSheet.rows(plate).stream()
                .mapToInt(row -> row.split(" ").length - 1)
                .sum();
        assertEquals(plate.patches().size(), named);
    }
}
