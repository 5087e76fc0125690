package greyground.states;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import greyground.states.Entry.Bitten;
import greyground.states.Entry.Exposed;
import greyground.states.Entry.Noted;
import greyground.states.Entry.Printed;
import greyground.states.Entry.Proofed;
import greyground.states.Entry.Reworked;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlateRecordTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 4);
    private static final Entry PROOF = new Proofed(Optional.empty(), OptionalDouble.empty());

    private static Entry bite(double minutes) {
        return new Bitten(minutes, OptionalDouble.empty(), OptionalDouble.empty());
    }

    private static PlateRecord record(Entry... entries) {
        PlateRecord record = PlateRecord.begun("Marsh", "", Optional.empty(), List.of());
        for (Entry entry : entries) {
            record = record.with(DAY, entry);
        }
        return record;
    }

    private static List<Integer> states(PlateRecord record) {
        return record.story().stream().map(PlateRecord.Placed::state).toList();
    }

    /** A state ends with its proof, and begins with the first work after it: common practice, no source. */
    @Test
    void whatIsDoneToTheCopperAfterAProofMakesTheNextState() {
        PlateRecord record = record(
                new Exposed(60, 90),
                bite(8),
                bite(2),
                PROOF,
                new Noted("pale"),
                bite(6),
                PROOF,
                PROOF,
                new Reworked("burnished the sky"),
                new Printed(1, 3, 9));
        assertEquals(List.of(0, 1, 1, 1, 1, 2, 2, 2, 3, 3), states(record));
        assertEquals(16, record.bittenMinutes());
    }

    @Test
    void theStoryGoesByDatesAndNumbersStay() {
        PlateRecord late = record(bite(8), PROOF, bite(6)).with(DAY.minusDays(2), new Exposed(0, 90));
        assertEquals(
                List.of(4, 1, 2, 3),
                late.story().stream().map(PlateRecord.Placed::number).toList());
        assertEquals(List.of(0, 1, 1, 2), states(late));
    }

    @Test
    void whatIsStruckOutStaysAndCountsForNothing() {
        PlateRecord struck =
                record(bite(8), PROOF, bite(6), new Printed(1, 3, 9)).struck(3).struck(4);
        assertEquals(List.of(1, 1, 1, 1), states(struck));
        assertEquals(8, struck.bittenMinutes());
        assertEquals(Optional.empty(), struck.edition());
        assertEquals(bite(6), struck.lines().get(2).entry());
        for (int number : new int[] {0, 3, 5}) {
            assertThrows(Refusal.class, () -> struck.struck(number), "entry " + number);
        }
    }

    @ParameterizedTest
    @CsvSource({"4, 6, 9, true", "3, 3, 9, false", "1, 9, 9, false", "4, 4, 8, false", "9, 9, 9, true"})
    void aNumberOfTheEditionIsPrintedOnce(int first, int last, int edition, boolean taken) {
        PlateRecord begun = record(new Printed(1, 3, 9));
        if (taken) {
            String said =
                    begun.with(DAY, new Printed(first, last, edition)).edition().orElseThrow();
            assertEquals(4 + last - first + " of 9 printed", said);
        } else {
            assertThrows(Refusal.class, () -> begun.with(DAY, new Printed(first, last, edition)));
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 5", "3, 2, 5", "1, 6, 5", "1, 1, 100001"})
    void numbersThatNoEditionHasAreRefused(int first, int last, int edition) {
        String said = String.valueOf(assertThrows(Refusal.class, () -> new Printed(first, last, edition))
                .getMessage());
        assertTrue(said.contains("such as 1-10/25"), said);
    }
}
