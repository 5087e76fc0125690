package greyground.film.compose;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.sheet.FilmRows;
import greyground.plan.BenchConditions;
import greyground.plate.FilmPatch;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.plate.PlateStates;
import greyground.plate.PlateView;
import greyground.plate.VirtualPlate;
import greyground.raster.Bands;
import greyground.workshop.Workshop;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines come off the plate as wide as they are drawn. */
class LineFilmIT {
    private static final double PITCH = 25_400 / 1440.0;
    private static final int SIDE = 80;

    /** A drawing, in micrometres from the middle of the film. */
    private interface Drawing {
        /** How deep a place lies within a stroke; below 0 outside. */
        double depth(double across, double down);
    }

    /** Samples whose share of ink is that of their square. */
    private record Drawn(Drawing drawing, int side, double pitch) implements FilmRows {
        private static final int FINE = 8;

        @Override
        public int width() {
            return side;
        }

        @Override
        public int height() {
            return side;
        }

        @Override
        public int bitsPerSample() {
            return 16;
        }

        @Override
        public Bands.Maker<byte[]> maker() {
            return (first, count) -> {
                byte[] rows = new byte[2 * side * count];
                for (int i = 0; i < side * count; i++) {
                    int ink = 0;
                    for (int k = 0; k < FINE * FINE; k++) {
                        double across = (i % side + (k % FINE + 0.5) / FINE - side / 2.0) * pitch;
                        double down = (first + i / side + (k / FINE + 0.5) / FINE - side / 2.0) * pitch;
                        ink += drawing.depth(across, down) >= 0 ? 1 : 0;
                    }
                    int sample = 65_535 * ink / (FINE * FINE);
                    rows[2 * i] = (byte) (sample >> 8);
                    rows[2 * i + 1] = (byte) sample;
                }
                return rows;
            };
        }
    }

    private static PlateConditions bitten(double depth) {
        return BenchConditions.ofDepth(Workshop.assumed(), new PlateProcess.EtchedFilm(), depth, true);
    }

    private static LineFilm film(LineGrowth growth, Drawing drawing) {
        double pitch = growth.pitchMicrometres();
        return new LineFilm(new Drawn(drawing, (int) (SIDE * PITCH / pitch), pitch), 32_768, growth, false);
    }

    private static Drawing disc(double radius) {
        return (x, y) -> radius - Math.hypot(x - 4.1, y + 2.6);
    }

    private static Drawing bar(double width, double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return (x, y) -> width / 2 - Math.abs(x * c + y * s - 5.3);
    }

    /** Half the distance between where the print begins and where it ends, along many straight lines through the drawing. */
    private static double printed(PlateConditions conditions, FilmRows film, double degrees, boolean round)
            throws Exception {
        int side = film.height();
        PlateStates states = new VirtualPlate(conditions)
                .statesBeyondFilm(FilmPatch.cutting(
                        side, side, SIDE * PITCH / side, 0, 0, film.maker().make(0, side)));
        float[] roots = PlateView.printRoot().of(conditions, states);
        double[] light = new double[roots.length];
        double paper = 0;
        double dark = 1;
        for (int i = 0; i < roots.length; i++) {
            light[i] = conditions.paper().reflectance(roots[i]);
            paper = Math.max(paper, light[i]);
            dark = Math.min(dark, light[i]);
        }
        double sum = 0;
        int lines = 60;
        for (int line = 0; line < lines; line++) {
            double angle = Math.toRadians(round ? 180.0 * line / lines : degrees);
            double c = Math.cos(angle);
            double s = Math.sin(angle);
            double beside = round ? 0 : (line - lines / 2.0) * 8;
            double fromX = (round ? 4.1 : 5.3 * c) - beside * s;
            double fromY = (round ? -2.6 : 5.3 * s) + beside * c;
            for (int way = -1; way <= 1; way += 2) {
                double far = 560;
                while (far > 0
                        && at(light, states, fromX + way * far * c, fromY + way * far * s) > (paper + dark) / 2) {
                    far -= 0.25;
                }
                sum += far / 2 / lines;
            }
        }
        return sum;
    }

    private static double at(double[] light, PlateStates states, double across, double down) {
        double x = (across + SIDE * PITCH / 2) / states.grid().pitchMicrometres() - 0.5;
        double y = (down + SIDE * PITCH / 2) / states.grid().pitchMicrometres() - 0.5;
        int i = (int) y * states.grid().width() + (int) x;
        double u = x - (int) x;
        double v = y - (int) y;
        int below = i + states.grid().width();
        return (1 - v) * ((1 - u) * light[i] + u * light[i + 1]) + v * ((1 - u) * light[below] + u * light[below + 1]);
    }

