package greyground.art.printed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.art.Art;
import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Screens made by Ghostscript, found and taken out of a scan. */
class PrintedScreensIT {
    @TempDir
    Path folder;

    static List<Arguments> prints() {
        return Sweep.of(IntStream.of(600, 1200)
                .boxed()
                .flatMap(pixels -> Stream.of(
                        Arguments.of(pixels, 54, 15),
                        Arguments.of(pixels, 54, 45),
                        Arguments.of(pixels, 60, 15),
                        Arguments.of(pixels, 60, 45)))
                .toList());
    }

    private static double picture(double x, double y) {
        return 0.5
                + 0.35 * Math.sin(9 * x + 4 * y * y) * Math.cos(7 * y)
                + (Math.hypot(x - 0.6, y - 0.4) < 0.2 ? 0.1 : 0);
    }

    @ParameterizedTest
    @MethodSource("prints")
    void rulingAndAngleAreFound(int pixelsPerInch, double lines, double angle) throws Exception {
        ScannedPrint print = ScannedPrint.of(
                folder, PrintedScreensIT::picture, pixelsPerInch == 600 ? 30 : 20, lines, angle, pixelsPerInch);
        List<PrintedScreen> found = ScreenSearch.in(print.plane());
        assertEquals(1, found.size());
        assertEquals(print.linesPerCentimetre(), found.get(0).linesPerCentimetre(pixelsPerInch), 0.02);
        assertEquals(print.angleDegrees(), found.get(0).angleDegrees(), 0.05);
    }

    @ParameterizedTest
    @MethodSource("prints")
    void flatTonesAreFlatAndEdgesDoNotRing(int pixelsPerInch, double lines, double angle) throws Exception {
        // A step that leans 8 degrees, tones of L* near 70 and 40.
        double lean = Math.tan(Math.toRadians(8));
        ScannedPrint print = ScannedPrint.of(
                folder, (x, y) -> x - 0.5 < lean * (y - 0.5) ? 0.49 : 0.16, 20, lines, angle, pixelsPerInch);
        GreyPlane even = without(print.plane(), ScreenSearch.in(print.plane()));
        double pale = spread(even, 0.1, 0.35);
        double dark = spread(even, 0.65, 0.9);
        double[] edge = edge(even, lean, pixelsPerInch);
        assertTrue(pale <= 0.35 && dark <= 0.35, pale + " " + dark);
        assertTrue(edge[0] <= 150, "10 to 90 % of the step within " + edge[0] + " um");
        assertTrue(edge[1] <= 0.02, "rings by " + edge[1]);
    }

    /** Width of a leaning step from 10 to 90 % in micrometres, and how far its sides overshoot, as a share of it. */
    private static double[] edge(GreyPlane plane, double lean, int pixelsPerInch) {
        double pixel = 25_400.0 / pixelsPerInch;
        double cosine = Math.cos(Math.atan(lean));
        int bins = 1000;
        double bin = 4;
        double[] sums = new double[bins];
        int[] counts = new int[bins];
        short[] row = new short[plane.width()];
        double middle = plane.width() / 2.0;
        for (int y = plane.height() / 10; y < plane.height() * 9 / 10; y++) {
            plane.readRow(y, row);
            for (int x = 0; x < plane.width(); x++) {
                double away = (x + 0.5 - middle - lean * (y + 0.5 - middle)) * cosine * pixel;
                int at = (int) Math.floor(away / bin + bins / 2.0);
                if (at >= 0 && at < bins) {
                    sums[at] += row[x] & 0xFFFF;
                    counts[at]++;
                }
            }
        }
        double[] steps =
                IntStream.range(0, bins).mapToDouble(i -> sums[i] / counts[i]).toArray();
        double pale = Arrays.stream(steps, 0, bins / 3).average().orElseThrow();
        double dark = Arrays.stream(steps, bins * 2 / 3, bins).average().orElseThrow();
        double[] shares = Arrays.stream(steps)
                .map(light -> (light - dark) / (pale - dark))
                .toArray();
        int from = 0;
        while (shares[from] > 0.9) {
            from++;
        }
        int to = from;
        while (shares[to] > 0.1) {
            to++;
        }
        double over = Math.max(
                Arrays.stream(shares).max().orElseThrow() - 1,
                -Arrays.stream(shares).min().orElseThrow());
        double first = from - (0.9 - shares[from]) / (shares[from - 1] - shares[from]);
        double last = to - (0.1 - shares[to]) / (shares[to - 1] - shares[to]);
        return new double[] {(last - first) * bin, over};
    }

