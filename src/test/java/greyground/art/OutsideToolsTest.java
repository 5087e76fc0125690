package greyground.art;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.opentest4j.AssertionFailedError;
import org.opentest4j.TestAbortedException;

/** What is missing is skipped on a desk and failed on a build machine. */
class OutsideToolsTest {
    @Test
    void aMissingProgramSkipsOnADeskAndFailsOnABuildMachine() {
        assertThrows(TestAbortedException.class, () -> OutsideTools.need(false, "a program", null));
        assertThrows(TestAbortedException.class, () -> OutsideTools.need(false, "a program", "false"));
        assertThrows(AssertionFailedError.class, () -> OutsideTools.need(false, "a program", "true"));
        assertDoesNotThrow(() -> OutsideTools.need(true, "a program", "true"));
    }
}
