package greyground.plate.inspect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.Exposure;
import greyground.plate.Film;
import greyground.plate.FilmPatch;
import greyground.plate.PlateConditions;
import greyground.plate.PlateStates;
import greyground.plate.Resist;
import greyground.plate.SprayedGround;
import greyground.plate.Studio;
import greyground.plate.VirtualPlate;
import greyground.plate.edge.Distance;
import greyground.plate.edge.Grid;
import greyground.plate.edge.Rim;
import greyground.quantity.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The limits say in three numbers what the virtual plate works out place by place; both must agree on parallel bars. */
class FilmLimitsTest {
    private static final int WIDTH = 800;
    private static final double PITCH = 2;

    /** Four pixels: the virtual plate judges widths to about a pixel either way, and so may the bar of whole pixels. */
    private static final double SLACK_MICROMETRES = 8;

    private static PlateConditions plate(double dose, double growth, double depth) {
        Film film = new Film(0.06, 3, growth, 4);
        PlateConditions usual = Studio.etched(depth, 2);
        return new PlateConditions(
                List.of(new Exposure(dose, Exposure.Sheet.POSITIVE, film, Studio.LIGHT)),
                new Resist(30, 30, 0.0133, 1.66, 40, 20, 6),
                null,
                usual.wells(),
                usual.wipe(),
                usual.ink(),
                usual.paper());
    }

    /** A plate of parallel bars: one bar of the given width, black or clear, and the rest of 1.6 mm the other way. */
    private static PlateStates bar(PlateConditions conditions, double micrometres, boolean black) {
        int bar = (int) Math.round(micrometres / PITCH);
        int height = 8;
        byte[] packed = new byte[WIDTH / 8 * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < WIDTH; x++) {
                boolean inside = x >= 100 && x < 100 + bar;
                if (inside == black) {
                    packed[y * WIDTH / 8 + x / 8] |= (byte) (0x80 >> (x & 7));
                }
            }
        }
        return new VirtualPlate(conditions, null, PITCH).states(FilmPatch.tile(WIDTH, height, PITCH, packed));
    }

    private static boolean leavesLand(PlateStates states) {
        for (float depth : states.depthMicrometres()) {
            if (depth == 0) {
                return true;
            }
        }
        return false;
    }

    private static boolean washesOut(PlateStates states) {
        for (boolean hard : states.resist()) {
            if (!hard) {
                return true;
            }
        }
        return false;
    }

    /** Whether the pad lifts all the ink from some bitten place. */
    private static boolean wipedOut(PlateStates states) {
        for (int i = 0; i < states.depthMicrometres().length; i++) {
            if (states.depthMicrometres()[i] > 10 && states.inkMicrometres()[i] < 0.05) {
                return true;
            }
        }
        return false;
    }

    @ParameterizedTest
    @CsvSource({"2.3, 0, 20", "9, 0, 20", "9, 6, 20", "2.3, 6, 40", "4, -4, 30"})
    void agreeWithTheVirtualPlate(double dose, double growth, double depth) {
        PlateConditions conditions = plate(dose, growth, depth);
        FilmLimits limits = FilmLimits.of(conditions);
        double land = limits.leastLandMicrometres();
        assertFalse(leavesLand(bar(conditions, land - SLACK_MICROMETRES, false)), "land of " + land);
        assertTrue(leavesLand(bar(conditions, land + SLACK_MICROMETRES, false)), "land of " + land);
        double opening = limits.leastOpeningMicrometres();
        assertFalse(washesOut(bar(conditions, opening - SLACK_MICROMETRES, true)), "opening of " + opening);
        assertTrue(washesOut(bar(conditions, opening + SLACK_MICROMETRES, true)), "opening of " + opening);
        double widest = limits.widestBlackMicrometres();
        assertFalse(wipedOut(bar(conditions, widest - SLACK_MICROMETRES, true)), "black of " + widest);
        assertTrue(wipedOut(bar(conditions, widest + SLACK_MICROMETRES, true)), "black of " + widest);
    }

    @Test
    void anExposureThatHardensAllOrNothingIsRefused() {
        Refusal dim = assertThrows(Refusal.class, () -> FilmLimits.of(plate(0.5, 0, 20)));
        assertTrue(dim.getMessage().contains("behind clear film"), dim.getMessage());
        Refusal bright = assertThrows(Refusal.class, () -> FilmLimits.of(plate(1000, 0, 20)));
        assertTrue(bright.getMessage().contains("behind black film"), bright.getMessage());
    }

    /** The Boolean model's empty discs, counted on a ground of grains as the plate would have it. */
    @Test
    void gapsOfASprayedGroundAreThoseOfItsGrains() {
        SprayedGround ground = new SprayedGround(0.1, 60, 5);
        // No bite to speak of: h 1 um bridges sqrt(8 x 1.5 mm x 1 um) = 109.5 um, with next to no undercut.
        FilmLimits limits = FilmLimits.of(Studio.sprayed(1, ground));
        assertEquals(109.545, limits.criticalWidthMicrometres(), 1e-3);
        Grid grid = new Grid(3000, 3000, 4, Rim.WRAPPED);
        boolean[] grains = ground.grains(grid, 0, 0);
        float[] away = Distance.micrometres(grains, true, grid);
        int far = 0;
        for (float distance : away) {
            // Half a micrometre of undercut moves the grain's edge.
            far += distance + 0.5 >= limits.criticalWidthMicrometres() / 2 ? 1 : 0;
        }
        // A quarter of a pixel of 4 um is worth 0.0085, the chance of 5000 grains about as much.
        assertEquals((double) far / away.length, limits.groundGaps(), 0.017);
        assertTrue(limits.groundGaps() > 0.1 && limits.groundGaps() < 0.9);
    }

    @Test
    void onAnUnetchedPlateNothingIsUndercut() {
        PlateConditions conditions = Studio.unetched(2 * Math.pow(10, 0.06));
        FilmLimits limits = FilmLimits.of(conditions);
        assertEquals(0, limits.undercutMicrometres());
        assertEquals(Studio.RESIST.thicknessMicrometres(), limits.depthMicrometres());
        assertEquals(Studio.RESIST.smallestLandMicrometres(), limits.leastLandMicrometres(), 0.02);
    }

    @Test
    void deeperBitesNeedWiderLandsAndBridgeMore() {
        double land = 0;
        double critical = 0;
        for (double depth = 5; depth <= 80; depth += 5) {
            FilmLimits limits = FilmLimits.of(plate(4, 2, depth));
            assertTrue(limits.leastLandMicrometres() >= land);
            assertTrue(limits.criticalWidthMicrometres() > critical);
            land = limits.leastLandMicrometres();
            critical = limits.criticalWidthMicrometres();
        }
    }

    /** Of photogravure the screen's lands are in most danger where the picture is black. */
    @Test
    void aScreenIsJudgedWhereThePictureIsBlack() {
        FilmLimits limits = FilmLimits.of(Studio.photogravure(20), Exposure.Sheet.SCREEN);
        // Es Ts = 1 - Ei 10^-3 with Es 1.3 and Ei 1.15: Ts 0.7684, a share of 0.8819 between 10^-3 and 10^-0.06, for
        // which the normal distribution has z = 1.185.
        double blur = Math.hypot(20, Studio.LIGHT.blurMicrometres());
        assertEquals(1.185 * blur, limits.edgeShiftMicrometres(), 0.05);
    }
}
