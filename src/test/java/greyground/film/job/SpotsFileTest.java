package greyground.film.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.art.spots.Spot;
import greyground.art.spots.Spot.Place;
import greyground.quantity.Refusal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpotsFileTest {
    private static String file(String spots) {
        return "{\"greyground\": \"spots\", \"version\": 1, \"spots\": [" + spots + "]}";
    }

    /** The file that docs/spots.md shows. */
    @Test
    void readsTheDocumentedFile() throws Exception {
        String page = Files.readString(Path.of("docs/spots.md"));
        String from = page.substring(page.indexOf("```json") + 7);
        assertEquals(
                List.of(
                        new Spot(List.of(new Place(277, 63)), 4.9, -31.2, true),
                        new Spot(List.of(new Place(59.5, 473.5)), 5.8, 26.3, false),
                        new Spot(List.of(new Place(310, 40), new Place(352, 61.5), new Place(380, 66)), 3, 0, true)),
                SpotsFile.read(from.substring(0, from.indexOf("```"))));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{}|spots.0.placePixels is missing",
                "{\"placePixels\": [1, 2]}|spots.0.placePixels.0 is 1; it must be two numbers",
                "{\"placePixels\": [[1, -2]]}|spots.0.placePixels.0 is [1,-2]; it must be two numbers in square brackets, each from 0 to 1000000",
                "{\"placePixels\": [[1, 2]]}|spots.0.widthPixels is missing",
                "{\"placePixels\": [[1, 2]], \"widthPixels\": 101}|spots.0.widthPixels is 101; it must be a number from 1 to 100",
                "{\"placePixels\": [], \"widthPixels\": 10}|a spot has 0 points; it must have 1, or up to 1000",
                "{\"placePixels\": [[1, 2]], \"widthPixels\": 10, \"accepted\": \"yes\"}|spots.0.accepted is \"yes\"; it must be true or false",
                "{\"placePixels\": [[1, 2]], \"widthPixels\": 10, \"acepted\": false}|spots.0.acepted is not a field",
                "{\"placePixels\": [[1, 2]], \"widthPixels\": 10, \"number\": 0}|spots.0.number is 0; it must be a whole number from 1",
                "7|spots is 7; it must be a list of objects in braces"
            })
    void namesThePlaceAndWhatIsAllowed(String spot, String said) {
        Refusal refusal = assertThrows(Refusal.class, () -> SpotsFile.read(file(spot)));
        assertTrue(refusal.getMessage().contains(said), refusal.getMessage());
        assertEquals(1, refusal.getMessage().lines().count());
    }

    @Test
    void aFileOfAnotherKindOrNoneIsRefused() {
        for (String text :
                List.of("{\"greyground\": \"touches\", \"version\": 1, \"touches\": []}", "", "fund", "{}")) {
            assertThrows(Refusal.class, () -> RetouchFields.SPOTS.parse(text, Kind.Art.UNKNOWN), text);
        }
        assertTrue(assertThrows(Refusal.class, () -> SpotsFile.read("{\"greyground\": \"spots\", \"version\": 1}"))
                .getMessage()
                .contains("docs/spots.md"));
    }

    @Test
    void aJobHoldsTenThousand() {
        Spot spot = new Spot(List.of(new Place(1, 1)), 2, 0, true);
        assertEquals(
                10_000,
                new SpotWish.Chosen(Collections.nCopies(10_000, spot)).spots().size());
        assertThrows(Refusal.class, () -> new SpotWish.Chosen(Collections.nCopies(10_001, spot)));
    }

    /** Jobs of older versions have no such field, and one that heals nothing is written as they are. */
    @Test
    void noneIsLeftOutAndTheRestComesBack() {
        Job usual = JobFields.usual();
        assertFalse(JobFile.text(usual).contains("spots"));
        assertEquals(SpotWish.NONE, RetouchFields.SPOTS.of(JobFile.read(JobFile.text(usual))));
        Job found = RetouchFields.SPOTS.with(usual, SpotWish.FOUND);
        assertEquals(SpotWish.FOUND, RetouchFields.SPOTS.of(JobFile.read(JobFile.text(found))));
        Refusal misspelt = assertThrows(
                Refusal.class, () -> JobFile.read(JobFile.text(found).replace("\"found\"", "\"fund\"")));
        assertTrue(misspelt.getMessage().contains("found, none"), misspelt.getMessage());
    }
}
