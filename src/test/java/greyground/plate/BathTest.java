package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.edge.DoseEdge;
import greyground.plate.edge.EdgeDistance;
import greyground.plate.edge.Grid;
import greyground.plate.edge.Normal;
import greyground.plate.edge.Rim;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

class BathTest {
    private static final double PITCH = 0.5;

    /** Depth where the signed distance (above 0 under the resist) is given in micrometres. */
    private static float[] bite(Grid grid, Bath bath, DoubleBinaryOperator underResist) {
        float[] dose = new float[grid.area()];
        boolean[] covered = new boolean[grid.area()];
        for (int i = 0; i < dose.length; i++) {
            double x = (i % grid.width() + 0.5) * grid.pitchMicrometres();
            double y = (i / grid.width() + 0.5) * grid.pitchMicrometres();
            dose[i] = (float) Normal.below(underResist.applyAsDouble(x, y) / grid.pitchMicrometres());
            covered[i] = dose[i] >= 0.5f;
        }
        return bath.depth(EdgeDistance.micrometres(covered, false, new DoseEdge(dose, 0.5), grid), 0, grid);
    }

    private static double volume(float[] depth, double pitch) {
        double sum = 0;
        for (float value : depth) {
            sum += value;
        }
        return sum * pitch * pitch;
    }

    /** Depth over undercut as Allen, Horne and Stevens 1982 define the etch factor; the circle is the isotropic case. */
    @Test
    void floorBeyondAStraightEdgeIsAQuarterEllipse() {
        assertEquals(17.3205, new Bath(20, 1).floorMicrometres(10), 1e-4);
        assertEquals(17.3205, new Bath(20, 2).floorMicrometres(5), 1e-4);
        Grid grid = new Grid(200, 8, PITCH, Rim.BOUNDED);
        Bath bath = new Bath(20, 2);
        float[] depth = bite(grid, bath, (x, y) -> x - 30.2);
        for (int x = 0; x < 200; x++) {
            double beyond = (x + 0.5) * PITCH - 30.2;
            double expected = beyond <= 0 ? 20 : bath.floorMicrometres(beyond);
            if (beyond < 9.5 || beyond > 10.1) {
                assertEquals(expected, depth[4 * 200 + x], 0.02, "at " + beyond + " um");
            }
        }
    }

    @Test
    void aFortyMicrometreOpeningOpensToSixtyAtEtchFactorTwo() {
        Grid grid = new Grid(200, 4, PITCH, Rim.BOUNDED);
        float[] depth = bite(grid, new Bath(20, 2), (x, y) -> Math.abs(x - 50.1) - 20);
        int bitten = 0;
        for (int x = 0; x < 200; x++) {
            bitten += depth[x] > 0 ? 1 : 0;
        }
        assertEquals(60, bitten * PITCH, PITCH);
        // Trench area w0 h + pi h u / 2, u = h / F.
        assertEquals(1114.16, volume(depth, PITCH) / (4 * PITCH), 1114.16 * 0.005);
    }

    @Test
    void roundOpeningHoldsItsClosedVolume() {
        Grid grid = new Grid(200, 200, PITCH, Rim.BOUNDED);
        float[] depth = bite(grid, new Bath(20, 2), (x, y) -> Math.hypot(x - 50.1, y - 49.8) - 20);
        // pi r0^2 h + 2 pi (r0 pi h u / 4 + h u^2 / 3).
        assertEquals(49_060.7, volume(depth, PITCH), 49_060.7 * 0.005);
    }

    @Test
    void latticeOfRoundOpeningsLosesTheSameToEach() {
        double pitch = 100;
        Grid grid = new Grid(400, 400, PITCH, Rim.WRAPPED);
        float[] depth =
                bite(grid, new Bath(20, 2), (x, y) -> Math.hypot(x % pitch - pitch / 2, y % pitch - pitch / 2) - 20);
        assertEquals(4 * 49_060.7, volume(depth, PITCH), 4 * 49_060.7 * 0.005);
    }

    @Test
    void landOfThirtyLeavesTenAtEtchFactorTwo() {
        Grid grid = new Grid(240, 4, PITCH, Rim.BOUNDED);
        float[] depth = bite(grid, new Bath(20, 2), (x, y) -> 15 - Math.abs(x - 60.1));
        int left = 0;
        for (int x = 0; x < 240; x++) {
            left += depth[x] == 0 ? 1 : 0;
        }
        assertEquals(10, left * PITCH, PITCH);
        float[] isotropic = bite(grid, new Bath(20, 1), (x, y) -> 15 - Math.abs(x - 60.1));
        for (float value : isotropic) {
            assertTrue(value > 0, "30 um of land does not outlive 2 x 20 um of undercut");
        }
    }

    @Test
    void aLandNarrowerThanTheResistCanHoldSinks() {
        Grid grid = new Grid(240, 40, PITCH, Rim.BOUNDED);
        float[] beyond = new float[grid.area()];
        for (int i = 0; i < beyond.length; i++) {
            beyond[i] = (float) Math.max(0, 12 - Math.abs((i % 240 + 0.5) * PITCH - 60));
        }
        Bath bath = new Bath(20, 2);
        // 24 um less 2 x 10 um leaves 4 um of copper: enough for a hold of 2 um, too little for one of 8.
        assertEquals(0, bath.depth(beyond, 2, grid)[20 * 240 + 120]);
        float sunk = bath.depth(beyond, 8, grid)[20 * 240 + 120];
        assertEquals(2 * (10 + 4 - 12), sunk, 0.6);
    }
}
