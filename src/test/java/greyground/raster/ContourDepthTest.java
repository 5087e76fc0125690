package greyground.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ContourDepthTest {
    private static final int SIDE = 60;

    private static float[] plane(DoubleBinaryOperator value) {
        float[] plane = new float[SIDE * SIDE];
        for (int i = 0; i < plane.length; i++) {
            plane[i] = (float) value.applyAsDouble(i % SIDE, i / SIDE);
        }
        return plane;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 10, 26.565, 45, 100, 213})
    void aStraightEdgeIsMetExactlyHoweverItLies(double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        DoubleBinaryOperator depth = (x, y) -> (x - 29.3) * c + (y - 30.6) * s;
        float[] found = ContourDepth.pixels(plane((x, y) -> 700 * depth.applyAsDouble(x, y)), SIDE, SIDE, 6);
        for (int y = 10; y < SIDE - 10; y++) {
            for (int x = 10; x < SIDE - 10; x++) {
                double exact = depth.applyAsDouble(x, y);
                float here = found[y * SIDE + x];
                assertEquals(
                        Math.abs(exact) < 6 ? exact : Math.signum(exact) * 7, here, Math.abs(exact) < 6 ? 1e-3 : 1);
            }
        }
    }

    @Test
    void aDiscIsMetWithinATwentiethOfAPixel() {
        DoubleBinaryOperator depth = (x, y) -> 12.4 - Math.hypot(x - 30.2, y - 29.7);
        float[] found = ContourDepth.pixels(plane(depth), SIDE, SIDE, 5);
        for (int i = 0; i < found.length; i++) {
            double exact = depth.applyAsDouble(i % SIDE, i / SIDE);
            if (Math.abs(exact) < 5) {
                assertEquals(exact, found[i], 0.05);
            }
        }
    }

    /** Ink and paper without anything between, as a scan of one bit has it: the edge runs midway. */
    @Test
    void withoutGreysTheEdgeRunsMidway() {
        float[] found = ContourDepth.pixels(plane((x, y) -> x < 20 ? 1 : -1), SIDE, SIDE, 4);
        assertArrayEquals(new float[] {1.5f, 0.5f, -0.5f, -1.5f}, new float[] {
            found[SIDE * 30 + 18], found[SIDE * 30 + 19], found[SIDE * 30 + 20], found[SIDE * 30 + 21]
        });
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 15, 30, 45, 60, 90, 137})
    void theMiddleOfAStrokeIsAsDeepAsHalfItsWidth(double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        float[] depth =
                ContourDepth.pixels(plane((x, y) -> 3.2 - Math.abs((x - 29.8) * c + (y - 30.1) * s)), SIDE, SIDE, 8);
        int ridge = 0;
        for (int y = 12; y < SIDE - 12; y++) {
            for (int x = 12; x < SIDE - 12; x++) {
                float middle = ContourDepth.middle(depth, SIDE, y * SIDE + x);
                if (!Float.isNaN(middle)) {
                    ridge++;
                    assertEquals(3.2, middle, 0.25);
                }
            }
        }
        assertTrue(ridge >= 25, "pixels of the middle line: " + ridge);
    }
}
