package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.model.Place;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No words are cut in any state of the window, at its least size and at its usual one, with the longest of file names. */
class TextFitsIT {
    @TempDir
    Path folder;

    @Test
    void noWordsAreCutAndEveryLightKeepsThemLegible() throws Exception {
        Path art = folder.resolve("n".repeat(58) + " of a name " + "m".repeat(47) + ".png");
        assertEquals(120, art.getFileName().toString().length());
        Files.copy(Path.of("testimages/leaf-alpha.png"), art);
        List<String> wrong = new ArrayList<>();
        try (DeskHand hand = new DeskHand(folder.resolve("state"))) {
            look(hand, "Empty", wrong);
            hand.smallPlate(art);
            act(() -> hand.desk().go(Place.PLAN));
            waitFor("the plan", () -> !hand.desk().plan.lookupAll(".clock").isEmpty());
            for (Map.Entry<String, Runnable> state :
                    DeskWalk.states(hand.desk()).entrySet()) {
                act(state.getValue());
                look(hand, state.getKey(), wrong);
            }
        }
        assertEquals(List.of(), wrong.stream().distinct().toList());
    }

    private static void look(DeskHand hand, String state, List<String> wrong) throws Exception {
        for (double[] size : new double[][] {{1400, 900}, {DeskWindow.LEAST_WIDTH, DeskWindow.LEAST_HEIGHT}}) {
            act(() -> {
                hand.stage().setWidth(size[0]);
                hand.stage().setHeight(size[1]);
            });
            waitFor("the size", () -> {
                javafx.geometry.Bounds bounds = hand.root().getLayoutBounds();
                return Math.abs(bounds.getWidth() - size[0]) < 1 && Math.abs(bounds.getHeight() - size[1]) < 1;
            });
            onScreen(() -> {
                        // News may have come since the last pulse laid the window out.
                        hand.root().applyCss();
                        hand.root().layout();
                        return CutWords.of(hand.root());
                    })
                    .forEach(cut -> wrong.add(state + " at " + (int) size[0] + " x " + (int) size[1] + ": " + cut));
        }
        for (boolean safe : new boolean[] {true, false}) {
            act(() -> hand.desk().shineSafely(safe));
            List<String> faint = onScreen(() -> Contrast.faint(hand.root()));
            faint.forEach(each -> wrong.add(state + (safe ? " under the safelight: " : ": ") + each));
        }
        assertTrue(onScreen(() -> hand.root().lookup(".label") != null));
    }
}
