package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.ArtFields;
import greyground.film.job.JobFields;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CropFrameTest {
    private static final CropFrame FRAME = new CropFrame(new Viewport.Area(100, 50, 200, 100), 400, 300);

    @Test
    void aGripPullsItsOwnSidesOnly() {
        CropFrame pulled = FRAME.pulled(new CropFrame.Grip(1, 0), 30, 999, 0);
        assertEquals(new Viewport.Area(100, 50, 230, 100), pulled.area());
        assertEquals(
                new Viewport.Area(90, 55, 210, 95),
                FRAME.pulled(new CropFrame.Grip(-1, -1), -10, 5, 0).area());
    }

    @Test
    void theMiddleMovesItWithoutChangingIt() {
        assertEquals(
                new Viewport.Area(0, 200, 200, 100),
                FRAME.pulled(CropFrame.Grip.MIDDLE, -500, 500, 0).area());
    }

    @Test
    void theNearestGripInReachIsTaken() {
        assertEquals(Optional.of(new CropFrame.Grip(1, -1)), FRAME.at(304, 47, 9));
        assertEquals(Optional.of(new CropFrame.Grip(0, 1)), FRAME.at(198, 152, 9));
        assertEquals(Optional.empty(), FRAME.at(150, 90, 9));
    }

    /** However it is pulled: within the art, never empty, at the proportion that is kept, and the side across from the grip stays. */
    @Test
    void howeverItIsPulledItStaysAFragment() {
        Random random = new Random(5);
        for (int i = 0; i < 4000; i++) {
            CropFrame.Grip grip = FRAME.grips().get(random.nextInt(8));
            double proportion = random.nextBoolean() ? 0 : 0.4 + 2 * random.nextDouble();
            CropFrame pulled = FRAME.pulled(
                    grip, (random.nextDouble() - 0.5) * 900, (random.nextDouble() - 0.5) * 900, proportion);
            Viewport.Area area = pulled.area();
            String what = grip + " " + proportion + " " + area;
            assertTrue(area.left() >= -1e-9 && area.left() + area.width() <= 400 + 1e-9, what);
            assertTrue(area.top() >= -1e-9 && area.top() + area.height() <= 300 + 1e-9, what);
            assertTrue(area.width() > 0.5 && area.height() > 0.5, what);
            if (proportion > 0) {
                assertEquals(proportion, area.width() / area.height(), 1e-9, what);
            }
            if (grip.across() < 0) {
                assertEquals(300, area.left() + area.width(), 1e-9, what);
            }
            if (grip.down() > 0) {
                assertEquals(50, area.top(), 1e-9, what);
            }
        }
    }

    @Test
    void cutToAPlatesShapeItKeepsItsMiddle() {
        Viewport.Area area = FRAME.cutTo(1).area();
        assertEquals(new Viewport.Area(150, 50, 100, 100), area);
    }

    /** A horizon that falls 3 degrees to the right is level after a turn of 3 degrees back; an upright is taken as such. */
    @Test
    void aLineAlongWhatShouldBeLevelStraightens() {
        double slope = Math.tan(Math.toRadians(3));
        assertEquals(-3, levelled(100, 100 * slope));
        assertEquals(-3, levelled(-100, -100 * slope), "drawn the other way");
        assertEquals(-3, levelled(-100 * slope, 100), "an upright");
        assertEquals(3, levelled(100, -100 * slope));
    }

    private static double levelled(double across, double down) {
        return ArtFields.ROTATE.of(Turning.levelled(JobFields.usual(), across, down));
    }
}
