package greyground.desk.window;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;

/** A window with a small plate of a real picture on the bench. */
abstract class SmallPlate extends AtTheDesk {
    static final Path ART = Path.of("testimages/leaf-alpha.png");

    /** What is laid on the bench. */
    Path art() throws Exception {
        return ART;
    }

    @BeforeEach
    void laySmallPlate() throws Exception {
        hand.smallPlate(art());
    }

    void loupeAt(double x, double y) throws Exception {
        DeskHand.act(() -> hand.desk().picture.layLoupe(x, y));
        hand.rest();
    }
}
