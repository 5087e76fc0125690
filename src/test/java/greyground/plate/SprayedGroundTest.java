package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import greyground.plate.edge.Grid;
import greyground.plate.edge.Rim;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class SprayedGroundTest {
    private static final SprayedGround HALF = new SprayedGround(0.5, 50, 7);

    private static double meanBareChord(SprayedGround ground) {
        return 1 / (ground.grainMicrometres() * ground.grainsPerSquareMicrometre());
    }

    /** Boolean model of discs: lambda = -ln(1 - L) / (pi rho^2), chords exponential with mean 1 / (2 rho lambda). */
    @Test
    void statisticsAreThoseOfRandomDiscs() {
        assertEquals(353.017, HALF.grainsPerSquareMicrometre() * 1e6, 1e-3);
        assertEquals(56.6545, meanBareChord(HALF), 1e-4);
        assertEquals(110.10, meanBareChord(new SprayedGround(0.3, 50, 7)), 0.01);
    }

    @Test
    void coversItsShareWithChordsOfThatLength() {
        Grid grid = new Grid(2000, 2000, 4, Rim.WRAPPED);
        boolean[] grains = HALF.grains(grid, 0, 0);
        int covered = 0;
        int chords = 0;
        int longChords = 0;
        for (int y = 0; y < grid.height(); y++) {
            int run = 0;
            for (int x = 0; x < grid.width(); x++) {
                if (grains[y * grid.width() + x]) {
                    covered++;
                    chords += run > 0 ? 1 : 0;
                    longChords += run * 4 > 113.309 ? 1 : 0;
                    run = 0;
                } else {
                    run++;
                }
            }
        }
        // 64 square millimetres hold some 22 600 grains: the share's standard error is about 0.4 %.
        assertEquals(0.5, (double) covered / grid.area(), 0.015);
        // Chords shorter than half a pixel are not seen: the mean seen is longer by about that, 2 um.
        assertEquals(56.6545 + 2, (grid.area() - covered) * 4.0 / chords, 2);
        // Twice the mean: exp(-2) of all; of those seen, a little more.
        assertEquals(Math.exp(-2), (double) longChords / chords, 0.015);
    }

    @Test
    void anyWindowOfThePlateSeesTheSameGrains() {
        boolean[] whole = HALF.grains(new Grid(300, 200, 5, Rim.BOUNDED), 1000, 2000);
        boolean[] part = HALF.grains(new Grid(100, 80, 5, Rim.BOUNDED), 1000 + 5 * 120, 2000 + 5 * 70);
        for (int y = 0; y < 80; y++) {
            for (int x = 0; x < 100; x++) {
                assertEquals(whole[(y + 70) * 300 + x + 120], part[y * 100 + x], x + ", " + y);
            }
        }
    }

    @Test
    void aWrappedGroundJoinsItself() {
        Grid grid = new Grid(120, 120, 5, Rim.WRAPPED);
        boolean[] grains = HALF.grains(grid, 0, 0);
        int seam = 0;
        int inside = 0;
        for (int y = 0; y < 120; y++) {
            seam += grains[y * 120 + 119] != grains[y * 120] ? 1 : 0;
            for (int x = 0; x < 119; x++) {
                inside += grains[y * 120 + x] != grains[y * 120 + x + 1] ? 1 : 0;
            }
        }
        // Edges at the seam are as rare as anywhere else: about one pixel pair in 2 x 57 / 5.
        assertEquals(inside / 119.0, seam, 12);
    }

    @Test
    void theSeedChoosesTheGround() {
        Grid grid = new Grid(100, 100, 5, Rim.WRAPPED);
        assertEquals(
                Arrays.hashCode(HALF.grains(grid, 0, 0)),
                Arrays.hashCode(new SprayedGround(0.5, 50, 7).grains(grid, 0, 0)));
        assertNotEquals(
                Arrays.hashCode(HALF.grains(grid, 0, 0)),
                Arrays.hashCode(new SprayedGround(0.5, 50, 8).grains(grid, 0, 0)));
    }
}
