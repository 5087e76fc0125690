package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.junit.jupiter.api.Test;

/** The tone diagram follows the pointer, and can be walked by keys alone. */
class DiagramIT extends SmallPlate {
    private String told() throws Exception {
        return onScreen(() -> hand.root().lookup("#diagram").getAccessibleText());
    }

    private void diagramKey(KeyCode code) throws Exception {
        act(() -> {
            Node diagram = hand.root().lookup("#diagram");
            diagram.requestFocus();
            diagram.fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false));
        });
    }

    @Test
    void keysWalkFromToneToTone() throws Exception {
        diagramKey(KeyCode.HOME);
        assertTrue(told().contains("art L* 0,"), told());
        diagramKey(KeyCode.RIGHT);
        diagramKey(KeyCode.PAGE_UP);
        assertTrue(told().contains("art L* 11,"), told());
        diagramKey(KeyCode.END);
        assertTrue(told().contains("art L* 100, film 0 % black"), told());
        diagramKey(KeyCode.RIGHT);
        assertTrue(told().contains("art L* 100,"), "there is nothing past white");
        // What is walked to is what pointing at such a tone tells.
        loupeAt(30, 20);
        String pointed = told();
        int lightness = Integer.parseInt(pointed.replaceAll(".*art L\\* (\\d+),.*", "$1"));
        diagramKey(KeyCode.HOME);
        for (int i = 0; i < lightness; i++) {
            diagramKey(KeyCode.RIGHT);
        }
        double film = film(pointed);
        assertEquals(film, film(told()), 2.5, pointed + " / " + told());
    }

    private static double film(String told) {
        return Double.parseDouble(told.replaceAll(".*film (\\d+) %.*", "$1"));
    }
}
