package greyground.film.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.art.burnish.LocalTouch;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TouchesFileTest {
    private static String file(String touches) {
        return "{\"greyground\": \"touches\", \"version\": 1, \"touches\": [" + touches + "]}";
    }

    /** The file that docs/touches.md shows. */
    @Test
    void readsTheDocumentedFile() throws Exception {
        String page = Files.readString(Path.of("docs/touches.md"));
        String shown = page.substring(page.indexOf("```json") + 7, page.lastIndexOf("```"));
        List<LocalTouch> touches =
                TouchesFile.read(shown.substring(0, shown.indexOf("```") < 0 ? shown.length() : shown.indexOf("```")));
        assertEquals(
                List.of(
                        new LocalTouch.Stroke(
                                6, 8, 4, List.of(new Offset(30, 41), new Offset(36.5, 44), new Offset(45, 43))),
                        new LocalTouch.Ellipse(-5, new Offset(120, 90), 24, 15, -20, 10),
                        new LocalTouch.Gradient(-8, new Offset(0, 60), new Offset(0, 0))),
                touches);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"shape\": \"dot\"}|touches.0.shape is \"dot\"; it must be one of ellipse, gradient, stroke",
                "{\"shape\": \"stroke\", \"burnish\": 31}|touches.0.burnish is 31; it must be a number from 0 to 30",
                "{\"shape\": \"stroke\"}|touches.0.burnish is missing",
                "{\"shape\": \"stroke\", \"burnish\": 3, \"deepen\": -2}|touches.0.deepen is -2; it must be a number from 0 to 30",
                "{\"shape\": \"stroke\", \"burnish\": 3, \"widthMillimetres\": 5, \"featherMillimetres\": 2, \"pointsMillimetres\": []}|a stroke has 0 points",
                "{\"shape\": \"stroke\", \"burnish\": 3, \"widthMillimetres\": 5, \"featherMillimetres\": 2, \"pointsMillimetres\": [[1, 2], [3]]}|touches.0.pointsMillimetres.1 is [3]; it must be two numbers",
                "{\"shape\": \"gradient\", \"deepen\": 3, \"fromMillimetres\": [0, 9000], \"toMillimetres\": [0, 1]}|touches.0.fromMillimetres is [0,9000]; it must be two numbers in square brackets, each from -3000 to 6000",
                "{\"shape\": \"gradient\", \"deepen\": 3, \"fromMillimetres\": [0, 9], \"toMillimetres\": [0, 9]}|feather is 0 mm",
                "{\"shape\": \"ellipse\", \"deepen\": 3, \"centreMillimetres\": [1, 1], \"radiiMillimetres\": [3, 2], \"turnDegree\": 4, \"featherMillimetres\": 3}|touches.0.turnDegree is not a field",
                "7|touches is 7; it must be a list of objects in braces"
            })
    void namesThePlaceAndWhatIsAllowed(String touch, String said) {
        Refusal refusal = assertThrows(Refusal.class, () -> TouchesFile.read(file(touch)));
        assertTrue(refusal.getMessage().contains(said), refusal.getMessage());
        assertEquals(1, refusal.getMessage().lines().count());
    }

    @Test
    void aFileOfAnotherKindOrNoneIsRefused() {
        for (String text : List.of(
                "",
                "[]",
                "{}",
                "{\"greyground\": \"job\", \"version\": 1}",
                file("{").substring(2))) {
            assertThrows(Refusal.class, () -> TouchesFile.read(text), text);
        }
        String empty = "{\"greyground\": \"touches\", \"version\": 1}";
        assertTrue(assertThrows(Refusal.class, () -> TouchesFile.read(empty))
                .getMessage()
                .contains("no list"));
        Refusal broken = assertThrows(Refusal.class, () -> TouchesFile.read(file("\n{\"shape\": \"stroke\",}")));
        assertTrue(broken.getMessage().contains("line 2, column"), broken.getMessage());
    }
}
