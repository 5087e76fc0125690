package greyground.film.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SeamsTest {
    /** Tiles cover the sheet, each within its window, each shares the overlap with the next, and all begin on whole bytes. */
    @Test
    void tilesCoverTheSheetWhateverMustStayWhole() {
        Random random = new Random(4);
        for (int round = 0; round < 300; round++) {
            int overlap = 8 * (5 + random.nextInt(40));
            int window = 2 * overlap + 8 * random.nextInt(300);
            int length = 1 + random.nextInt(12_000);
            List<Seams.Whole> whole = new ArrayList<>();
            for (int i = random.nextInt(12); i > 0; i--) {
                int from = random.nextInt(length);
                whole.add(new Seams.Whole(from, from + random.nextInt(length)));
            }
            List<Integer> starts = new Seams(length, window, overlap).starts(whole);
            assertEquals(0, starts.get(0));
            for (int i = 0; i < starts.size(); i++) {
                int end = i + 1 < starts.size() ? starts.get(i + 1) + overlap : length;
                assertTrue(end - starts.get(i) <= window && end <= length, starts + " of " + length + " by " + window);
                assertEquals(0, starts.get(i) % 8);
            }
        }
    }

    /** Where nothing need stay whole, no tile is longer than another by more than rounding to bytes, and one fewer would not do. */
    @Test
    void tilesAreAsFewAndAsEqualAsMayBe() {
        for (int length = 1001; length < 9000; length += 97) {
            List<Integer> starts = new Seams(length, 1000, 80).starts(List.of());
            int tiles = starts.size();
            assertTrue((tiles - 1) * 920 + 80 < length);
            for (int i = 0; i + 1 < tiles; i++) {
                assertEquals((length - 80.0) / tiles, starts.get(i + 1) - starts.get(i), 16);
            }
        }
    }

    /** A cut in the middle would part the stretch, so that it moves to its nearer side; one that no tile can hold is cut all the same. */
    @Test
    void noCutPartsWhatCanStayWhole() {
        Seams.Whole ruler = new Seams.Whole(300, 860);
        List<Integer> starts = new Seams(1200, 1000, 80).starts(List.of(ruler));
        assertEquals(2, starts.size());
        assertFalse(ruler.cutAt(starts.get(1) + 40), starts.toString());
        assertEquals(860, starts.get(1) + 40, 8);
        Seams.Whole tooLong = new Seams.Whole(10, 1190);
        assertEquals(
                2, new Seams(1200, 1000, 80).starts(List.of(ruler, tooLong)).size());
        assertFalse(ruler.cutAt(
                new Seams(1200, 1000, 80).starts(List.of(ruler, tooLong)).get(1) + 40));
    }
}