    @Test
    void aPrintInColoursHasAScreenForEachInk() throws Exception {
        double[] angles = {15, 75, 0, 45};
        double[] inks = {0.45, 0.5, 0.9, 0.05};
        double[] light = null;
        int side = 0;
        for (int i = 0; i < angles.length; i++) {
            double tint = 0.35 + 0.1 * i;
            GreyPlane one = ScannedPrint.of(folder, (x, y) -> tint + 0.3 * x, 16, 60, angles[i], 1200)
                    .plane();
            side = one.width();
            light = light == null ? filled(side * side) : light;
            short[] row = new short[side];
            for (int y = 0; y < side; y++) {
                one.readRow(y, row);
                for (int x = 0; x < side; x++) {
                    double covered = 1
                            - ((row[x] & 0xFFFF) / 65_535.0 - ScannedPrint.INK)
                                    / (ScannedPrint.PAPER - ScannedPrint.INK);
                    light[y * side + x] *= 1 - covered * (1 - inks[i]);
                }
            }
        }
        short[] codes = new short[side * side];
        for (int i = 0; i < codes.length; i++) {
            codes[i] = (short) Math.rint(65_535 * Math.max(0, Math.min(1, light[i] * ScannedPrint.PAPER)));
        }
        GreyPlane print = new ArrayPlane(side, side, codes);
        List<PrintedScreen> found = ScreenSearch.in(print);
        for (double angle : new double[] {angles[0], angles[1], angles[3]}) {
            assertTrue(
                    found.stream()
                            .anyMatch(screen -> Math.abs(screen.angleDegrees() - angle) < 1
                                    && Math.abs(screen.linesPerCentimetre(1200) - 60) < 0.5),
                    angle + ": " + found);
        }
        // Yellow takes a hundredth of the light away and may be passed over.
        assertTrue(found.size() <= 4, found.toString());
        assertTrue(spread(without(print, found), 0.4, 0.42) < spread(print, 0.4, 0.42) / 20);
    }

    /** At 2.2 pixels to a dot the screen's multiples fold to where another ink's waves could be. */
    @Test
    void aScanTooCoarseShowsOneScreenAndNoAliases() throws Exception {
        ScannedPrint print = ScannedPrint.of(folder, PrintedScreensIT::picture, 23, 54, 15, 300);
        List<PrintedScreen> found = ScreenSearch.in(print.plane());
        assertEquals(1, found.size(), found.toString());
        assertEquals(print.linesPerCentimetre(), found.get(0).linesPerCentimetre(300), 0.1);
        assertTrue(found.get(0).periodPixels() < CellMeans.LEAST_PERIOD_PIXELS);
    }

