package greyground.states;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlateRecordFileTest {
    private static final String DIGEST = "0123456789abcdef".repeat(4);

    /** The first format, written by hand after docs/record.md; it must open for ever. */
    private static String first() throws Exception {
        try (var in = PlateRecordFileTest.class.getResourceAsStream("record-1.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void theFirstFormatOpensAndComesBackWhole() throws Exception {
        PlateRecord record = PlateRecordFile.read(first());
        assertEquals("Salt marsh at dusk", record.title());
        assertEquals(9, record.lines().size());
        assertEquals(20, record.bittenMinutes());
        assertEquals(Optional.of("12 of 25 printed"), record.edition());
        assertEquals(new Entry.Exposed(60, 90), record.lines().get(0).entry());
        assertEquals(
                new Entry.Measured(OptionalDouble.of(37.5), OptionalDouble.of(5.2)),
                record.lines().get(5).entry());
        assertTrue(record.lines().get(6).struck());
        assertEquals(
                List.of(0, 1, 1, 2, 2, 2, 2, 2, 2),
                record.story().stream().map(PlateRecord.Placed::state).toList());
        assertEquals(first(), PlateRecordFile.text(record), "remarks added by hand among them");
    }

    private static OptionalDouble some(Random random, double most) {
        return random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(0.1 + random.nextDouble() * most);
    }

    private static Entry any(Random random, int i) {
        Optional<NamedFile> scan =
                random.nextBoolean() ? Optional.empty() : Optional.of(new NamedFile("a b\u00e9.tif", 1L << 40, DIGEST));
        return switch (random.nextInt(7)) {
            case 0 -> new Entry.Exposed(random.nextInt(99), random.nextDouble() * 1000);
            case 1 -> new Entry.Bitten(0.1 + random.nextDouble() * 90, OptionalDouble.empty(), some(random, 100));
            case 2 -> new Entry.Reworked("\u201cscraped\u201d \\ \" " + i);
            case 3 -> new Entry.Measured(OptionalDouble.of(0.1 + random.nextDouble()), some(random, 100));
            case 4 -> new Entry.Proofed(scan, some(random, 2));
            case 5 -> new Entry.Printed(i + 1, i + 1, 500);
            default -> new Entry.Noted("note " + i);
        };
    }

    @Test
    void everyRecordComesBackFromItsFile() {
        Random random = new Random(11);
        for (int trial = 0; trial < 60; trial++) {
            PlateRecord record =
                    PlateRecord.begun("T" + trial, "200 x 100 mm", Optional.empty(), List.of("Bite 20 min"));
            for (int i = 0; i < trial; i++) {
                record = record.with(LocalDate.of(2026, 1, 1).plusDays(random.nextInt(400)), any(random, i));
            }
            if (trial > 3) {
                record = record.struck(2);
            }
            assertEquals(record, PlateRecordFile.read(PlateRecordFile.text(record)));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"minutes\": 12 | \"minutes\": \"12\" | entries.1.minutes is \"12\"",
                "\"minutes\": 12 | \"minute\": 12 | did you mean entries.1.minutes?",
                "\"entry\": \"noted\" | \"entry\": \"sung\" | entries.8.entry is \"sung\"; it must be one of bitten,",
                "\"2026-03-07\" | \"2026-02-30\" | entries.3.date is \"2026-02-30\"; it must be a day",
                "\"depthMicrometres\": 37.5 | \"depthMicrometres\": 3750 | it must be a number from 0.1 to 1000",
                "\"version\": 1 | \"version\": 2 | use a newer Greyground; the file was left as it is",
                "\"last\": 12 | \"last\": 26 | they must rise from 1 to the edition's size"
            })
    void aMistakeIsNamedWithItsPlace(String right, String wrong, String said) throws Exception {
        String text = first().replace(right, wrong);
        assertTrue(!text.equals(first()), right);
        String refused = String.valueOf(
                assertThrows(Refusal.class, () -> PlateRecordFile.read(text)).getMessage());
        assertTrue(refused.contains(said), refused);
    }
}
