package greyground.workshop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.json.JsonText;
import greyground.quantity.Refusal;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorkshopFileTest {
    private static final String HEAD = "{\"greyground\": \"workshop\", \"version\": 1";

    private static String refusal(String text) {
        String message =
                assertThrows(Refusal.class, () -> WorkshopFile.read(text)).getMessage();
        assertFalse(message.contains("\n"), message);
        assertTrue(message.contains(": "), () -> "no remedy in: " + message);
        return message;
    }

    @Test
    void aWorkshopComesBackFromItsFile() {
        Workshop shop = Workshop.assumed()
                .named("Quay Street etching room")
                .with("bath.etchFactor", Figure.measured(1.7, LocalDate.of(2026, 3, 4), "section of a bitten strip"));
        assertEquals(shop, WorkshopFile.read(WorkshopFile.text(shop)));
    }

    @Test
    void anyNumbersInRangeComeBackBitForBit() {
        SplittableRandom chance = new SplittableRandom(20261125);
        for (int round = 0; round < 200; round++) {
            double value = chance.nextDouble(0.5, 10);
            Workshop shop = Workshop.assumed().with("bath.etchFactor", Figure.assumed(value, "from memory"));
            assertEquals(
                    value,
                    WorkshopFile.read(WorkshopFile.text(shop))
                            .bath()
                            .etchFactor()
                            .value());
        }
    }

    @Test
    void writingIsTheSameInEveryLocaleAndEndsLinesWithLineFeeds() {
        Locale before = Locale.getDefault();
        String text = WorkshopFile.text(Workshop.assumed());
        try {
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            assertEquals(text, WorkshopFile.text(Workshop.assumed()));
            assertEquals(Workshop.assumed(), WorkshopFile.read(text));
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertEquals(text, WorkshopFile.text(Workshop.assumed()));
        } finally {
            Locale.setDefault(before);
        }
        assertFalse(text.contains("\r"));
        assertTrue(text.endsWith("}\n"));
        assertTrue(text.contains("\"thinningMinutes\": {\n      \"value\": 27,\n      \"known\": \"assumed\""), text);
    }

    @Test
    void missingFieldsAreTheDocumentedAssumptions() {
        assertEquals(Workshop.assumed(), WorkshopFile.read(HEAD + "}"));
        Workshop shop = WorkshopFile.read(HEAD + ", \"bath\": {\"litres\": {\"value\": 5}}}");
        assertEquals(5, shop.bath().litres().value());
        assertEquals(Workshop.assumed().bath().etchFactor(), shop.bath().etchFactor());
    }

    @Test
    void aBareNumberIsTakenAsStatedWithoutATest() {
        Figure litres =
                WorkshopFile.read(HEAD + ", \"bath\": {\"litres\": 5}}").bath().litres();
        assertEquals(Figure.assumed(5, "stated in the workshop file without a test"), litres);
    }

    /** What a slip of the pen says, and what a remark of one's own does not. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {"bath": {"biteMinuts": 25}} | workshop bath.biteMinuts is not a field, so it changes nothing; did you mean bath.biteMinutes?
            {"bath": {"litres": {"valeu": 3, "value": 2, "known": "assumed"}}} | workshop bath.litres.valeu is not a field, so it changes nothing; did you mean bath.litres.value?
            {"bth": {"litres": 3}} | workshop bth is not a field, so it changes nothing; did you mean bath?
            {"film_printer": {}} | workshop film_printer is not a field, so it changes nothing; did you mean filmPrinter?
            {"bath": {"drawer": "third from the left"}, "weather": "damp"} |
            """)
    void misspeltFieldsAreAskedAbout(String fields, @Nullable String question) {
        String file = "{\"greyground\": \"workshop\", \"version\": 1, " + fields.substring(1);
        List<String> questions = WorkshopFile.read(file).kept().stream()
                .flatMap(field -> field.question("workshop").stream())
                .toList();
        assertEquals(question == null ? List.of() : List.of(question), questions);
    }

    @Test
    void unknownFieldsAtEveryDepthAreKeptOnRewriting() {
        String text = HEAD + ", \"remarks\": [\"north window\", 1.50, null],"
                + "\"bath\": {\"tray\": {\"colour\": \"white\"}, \"litres\": {\"value\": 5, \"jug\": \"B\"}},"
                + "\"steel facing\": {\"amps\": 3e400}}";
        Workshop shop = WorkshopFile.read(text);
        String again = WorkshopFile.text(shop.with("bath.litres", Figure.assumed(6, "common practice")));
        for (String kept : new String[] {
            "\"north window\"", "1.50", "null", "\"colour\": \"white\"", "\"jug\": \"B\"", "\"amps\": 3E+400"
        }) {
            assertTrue(again.contains(kept), () -> kept + " is lost from " + again);
        }
        assertEquals(6, WorkshopFile.read(again).bath().litres().value());
        assertEquals(again, WorkshopFile.text(WorkshopFile.read(again)));
    }

    @Test
    void aNewerVersionIsRefusedByItsNumber() {
        String message = refusal("{\"greyground\": \"workshop\", \"version\": 2}");
        assertTrue(message.contains("version 2") && message.contains("left as it is"), message);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "``|empty",
                "`[1]`|must start with {",
                "`{\"greyground\": \"job\", \"version\": 1}`|\"job\"",
                "`{\"version\": 1}`|nothing",
                "`{\"greyground\": \"workshop\"}`|\"version\": nothing",
                "`{\"greyground\": \"workshop\", \"version\": 0}`|0",
                "`{\"greyground\": \"workshop\", \"version\": 1.5}`|1.5",
                "`{\"greyground\": \"workshop\", \"version\": 99999999999}`|99999999999",
                "`{\"greyground\": \"workshop\", \"version\": 1} x`|line 1",
                "`{\"greyground\": \"workshop\", \"version\": 1, \"version\": 1}`|line 1",
                "`{\"greyground\": \"workshop\",\n \"version\" 1}`|line 2",
            })
    void aFileThatIsNoWorkshopIsRefusedWithWhatItSays(String text, String said) {
        String message = refusal(text);
        assertTrue(message.contains(said), message);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "`\"bath\": 7`|workshop bath is 7",
                "`\"bath\": {\"litres\": \"two\"}`|workshop bath.litres is \"two\"",
                "`\"bath\": {\"litres\": {}}`|workshop bath.litres.value is missing",
                "`\"bath\": {\"litres\": {\"value\": \"2\"}}`|workshop bath.litres.value is \"2\"",
                "`\"bath\": {\"litres\": 1e999}`|finite",
                "`\"bath\": {\"litres\": -1}`|workshop bath.litres is -1 L; it must lie between 0.1 and 1000 L",
                "`\"bath\": {\"litres\": {\"value\": 2, \"known\": \"guessed\"}}`|workshop bath.litres.known is \"guessed\"",
                "`\"bath\": {\"litres\": {\"value\": 2, \"known\": \"measured\"}}`|workshop bath.litres.date is missing",
                "`\"bath\": {\"litres\": {\"value\": 2, \"date\": \"4.3.2026\"}}`|a day such as",
                "`\"bath\": {\"litres\": {\"value\": 2, \"basis\": 3}}`|workshop bath.litres.basis is 3",
                "`\"light\": {\"kind\": \"sun\"}`|one of point, tubes",
                "`\"light\": {\"kind\": 1}`|workshop light.kind is 1",
                "`\"name\": 5`|workshop name is 5",
            })
    void aMalformedFieldIsRefusedByItsPathAndValue(String field, String said) {
        String message = refusal(HEAD + ", " + field + "}");
        assertTrue(message.contains(said), message);
    }

    @Test
    void aDeepFileIsRefusedAndNotRecursedInto() {
        refusal(HEAD + ", \"remarks\": " + "[".repeat(100_000) + "]".repeat(100_000) + "}");
    }

    @Test
    void theShortestDigitsAreWritten() {
        // Double.toString(2.0E-3) is "0.0020" before Java 19 (JDK-4511638); the shortest form is 0.002.
        assertEquals("0.002", JsonText.number(2.0E-3).toString());
        assertEquals("0.1", JsonText.number(0.1).toString());
        assertEquals("150", JsonText.number(150).toString());
        assertEquals("-0.3333333333333333", JsonText.number(-1 / 3.0).toString());
    }
}