    /** A page two thirds of which are lines of strokes as wide and as far apart as letters' are: the screen is found, and told to be in a part of it. */
    @Test
    void aPictureBesideTextIsFoundInItsPart() throws Exception {
        ScannedPrint print = ScannedPrint.of(folder, PrintedScreensIT::picture, 22, 54, 45, 1200);
        int side = print.plane().width();
        Random random = new Random(5);
        boolean[][] strokes = new boolean[side / 150 + 1][side];
        for (boolean[] line : strokes) {
            for (int x = random.nextInt(20); x < side; x += 12 + random.nextInt(40)) {
                Arrays.fill(line, x, Math.min(side, x + 8 + random.nextInt(6)), true);
            }
        }
        short[] row = new short[side];
        GreyPlane page = ArrayPlane.of(side, side, (x, y) -> {
            print.plane().readRow(y, row);
            boolean ink = y % 150 < 80 && strokes[y / 150][x];
            return x < side / 3 ? row[x] & 0xFFFF : (int) (65_535 * (ink ? ScannedPrint.INK : ScannedPrint.PAPER));
        });
        List<PrintedScreen> found = ScreenSearch.in(page);
        assertEquals(1, found.size(), found.toString());
        assertEquals(print.angleDegrees(), found.get(0).angleDegrees(), 0.1);
        // Places that lie half on text blur it; half a per cent in the period leaves as much of a dot's contrast, which
        // nobody sees.
        assertEquals(print.linesPerCentimetre(), found.get(0).linesPerCentimetre(1200), 0.005 * 54);
        assertTrue(found.get(0).share() < 0.6, found.toString());
    }

    @Test
    void aPageThatIsNotFlatIsFoundAndItsDriftTold() throws Exception {
        GreyPlane flat =
                ScannedPrint.of(folder, (x, y) -> 0.4, 22, 54, 15, 1200).plane();
        int side = flat.width();
        short[][] rows = new short[side][side];
        for (int y = 0; y < side; y++) {
            flat.readRow(y, rows[y]);
        }
        // As a page that bends away: 5 % narrower at its right edge than at its left.
        GreyPlane bent = ArrayPlane.of(side, side, (x, y) -> {
            double from = x * (1 - 0.025 + 0.025 * x / side);
            int left = Math.min(side - 2, (int) from);
            double part = Math.min(1, from - left);
            return (int) ((1 - part) * (rows[y][left] & 0xFFFF) + part * (rows[y][left + 1] & 0xFFFF));
        });
        List<PrintedScreen> found = ScreenSearch.in(bent);
        assertEquals(1, found.size());
        assertTrue(found.get(0).drift() > 0.01, found.toString());
        assertTrue(ScreenSearch.in(flat).get(0).drift() < 0.005);
        assertTrue(spread(without(bent, found), 0.3, 0.7) < spread(bent, 0.3, 0.7) / 20);
    }

    private static double[] filled(int count) {
        double[] all = new double[count];
        Arrays.fill(all, 1);
        return all;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "still-life.png",
                "hatched-jug.png",
                "wash-lake.png",
                "step-chart.png",
                "cat.png",
                "cup.png",
                "gravel.png",
                "leaf-alpha.png",
                "test-plate-proof.png"
            })
    void picturesWithoutAScreenHaveNone(String name) {
        Art art = Art.open(Path.of("testimages", name));
        try (GreyPlane plane = art.decode(Progress.NONE, 1L << 28, folder)) {
            assertEquals(List.of(), ScreenSearch.in(plane));
        }
    }

    /** Standard deviation of L* between two columns, as shares of the width. */
    private static double spread(GreyPlane plane, double from, double to) {
        short[] row = new short[plane.width()];
        double sum = 0;
        double squares = 0;
        int count = 0;
        for (int y = plane.height() / 10; y < plane.height() * 9 / 10; y++) {
            plane.readRow(y, row);
            for (int x = (int) (from * plane.width()); x < to * plane.width(); x++) {
                double lightness = Lightness.ofLuminance((row[x] & 0xFFFF) / 65_535.0);
                sum += lightness;
                squares += lightness * lightness;
                count++;
            }
        }
        return Math.sqrt(squares / count - sum / count * (sum / count));
    }

    private static GreyPlane without(GreyPlane art, List<PrintedScreen> screens) throws Exception {
        short[] codes = new short[art.width() * art.height()];
        new CellMeans(art, screens)
                .rows(
                        2,
                        (first, count, band) ->
                                System.arraycopy(band, 0, codes, first * art.width(), count * art.width()),
                        Progress.NONE);
        return new ArrayPlane(art.width(), art.height(), codes);
    }
}
