package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.look.Surround;
import greyground.desk.model.Station;
import java.nio.file.Path;
import javafx.scene.SnapshotParameters;
import javafx.scene.control.ButtonBase;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

/** How large the film's pixels are on the screen, and what lies round the picture. */
class ViewIT extends AtTheDesk {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    private String zoom() throws Exception {
        return onScreen(() -> hand.find("zoom", ButtonBase.class).getText());
    }

    private double perPixel() throws Exception {
        return onScreen(() -> hand.desk().seen().port().perPixel());
    }

    @Test
    void oneKeyShowsEachPixelOfTheFilmAsOneOfTheScreen() throws Exception {
        hand.smallPlate(ART);
        act(() -> hand.desk().choose(Station.FILM));
        hand.rest();
        double whole = perPixel();
        // 720 dots per inch on the small plate.
        assertEquals(String.format(java.util.Locale.ROOT, "%.0f %%", 100 * 25.4 / 720 / whole), zoom());
        act(() -> hand.desk().picture.requestFocus());
        hand.key(KeyCode.E);
        assertEquals(25.4 / 720, perPixel(), 1e-9);
        assertEquals("100 %", zoom());
        hand.key(KeyCode.E);
        assertEquals(whole, perPixel(), 1e-9, "back to all");
        hand.tell("resolution", "1440dpi");
        hand.rest();
        act(() -> hand.desk().picture.requestFocus());
        hand.press("zoom");
        assertEquals(25.4 / 1440, perPixel(), 1e-9);
        hand.key(KeyCode.DIGIT1);
        hand.press("zoom");
        assertEquals(1, perPixel(), 1e-9, "art by its own pixels");
        act(() -> hand.desk().choose(Station.FILM));
        hand.key(KeyCode.S);
        hand.rest();
        hand.press("zoom");
        assertEquals(25.4 / 1440, perPixel(), 1e-9, "the sheet, too");
    }

    private int corner() throws Exception {
        return onScreen(() -> hand.desk()
                .picture
                .snapshot(new SnapshotParameters(), null)
                .getPixelReader()
                .getArgb(5, 5));
    }

    @Test
    void theSurroundIsChosenNeutralAndKept() throws Exception {
        hand.smallPlate(ART);
        int light = corner();
        hand.key(KeyCode.D);
        int middle = corner();
        hand.key(KeyCode.D);
        int dark = corner();
        for (int grey : new int[] {light, middle, dark}) {
            assertTrue((grey >> 16 & 0xFF) == (grey >> 8 & 0xFF) && (grey >> 8 & 0xFF) == (grey & 0xFF), "a hue");
        }
        assertTrue((light & 0xFF) > (middle & 0xFF) && (middle & 0xFF) > (dark & 0xFF));
        hand.key(KeyCode.F3);
        assertTrue((corner() & 0xFF) < 0x10, "the safelight is darker than any");
        hand.key(KeyCode.F3);
        assertEquals(dark, corner());
        try (DeskHand again = new DeskHand(folder.resolve("state"))) {
            assertEquals(Surround.DARK, onScreen(() -> again.desk().wishes.surround()));
            again.key(KeyCode.F10);
            again.press("surround");
            assertEquals(Surround.LIGHT, onScreen(() -> again.desk().wishes.surround()));
        }
    }
}
