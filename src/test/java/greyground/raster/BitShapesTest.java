package greyground.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Shapes of packed bits against their definitions, pixel by pixel. */
class BitShapesTest {
    private static BitPlane random(int words, int rows, double density, long seed) {
        Random random = new Random(seed);
        BitPlane plane = new BitPlane(words, rows);
        for (int i = 0; i < plane.words().length; i++) {
            for (int bit = 0; bit < 64; bit++) {
                plane.words()[i] = plane.words()[i] << 1 | (random.nextDouble() < density ? 1 : 0);
            }
        }
        return plane;
    }

    @Test
    void rowsComeBackAsTheyWere() {
        Random random = new Random(3);
        for (int pixels : new int[] {1, 7, 8, 63, 64, 65, 200}) {
            byte[] row = new byte[(pixels + 7) / 8 + 5];
            random.nextBytes(row);
            BitPlane plane = new BitPlane(pixels / 64 + 3, 2);
            plane.take(1, row, 5, pixels, -64);
            for (int x = 0; x < plane.width(); x++) {
                int at = x - 64;
                boolean black = at >= 0 && at < pixels && (row[5 + at / 8] & 0x80 >> (at & 7)) != 0;
                assertEquals(black, plane.get(x, 1), pixels + " pixels, at " + at);
                assertFalse(plane.get(x, 0));
            }
            byte[] back = new byte[(pixels + 7) / 8 + 5];
            plane.give(1, 64, pixels, back, 5);
            byte[] wanted = row.clone();
            java.util.Arrays.fill(wanted, 0, 5, (byte) 0);
            wanted[wanted.length - 1] &= (byte) (0xFF00 >> (pixels - 1) % 8 + 1);
            assertArrayEquals(wanted, back, pixels + " pixels");
        }
    }

    @Test
    void countingAndFindingAgreeWithLooking() {
        BitPlane plane = random(3, 4, 0.2, 7);
        for (int from = 0; from < 192; from += 5) {
            for (int to = from; to <= 192; to += 7) {
                int count = 0;
                int first = to;
                for (int x = to - 1; x >= from; x--) {
                    count += plane.get(x, 2) ? 1 : 0;
                    first = plane.get(x, 2) ? x : first;
                }
                assertEquals(count, plane.count(2, from, to));
                assertEquals(first, plane.next(2, from, to, true));
            }
        }
    }

    @Test
    void reachIsTheDistanceToTheNearestPixelOnEitherSideOfTheSmallDisc() {
        for (double radius : new double[] {0.5, 1, 1.5, 5, 12.3, 99.9, 100, 100.1, 130}) {
            BitPlane set = random(5, 150, 0.0004, 11);
            BitPlane reached = DiscReach.within(set, radius, 20, 100);
            List<int[]> pixels = new ArrayList<>();
            for (int y = 0; y < set.rows(); y++) {
                for (int x = 0; x < set.width(); x++) {
                    if (set.get(x, y)) {
                        pixels.add(new int[] {x, y});
                    }
                }
            }
            assertTrue(pixels.size() > 5);
            for (int y = 0; y < 100; y++) {
                for (int x = 0; x < set.width(); x++) {
                    boolean near = false;
                    for (int[] pixel : pixels) {
                        double dx = pixel[0] - x;
                        double dy = pixel[1] - y - 20;
                        near |= dx * dx + dy * dy < radius * radius;
                    }
                    assertEquals(near, reached.get(x, y), "radius " + radius + " at " + x + ", " + y);
                }
            }
        }
    }

    @Test
    void regionsAreThoseOfAFloodFill() {
        for (double density : new double[] {0.05, 0.3, 0.42, 0.7}) {
            BitPlane plane = random(2, 90, density, 5);
            List<String> found = new ArrayList<>();
            Regions regions = new Regions(
                    (pixels, weight, best, x, y) -> found.add(pixels + " " + weight + " " + best + " " + x + "," + y));
            for (int y = 0; y < plane.rows(); y++) {
                int x = 0;
                while (true) {
                    int start = plane.next(y, x, plane.width(), true);
                    if (start == plane.width()) {
                        break;
                    }
                    x = plane.next(y, start, plane.width(), false);
                    // Weighed by place, valued by length.
                    regions.add(start, x, (long) start * y, x - start, start, y);
                }
                regions.endRow();
            }
            regions.end();
            found.sort(null);
            assertEquals(flooded(plane), found, "density " + density);
        }
    }

    private static List<String> flooded(BitPlane plane) {
        boolean[][] seen = new boolean[plane.rows()][plane.width()];
        List<String> found = new ArrayList<>();
        for (int y = 0; y < plane.rows(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                if (plane.get(x, y) && !seen[y][x]) {
                    found.add(flood(plane, seen, x, y));
                }
            }
        }
        found.sort(null);
        return found;
    }

    private static String flood(BitPlane plane, boolean[][] seen, int startX, int startY) {
        List<int[]> front = new ArrayList<>();
        seen[startY][startX] = true;
        front.add(new int[] {startX, startY});
        long weight = 0;
        int best = 0;
        int bestX = 0;
        int bestY = 0;
        for (int i = 0; i < front.size(); i++) {
            int x = front.get(i)[0];
            int y = front.get(i)[1];
            if (!plane.get(x - 1, y)) {
                int run = plane.next(y, x, plane.width(), false) - x;
                weight += (long) x * y;
                if (run > best || (run == best && (y < bestY || (y == bestY && x < bestX)))) {
                    best = run;
                    bestX = x;
                    bestY = y;
                }
            }
            for (int k = 0; k < 9; k++) {
                int u = x + k % 3 - 1;
                int v = y + k / 3 - 1;
                if (plane.get(u, v) && !seen[v][u]) {
                    seen[v][u] = true;
                    front.add(new int[] {u, v});
                }
            }
        }
        return front.size() + " " + weight + " " + (double) best + " " + bestX + "," + bestY;
    }

    /** A bar lives exactly if it is as wide as the disc; a square bit of it does not. */
    @Test
    void openingJudgesBarsExactly() {
        for (int bar = 1; bar <= 9; bar++) {
            for (double width : new double[] {bar - 0.01, bar, bar + 0.01}) {
                for (boolean upright : new boolean[] {false, true}) {
                    BitPlane set = new BitPlane(2, 128);
                    for (int y = 30; y < 98; y++) {
                        for (int x = 30; x < 98; x++) {
                            int across = upright ? x : y;
                            if (across >= 60 && across < 60 + bar) {
                                set.words()[y * 2 + x / 64] |= 1L << (63 - x % 64);
                            }
                        }
                    }
                    BitPlane kept = new DiscOpening(width).of(set);
                    assertEquals(width <= bar || width <= 1, kept.get(64, 64) || kept.get(60, 60), bar + ", " + width);
                }
            }
        }
    }

    @Test
    void openingTwiceIsOpeningOnceAndNeverAdds() {
        for (double width : new double[] {1.2, 2, 3.7, 6.5}) {
            BitPlane set = random(3, 100, 0.93, 2);
            DiscOpening opening = new DiscOpening(width);
            BitPlane once = opening.of(set);
            assertTrue(once.without(set).isEmpty());
            assertArrayEquals(once.words(), opening.of(once).words());
        }
    }
}
