package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class HistoryTest {
    @Test
    void everyStepGoesBackAndForthAgain() {
        History<Integer> history = new History<>(0);
        for (int i = 1; i <= 5; i++) {
            history.step(i, "to " + i, "");
        }
        for (int i = 4; i >= 0; i--) {
            assertEquals(Optional.of("to " + (i + 1)), history.undoes());
            assertTrue(history.undo());
            assertEquals(i, history.present());
        }
        assertFalse(history.undo());
        for (int i = 1; i <= 5; i++) {
            assertTrue(history.redo());
            assertEquals(i, history.present());
        }
        assertFalse(history.redo());
    }

    @Test
    void stepsOfOneGestureAreOneStep() {
        History<Integer> history = new History<>(0);
        history.step(1, "bite", "pull");
        history.step(2, "bite", "pull");
        history.step(3, "bite", "pull");
        history.letGo();
        history.step(4, "bite", "pull");
        history.undo();
        assertEquals(3, history.present());
        history.undo();
        assertEquals(0, history.present());
    }

    @Test
    void aNewStepEndsWhatWasTakenBack() {
        History<Integer> history = new History<>(0);
        history.step(1, "a", "");
        history.undo();
        history.step(2, "b", "a");
        assertFalse(history.redo());
        history.undo();
        assertEquals(0, history.present());
    }

    @Test
    void aStepThatChangesNothingIsNone() {
        History<Integer> history = new History<>(7);
        history.step(7, "nothing", "");
        assertFalse(history.undo());
    }
}
