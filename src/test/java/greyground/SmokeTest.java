package greyground;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.quantity.Size;
import org.junit.jupiter.api.Test;

class SmokeTest {
    @Test
    void readsASize() {
        assertEquals(new Size(200, 250), Size.parse("plate", "200x250mm"));
    }
}