    /** From the thinnest that washes out and prints no wider: finer films and shallower bites hold finer strokes. */
    @ParameterizedTest
    @CsvSource({
        "40, 1440, 130",
        "40, 1440, 200",
        "40, 1440, 400",
        "40, 1440, 800",
        "40, 2880, 95",
        "12, 1440, 80",
        "12, 1440, 100",
        "12, 1440, 400",
        "12, 1440, 800",
        "12, 2880, 60"
    })
    void printsAsWideAsItIsDrawn(double depth, double dotsPerInch, double width) throws Exception {
        PlateConditions conditions = bitten(depth);
        LineGrowth growth = LineGrowth.of(conditions, Double.NaN, 25_400 / dotsPerInch);
        assertTrue(growth.thinnest() <= width, "drawn no thinner than " + growth.thinnest());
        assertEquals(width, 2 * printed(conditions, film(growth, disc(width / 2)), 0, true), 5, "circle");
        for (double degrees : new double[] {0, 7, 31, 45, 90}) {
            double found = 2 * printed(conditions, film(growth, bar(width, degrees)), degrees, false);
            assertEquals(width, found, 5, "bar at " + degrees + " degrees");
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {12, 30, 50})
    void aStrokeTooThinToWashOutIsWidenedUntilItDoes(double width) throws Exception {
        LineGrowth growth = new LineGrowth(PITCH, List.of(20.0, 24.0, 28.0, 30.0, 32.0), 40, 46);
        for (double degrees : new double[] {0, 10, 20, 45}) {
            byte[] bits = film(growth, bar(width, degrees)).maker().make(0, SIDE);
            for (int y = 25; y < 55; y++) {
                int black = 0;
                for (int x = 0; x < SIDE; x++) {
                    black += (bits[y * 10 + x / 8] >> (7 - x % 8)) & 1;
                }
                double across = black * PITCH * Math.cos(Math.toRadians(degrees));
                assertTrue(
                        across > 40 - PITCH / 2 && across < 40 + 2 * PITCH, width + " at " + degrees + ": " + across);
            }
        }
    }

    @Test
    void aGapTooNarrowForItsLandIsWidened() throws Exception {
        LineGrowth growth = new LineGrowth(PITCH, List.of(1.0, 3.0, 5.0, 7.0, 9.0), 20, 60);
        Drawing gap = (x, y) -> Math.abs(x - 2) - 10;
        byte[] bits = film(growth, gap).maker().make(0, SIDE);
        for (int y = 5; y < SIDE - 5; y++) {
            int clear = 0;
            for (int x = 10; x < SIDE - 10; x++) {
                clear += 1 - ((bits[y * 10 + x / 8] >> (7 - x % 8)) & 1);
            }
            assertEquals(60 / PITCH, clear, 1, "row " + y);
        }
    }

    @Test
    void bandsCanNotBeSeenAndAMirroredFilmIsThePlainOneFromBehind() throws Exception {
        LineGrowth growth = LineGrowth.of(bitten(40), Double.NaN, PITCH);
        Drawing drawing =
                (x, y) -> Math.max(disc(130).depth(x + 300, y), bar(95, 20).depth(x, y));
        Drawing behind = (x, y) -> drawing.depth(-x, y);
        byte[] whole = film(growth, drawing).maker().make(0, SIDE);
        for (int rows : new int[] {1, 7, 64}) {
            Bands.Maker<byte[]> maker = film(growth, drawing).maker();
            byte[] banded = new byte[whole.length];
            for (int y = 0; y < SIDE; y += rows) {
                byte[] band = maker.make(y, Math.min(rows, SIDE - y));
                System.arraycopy(band, 0, banded, y * 10, band.length);
            }
            assertArrayEquals(whole, banded, rows + " rows");
        }
        byte[] mirrored = new LineFilm(new Drawn(behind, SIDE, PITCH), 32_768, growth, true)
                .maker()
                .make(0, SIDE);
        int differ = 0;
        for (int i = 0; i < SIDE * SIDE; i++) {
            int x = SIDE - 1 - i % SIDE;
            int y = i / SIDE;
            differ +=
                    (whole[y * 10 + i % SIDE / 8] >> (7 - i % SIDE % 8) ^ mirrored[y * 10 + x / 8] >> (7 - x % 8)) & 1;
        }
        assertEquals(0, differ);
    }

    /** The film of bars and discs that an edge of 8 um asks for, against its exact width and the sheet's staircases. */
    @Test
    void theFilmIsThinnerByTheGrowth() throws Exception {
        double[] phases = java.util.stream.IntStream.range(0, 23)
                .mapToDouble(i -> i / 23.0)
                .toArray();
        LineGrowth even = new LineGrowth(
                PITCH,
                java.util.stream.IntStream.range(0, 5)
                        .mapToObj(k -> 8 + (k - 2) * PITCH / 5)
                        .toList(),
                0,
                0);
        double bar = 0;
        double disc = 0;
        for (double phase : phases) {
            double shift = phase * PITCH;
            bar += black(film(even, (x, y) -> 50 - Math.abs(x - shift)), 10, 70) * PITCH / 60 / phases.length;
        }
        // Nine phases, as the sheet has them.
        for (int phase = 0; phase < 9; phase++) {
            double across = phase % 3 * PITCH / 3;
            double down = phase / 3 * PITCH / 3;
            disc += Math.sqrt(black(film(even, (x, y) -> 200 - Math.hypot(x - across, y - down)), 0, SIDE) / Math.PI)
                    * PITCH
                    / 9;
        }
        assertEquals(84, bar, 0.5);
        assertEquals(192.03, disc, 0.3);
    }

    /** Black pixels of some rows. */
    private static double black(FilmRows film, int top, int bottom) throws Exception {
        long black = 0;
        for (byte eight : film.maker().make(top, bottom - top)) {
            black += Integer.bitCount(eight & 0xFF);
        }
        return black;
    }
}
