package greyground.desk.window;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A window of its own for each test, closed when the test is over. */
abstract class AtTheDesk {
    @TempDir
    Path folder;

    /** None where the window can't be made; then the test is skipped. */
    DeskHand hand;

    @BeforeEach
    void openWindow() throws Exception {
        hand = new DeskHand(folder.resolve("state"));
    }

    @AfterEach
    void closeWindow() throws Exception {
        if (hand != null) {
            hand.close();
        }
    }
}
