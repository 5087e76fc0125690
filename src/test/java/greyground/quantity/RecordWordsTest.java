package greyground.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The platform's own words of the same records are the measure. */
class RecordWordsTest {
    /** A record within a record, and a part that is absent. */
    public record Plate(
            Size size, List<Offset> marks, @Nullable Size other, float small, char letter) {}

    private record Hidden(int any) {}

    @Test
    void recordsSpeakAsTheirOwnToStringDoes() {
        Plate plate =
                new Plate(new Size(210, 148.5), List.of(new Offset(1, 2), new Offset(-0.1, 1e-9)), null, 0.1f, 'x');
        assertEquals(plate.toString(), RecordWords.of(plate));
        assertEquals(List.of().toString(), RecordWords.of(List.of()));
        assertEquals("7", RecordWords.of(7));
    }

    @Test
    void aRecordThatCannotBeLookedIntoIsNamed() {
        String said = assertThrows(IllegalArgumentException.class, () -> RecordWords.of(new Hidden(1)))
                .getMessage();
        assertTrue(said.contains("Hidden"), said);
    }
}
