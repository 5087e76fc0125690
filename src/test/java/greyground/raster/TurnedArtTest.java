package greyground.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TurnedArtTest {
    @Test
    void quarterTurnsCopyPixelsClockwise() throws Exception {
        ArrayPlane art = ArrayPlane.of(3, 2, (x, y) -> 10 * y + x);
        // 0 1 2 / 10 11 12 turned clockwise reads 10 0 / 11 1 / 12 2.
        assertArrayEquals(
                new short[] {10, 0, 11, 1, 12, 2}, turned(art, 1, 0, 1).codes());
        assertArrayEquals(
                new short[] {12, 11, 10, 2, 1, 0}, turned(art, 2, 0, 1).codes());
        assertArrayEquals(
                new short[] {2, 12, 1, 11, 0, 10}, turned(art, 3, 0, 1).codes());
        assertArrayEquals(art.codes(), turned(art, 0, 0, 1).codes());
    }

    @Test
    void fourTurnsOfLargeArtGiveItBack() throws Exception {
        Random random = new Random(1);
        ArrayPlane art = ArrayPlane.of(1100, 700, (x, y) -> random.nextInt(65_536));
        ArrayPlane back = turned(turned(turned(art, 1, 0, 2), 2, 0, 2), 1, 0, 2);
        assertArrayEquals(art.codes(), back.codes());
    }

    /** A cubic of this kind keeps straight slopes, so a turned slope is the slope itself at the turned places. */
    @ParameterizedTest
    @ValueSource(doubles = {-44, -3.7, 0.4, 12, 45})
    void turnsASlopeExactlyWhereTheArtReaches(double degrees) throws Exception {
        int side = 900;
        ArrayPlane art = ArrayPlane.of(side, side, (x, y) -> 20 * x + 30 * y + 5000);
        ArrayPlane film = turned(art, 0, degrees, 2);
        double cosine = Math.cos(Math.toRadians(degrees));
        double sine = Math.sin(Math.toRadians(degrees));
        for (int y = 0; y < side; y += 7) {
            for (int x = 0; x < side; x += 7) {
                double dx = x + 0.5 - side / 2.0;
                double dy = y + 0.5 - side / 2.0;
                if (Math.hypot(dx, dy) < side / 2.0 - 3) {
                    // A clockwise turn takes the art's right side down, so the place above came from the left.
                    double artX = side / 2.0 + cosine * dx + sine * dy - 0.5;
                    double artY = side / 2.0 - sine * dx + cosine * dy - 0.5;
                    assertEquals(20 * artX + 30 * artY + 5000, film.codes()[y * side + x] & 0xFFFF, 0.51);
                }
            }
        }
    }

    @Test
    void threadsChangeNothingAndCornersAreWhite() throws Exception {
        ArrayPlane art = ArrayPlane.of(800, 600, (x, y) -> (x * 7919 + y * 104_729) % 60_000);
        ArrayPlane alone = turned(art, 1, 5, 1);
        assertArrayEquals(alone.codes(), turned(art, 1, 5, 3).codes());
        assertEquals(GreyPlane.WHITE, alone.codes()[0] & 0xFFFF);
    }

    private static ArrayPlane turned(ArrayPlane art, int quarters, double degrees, int threads) throws Exception {
        TurnedArt turned = new TurnedArt(art, quarters, degrees);
        short[] codes = new short[turned.width() * turned.height()];
        turned.rows(
                threads,
                (first, count, band) ->
                        System.arraycopy(band, 0, codes, first * turned.width(), count * turned.width()),
                Progress.NONE);
        return new ArrayPlane(turned.width(), turned.height(), codes);
    }
}
