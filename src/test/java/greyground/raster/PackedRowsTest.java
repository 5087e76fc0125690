package greyground.raster;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

class PackedRowsTest {
    @Test
    void negativeIsBlackAndTheFirstPixelIsTheHighestBit() {
        int[] values = {-1, 0, 5, Integer.MIN_VALUE, 0, 0, 0, 0, -9};
        byte[] row = new byte[3];
        PackedRows.packSigns(values, 0, 9, row, 1);
        assertEquals(0, row[0]);
        assertEquals((byte) 0b1001_0000, row[1]);
        assertEquals((byte) 0b1000_0000, row[2]);
    }

    @Test
    void blackenSetsExactlyItsPixels() {
        Random random = new Random(2);
        for (int round = 0; round < 2000; round++) {
            int from = random.nextInt(70);
            int to = from + random.nextInt(80 - from + 1);
            byte[] row = new byte[11];
            PackedRows.blacken(row, 1, from, to);
            for (int x = 0; x < 80; x++) {
                int bit = row[1 + x / 8] >> (7 - x % 8) & 1;
                assertEquals(x >= from && x < to ? 1 : 0, bit, from + ".." + to + " at " + x);
            }
            assertEquals(0, row[0]);
        }
    }
}
