package greyground.finding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import greyground.json.JsonText;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FindingsTest {
    private static final Findings FINDINGS = new Findings()
            .say("plate", "60 x 45 mm, etched film", "60 x 45 mm")
            .say("turningPoint", "above 83 % the print gets paler again", 0.8333333333)
            .put("half95", OptionalDouble.empty())
            .rows(
                    "changes",
                    List.of(
                            new Findings().put("path", "bath.etchFactor").say("words", "2 becomes 1.8"),
                            new Findings().put("path", "ink.spreadMicrometres")))
            .list("notes", List.of());

    @Test
    void jsonHoldsFiguresInTheOrderOfTheFindings() {
        assertEquals(
                "{\"plate\":\"60 x 45 mm\",\"turningPoint\":0.833333,\"changes\":[{\"path\":\"bath.etchFactor\","
                        + "\"words\":\"2 becomes 1.8\"},{\"path\":\"ink.spreadMicrometres\"}],\"notes\":[]}",
                JsonText.print(FINDINGS.tree()).replaceAll("\\n *", "").replace("\": ", "\":"));
    }

    @Test
    void wordsAndFiguresAreFoundByTheirKeys() {
        assertEquals("60 x 45 mm, etched film", FINDINGS.line("plate"));
        assertEquals("60 x 45 mm", FINDINGS.text("plate"));
        assertEquals(OptionalDouble.of(0.833333), FINDINGS.number("turningPoint"));
        assertEquals(OptionalDouble.empty(), FINDINGS.number("half95"));
        // A row's words are its line; a row without words has none.
        assertEquals(List.of("2 becomes 1.8"), FINDINGS.words("changes"));
        assertEquals(
                List.of("bath.etchFactor", "ink.spreadMicrometres"),
                FINDINGS.rows("changes").stream().map(row -> row.text("path")).toList());
        assertEquals(List.of(), FINDINGS.rows("unsaid"));
    }

    @Test
    void nothingIsSaidTwiceUnderOneKey() {
        Findings one = new Findings().put("kind", "check");
        assertThrows(IllegalArgumentException.class, () -> one.say("kind", "a check plate"));
    }
}
