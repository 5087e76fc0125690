package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.model.DeskFolder;
import greyground.desk.model.DeskHabits;
import greyground.desk.model.Station;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The picture comes first: how much of the window it has, how few words stand beside it, and that folds stay as they were left. */
class LayoutIT {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    @TempDir
    Path folder;

    private static void size(DeskHand hand, double width, double height) throws Exception {
        act(() -> {
            hand.stage().setWidth(width);
            hand.stage().setHeight(height);
        });
        waitFor(
                "the size",
                () -> Math.abs(hand.root().getLayoutBounds().getWidth() - width) < 1
                        && Math.abs(hand.root().getLayoutBounds().getHeight() - height) < 1);
        act(() -> {
            hand.root().applyCss();
            hand.root().layout();
        });
    }

    private static double share(DeskHand hand) throws Exception {
        return onScreen(() -> {
            Bounds picture = hand.desk().picture.getLayoutBounds();
            Bounds window = hand.root().getLayoutBounds();
            return picture.getWidth() * picture.getHeight() / window.getWidth() / window.getHeight();
        });
    }

    /** The picture has at least 60 % of the least window and 70 % of a usual one, words at rest at most 100. */
    @Test
    void thePictureHasMostOfTheWindowAndFewWordsStandBesideIt() throws Exception {
        try (DeskHand hand = new DeskHand(folder.resolve("state"))) {
            hand.smallPlate(ART);
            for (Station station : Station.values()) {
                act(() -> hand.desk().choose(station));
                size(hand, DeskWindow.LEAST_WIDTH, DeskWindow.LEAST_HEIGHT);
                assertTrue(share(hand) >= 0.6, station + " at least size: " + share(hand));
                size(hand, 1600, 1000);
                assertTrue(share(hand) >= 0.7, station + " at 1600 x 1000: " + share(hand));
                hand.rest();
                List<String> words = onScreen(() -> words(hand));
                assertTrue(words.size() <= 100, words.size() + " words at " + station + ": " + words);
            }
        }
    }

    private static List<String> words(DeskHand hand) {
        return DeskHand.seen(hand.root()).stream()
                .flatMap(LayoutIT::texts)
                .flatMap(text -> Stream.of(text.strip().split("\\s+")))
                .filter(word -> !word.isEmpty())
                .toList();
    }

    private static Stream<String> texts(Node node) {
        return node instanceof Labeled labeled
                ? Stream.of(labeled.getText() == null ? "" : labeled.getText())
                : node instanceof TextField field
                        ? Stream.of(field.getText().isEmpty() ? field.getPromptText() : field.getText())
                        : Stream.empty();
    }

    @Test
    void foldsStayAsTheyWereLeft() throws Exception {
        Path state = folder.resolve("state");
        try (DeskHand hand = new DeskHand(state)) {
            hand.smallPlate(ART);
            assertTrue(onScreen(() -> !hand.desk().settings.isVisible()), "folded in a small window");
            hand.key(KeyCode.F7);
            assertTrue(onScreen(() -> hand.desk().settings.isVisible()));
            assertTrue(share(hand) >= 0.6, "with settings: " + share(hand));
            hand.press("fold-tones");
            hand.press("rulers");
            assertTrue(onScreen(() -> hand.desk().tones.isVisible()));
        }
        try (DeskHand hand = new DeskHand(state)) {
            hand.smallPlate(ART);
            assertTrue(onScreen(() -> hand.desk().settings.isVisible()
                    && hand.desk().tones.isVisible()
                    && hand.desk().folds.rulers()));
        }
        DeskHabits.Frame frame = new DeskHabits.Frame(10, 20, 1300, 800, false);
        new DeskHabits(new DeskFolder(state)).keep(frame);
        DeskHabits again = new DeskHabits(new DeskFolder(state));
        assertEquals(frame, again.frame().orElseThrow());
        assertEquals(true, again.chosen("settings").orElseThrow());
    }
}
