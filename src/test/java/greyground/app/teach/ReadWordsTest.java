package greyground.app.teach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadWordsTest {
    private static ReadWords of(String name, String text) {
        return new ReadWords(Map.of(name, text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"95|95", "L* 95|95", "93,5|93.5", "0.06|94.78", "D 0.06|94.78", "0,06D|94.78", "0|100"})
    void paperIsToldAsLightnessOrDensity(String text, double lightness) {
        // By CIE 15, L* of a density of 0.06 is 116 * 10^(-0.06 / 3) - 16 = 94.78.
        assertEquals(lightness, of("paper", text).paperLightness().orElseThrow(), 5e-3);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "paper|30|paper is \"30\"",
                "paper|white|paper is \"white\"",
                "bite|20|bite",
                "bite|0min|bite",
                "depth|34|depth",
                "depth|0.1um|measured depth",
                "flare|0.02|flare",
                "flare|20%|flare",
                "corners|1,2 3,4|corners are",
                "corners|1,2 3,4 5,6 7,x|corners are",
                "date|2026-02-30|date"
            })
    void faultIsOneLine(String name, String text, String named) {
        ReadWords words = of(name, text);
        Refusal refusal = assertThrows(Refusal.class, () -> {
            words.paperLightness();
            words.biteMinutes();
            words.depth();
            words.flareShare();
            words.corners();
            words.date(LocalDate.EPOCH);
        });
        assertTrue(refusal.getMessage().contains(named), refusal.getMessage());
        assertFalse(refusal.getMessage().contains("\n"));
    }

    @Test
    void everythingElseIsRead() {
        assertEquals(22.5, of("bite", "22:30").biteMinutes().orElseThrow(), 1e-12);
        assertEquals(34, of("depth", "0,034mm").depth().orElseThrow().micrometres(), 1e-9);
        assertEquals(0.015, of("flare", "1,5%").flareShare(), 1e-12);
        assertEquals(
                List.of(1.0, 2.0, 30.5, 4.0, 5.0, 60.0, 7.0, 8.0),
                of("corners", "1,2 30.5,4; 5,60 7,8").corners());
        assertEquals(LocalDate.of(2026, 3, 4), of("date", "2026-03-04").date(LocalDate.EPOCH));
        ReadWords none = new ReadWords(Map.of());
        assertEquals(LocalDate.EPOCH, none.date(LocalDate.EPOCH));
        assertTrue(none.corners().isEmpty() && none.depth().isEmpty() && none.flareShare() == 0);
    }
}
