package greyground.art.spots;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.art.spots.Spot.Place;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SpotHealingTest {
    private static final int WIDTH = 150;
    private static final int HEIGHT = 110;

    /** A slope with grain of 2 L*. */
    private static double[] grainy() {
        SplittableRandom random = new SplittableRandom(7);
        double[] field = new double[WIDTH * HEIGHT];
        for (int i = 0; i < field.length; i++) {
            double noise = 0;
            for (int k = 0; k < 12; k++) {
                noise += random.nextDouble() - 0.5;
            }
            field[i] = 40 + 0.1 * (i % WIDTH) + 2 * noise;
        }
        return field;
    }

    private static double[] lightness(double[] field, List<Spot> spots, int bandRows, int threads) throws Exception {
        double[] healed = new double[field.length];
        SpotHealing.of(Specks.plane(WIDTH, HEIGHT, field), spots)
                .rows(
                        bandRows,
                        threads,
                        (first, count, rows) -> {
                            for (int i = 0; i < rows.length; i++) {
                                healed[first * WIDTH + i] = SpotSearch.lightness(rows[i]);
                            }
                        },
                        Progress.NONE);
        return healed;
    }

    private static Spot round(double across, double down, double width) {
        return new Spot(List.of(new Place(across, down)), width, 0, true);
    }

    @Test
    void nothingChangesWhereNoSpotIsAccepted() throws Exception {
        double[] field = grainy();
        double[] same = lightness(field, List.of(round(50, 50, 9).accepted(false)), 17, 2);
        short[] row = new short[WIDTH];
        GreyPlane plane = Specks.plane(WIDTH, HEIGHT, field);
        for (int y = 0; y < HEIGHT; y++) {
            plane.readRow(y, row);
            for (int x = 0; x < WIDTH; x++) {
                assertEquals(SpotSearch.lightness(row[x]), same[y * WIDTH + x]);
            }
        }
    }

    /** What was dark is gone, the slope goes on, and the grain is as strong as it was; nothing else changes. */
    @Test
    void healsASpotAndAScratchWithTheirGrain() throws Exception {
        double[] clean = grainy();
        double[] dirty = clean.clone();
        Spot line = new Spot(List.of(new Place(10, 20), new Place(70, 35), new Place(140, 30)), 3, 0, true);
        Spot speck = round(75, 75, 14);
        for (int i = 0; i < dirty.length; i++) {
            double x = i % WIDTH + 0.5;
            double y = i / WIDTH + 0.5;
            if (line.distance(x, y) <= 1.5 || speck.distance(x, y) <= 7) {
                dirty[i] = 5;
            }
        }
        double[] before = lightness(dirty, List.of(), 64, 1);
        double[] healed = lightness(dirty, List.of(line, speck), 64, 1);
        for (Spot spot : List.of(line, speck)) {
            double sum = 0;
            double squares = 0;
            int count = 0;
            for (int i = 0; i < healed.length; i++) {
                double x = i % WIDTH + 0.5;
                double distance = spot.distance(x, i / WIDTH + 0.5);
                if (distance <= spot.widthPixels() / 2) {
                    double off = healed[i] - 40 - 0.1 * (x - 0.5);
                    sum += off;
                    squares += off * off;
                    count++;
                }
            }
            double mean = sum / count;
            double spread = Math.sqrt(squares / count - mean * mean);
            assertEquals(0, mean, 1, "mean");
            assertTrue(spread > 1.2 && spread < 3.2, "grain of 2 L* became " + spread);
        }
        for (int i = 0; i < healed.length; i++) {
            double x = i % WIDTH + 0.5;
            double y = i / WIDTH + 0.5;
            if (line.distance(x, y) > 3.5 && speck.distance(x, y) > 9) {
                assertEquals(before[i], healed[i]);
            }
        }
    }

    @Test
    void neitherBandsNorThreadsAreSeen() throws Exception {
        double[] field = grainy();
        List<Spot> spots = List.of(round(20, 20, 8), round(27, 21, 8), round(3, 100, 12), round(149, 109, 20));
        double[] whole = lightness(field, spots, HEIGHT, 1);
        assertArrayEquals(whole, lightness(field, spots, 1, 2));
        assertArrayEquals(whole, lightness(field, spots, 13, 3));
    }

    /** Spots in corners, past the edge, over all of it, and pictures of one pixel are no fault. */
    @Test
    void oddSizesAndPlacesAreTaken() throws Exception {
        double[] field = grainy();
        lightness(field, List.of(round(0, 0, 100), round(1_000_000, 3, 5), round(150, 110, 1)), 50, 1);
        for (int side : new int[] {1, 2, 5}) {
            double[] small = new double[side * side];
            Arrays.fill(small, 50);
            SpotHealing.of(Specks.plane(side, side, small), List.of(round(0.5, 0.5, 1), round(1, 1, 100)))
                    .rows(
                            1,
                            (first, count, rows) -> {
                                for (short code : rows) {
                                    assertEquals(50, SpotSearch.lightness(code), 0.1);
                                }
                            },
                            Progress.NONE);
            SpotSearch.in(Specks.plane(side, side, small), 2, Progress.NONE);
        }
    }
}
