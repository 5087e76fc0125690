package greyground.desk.window;

import static org.junit.jupiter.api.Assertions.assertEquals;

import javafx.scene.paint.Color;
import org.junit.jupiter.api.Test;

class ContrastTest {
    /** WCAG 2.1: black on white is 21:1; #767676 is the lightest grey that reaches 4.5:1 on white (technique G18's usual example). */
    @Test
    void ratiosAreThoseOfTheStandard() {
        assertEquals(21, Contrast.ratio(Color.BLACK, Color.WHITE), 1e-9);
        assertEquals(1, Contrast.ratio(Color.RED, Color.RED), 1e-9);
        assertEquals(4.54, Contrast.ratio(Color.web("#767676"), Color.WHITE), 0.005);
        assertEquals(4.48, Contrast.ratio(Color.WHITE, Color.web("#777777")), 0.005);
    }
}
