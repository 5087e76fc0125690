package greyground.app.bite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BiteWordsTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 4);

    private static BiteWords words(String... pairs) {
        java.util.HashMap<String, String> given = new java.util.HashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            given.put(pairs[i], pairs[i + 1]);
        }
        return new BiteWords(given);
    }

    @Test
    void numbersAreReadWithTheirUnits() {
        assertEquals(30, words("depth", "0.03mm").depthMicrometres().orElseThrow(), 1e-9);
        assertEquals(24, words("darkest", "24").darkestLightness().orElseThrow());
        assertEquals(24, words("darkest", "L* 24").darkestLightness().orElseThrow());
        BiteWords proof = words("bitten", "12:30", "proof-density", "1.1");
        assertEquals(12.5, proof.bittenMinutes().orElseThrow(), 1e-12);
        assertEquals(1.1, proof.proofDensity().orElseThrow(), 1e-12);
        assertEquals(
                18,
                words("bitten", "12min", "proof-depth", "18um")
                        .proofDepthMicrometres()
                        .orElseThrow(),
                1e-9);
    }

    @Test
    void theBathIsTheWorkshopsUnlessTold() {
        Workshop shop = Workshop.assumed();
        assertEquals(shop, words("depth", "30um").bath(shop, TODAY));
        Workshop now =
                words("bath-temperature", "64.4F", "bath-copper", "20g/L").bath(shop, TODAY);
        assertEquals(18, now.bath().temperatureCelsius().value(), 1e-9);
        assertEquals(20, now.bath().copperGramsPerLitre().value(), 1e-9);
        assertEquals(
                "as typed 2026-03-04",
                now.bath().copperGramsPerLitre().provenance().words());
    }

    @Test
    void onlyAWishOrAProofAsksForABite() {
        assertFalse(new BiteWords(Map.of("plate", "10x10cm", "bath-copper", "20g/L")).asked());
        assertTrue(words("darkest", "24").asked());
        assertTrue(words("bitten", "12min", "proof-depth", "18um").asked());
    }

    @ParameterizedTest
    @CsvSource({
        "depth, 30, has no unit",
        "depth, 900um, between 0.5 and 300",
        "darkest, black, must be a lightness",
        "darkest, 120, between 1 and 99",
    })
    void wishesOutOfRangeAreRefused(String name, String text, String said) {
        BiteWords words = words(name, text);
        Refusal refusal = assertThrows(Refusal.class, () -> {
            words.depthMicrometres();
            words.darkestLightness();
        });
        assertTrue(refusal.getMessage().contains(said), refusal.getMessage());
    }

    @ParameterizedTest
    @CsvSource({
        "bath-temperature, 18, has no unit",
        "bath-temperature, 90C, between 5 and 50",
        "bath-copper, 20, has no unit",
        "bath-copper, 20oz, unknown unit",
        "bath-copper, 500g/L, between 0 and 200",
    })
    void bathsOutOfRangeAreRefused(String name, String text, String said) {
        Refusal refusal = assertThrows(Refusal.class, () -> words(name, text).bath(Workshop.assumed(), TODAY));
        assertTrue(refusal.getMessage().contains(said), refusal.getMessage());
    }

    @Test
    void wishesThatExcludeEachOtherAreRefused() {
        assertThrows(Refusal.class, () -> words("depth", "30um", "darkest", "24"));
        assertThrows(Refusal.class, () -> words("bitten", "12min"));
        assertThrows(Refusal.class, () -> words("proof-depth", "18um"));
        assertThrows(Refusal.class, () -> words("bitten", "12min", "proof-depth", "18um", "proof-density", "1.1"));
    }
}
