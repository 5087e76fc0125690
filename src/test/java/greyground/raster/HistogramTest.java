package greyground.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class HistogramTest {
    /** A plane whose grey is 7 x + 13 y, modulo 65 536. */
    private static final GreyPlane SLANTED = new GreyPlane() {
        @Override
        public int width() {
            return 300;
        }

        @Override
        public int height() {
            return 700;
        }

        @Override
        public void readRow(int y, short[] into) {
            for (int x = 0; x < 300; x++) {
                into[x] = (short) (7 * x + 13 * y);
            }
        }

        @Override
        public void close() {}
    };

    @Test
    void countsEveryPixelOfThePartOnce() throws Exception {
        long[] expected = new long[Histogram.CODES];
        for (int y = 20; y < 620; y++) {
            for (int x = 5; x < 255; x++) {
                expected[(7 * x + 13 * y) & 0xFFFF]++;
            }
        }
        assertArrayEquals(expected, Histogram.of(SLANTED, new PixelRect(5, 20, 250, 600), 1));
        assertArrayEquals(expected, Histogram.of(SLANTED, new PixelRect(5, 20, 250, 600), 3));
        assertEquals(250L * 600, Arrays.stream(expected).sum());
    }
}
