package greyground.film.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.ReadingSide.InkSide;
import greyground.quantity.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Parity of mirrorings: geometry; the tissue case agrees with Blaney 1895, Photogravure ("reversed positive"). */
class ReadingSideTest {
    @ParameterizedTest
    @CsvSource({
        "DOWN, 1, false", // direct intaglio, the standard
        "UP, 1, true", // direct intaglio, ink away from the plate
        "DOWN, 2, true", // offset by blanket, a counterproof, or gelatine tissue turned onto the plate
        "UP, 2, false",
    })
    void mirrorsByParity(InkSide side, int transfers, boolean mirrored) {
        assertEquals(mirrored, new ReadingSide(side, transfers).mirrored());
    }

    @Test
    void oneMoreTransferOrTheOtherSideAlwaysTurnsTheFilm() {
        for (InkSide side : InkSide.values()) {
            for (int transfers = 1; transfers < 9; transfers++) {
                boolean here = new ReadingSide(side, transfers).mirrored();
                assertTrue(here != new ReadingSide(side, transfers + 1).mirrored());
                InkSide other = side == InkSide.DOWN ? InkSide.UP : InkSide.DOWN;
                assertTrue(here != new ReadingSide(other, transfers).mirrored());
            }
        }
    }

    @Test
    void refusesNoTransfer() {
        assertThrows(Refusal.class, () -> new ReadingSide(InkSide.DOWN, 0));
    }
}
