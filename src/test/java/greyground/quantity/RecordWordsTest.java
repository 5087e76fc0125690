package greyground.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class RecordWordsTest {
    /** A record within records, and a part that is absent. */
    public record Dot(double across, float down, char letter) {}

    public record Plate(
            Dot corner, List<Dot> marks, @Nullable Dot other) {}

    /** The platform's own words of the same records are the measure. */
    @Test
    void recordsWithoutWordsOfTheirOwnSpeakAsThePlatformMakesThem() {
        Plate plate =
                new Plate(new Dot(210, 148.5f, 'x'), List.of(new Dot(-0.1, 1e-9f, 'y'), new Dot(1, 2, 'z')), null);
        assertEquals(plate.toString(), RecordWords.of(plate));
        assertEquals(List.of().toString(), RecordWords.of(List.of()));
        assertEquals("7", RecordWords.of(7));
    }

    @Test
    void nothingIsRounded() {
        assertEquals(new Size(210, 148).toString(), new Size(210, 148.000001).toString());
        assertNotEquals(RecordWords.of(new Size(210, 148)), RecordWords.of(new Size(210, 148.000001)));
    }
}
