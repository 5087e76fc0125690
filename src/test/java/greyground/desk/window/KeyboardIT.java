package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.model.KeyList;
import greyground.desk.model.Place;
import greyground.desk.model.Station;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Everything is reached by keys, has a name and a word of help, and comes in the order in which the eye meets it. */
class KeyboardIT {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    @TempDir
    Path folder;

    @Test
    void everyControlOfEveryStateIsReachedNamedAndInOrder() throws Exception {
        List<String> wrong = new ArrayList<>();
        try (DeskHand hand = new DeskHand(folder.resolve("state"), 1400, 900)) {
            reach(hand, "Empty", wrong);
            hand.smallPlate(ART);
            act(() -> hand.desk().go(Place.PLAN));
            waitFor("the plan", () -> !hand.desk().plan.lookupAll(".clock").isEmpty());
            for (Map.Entry<String, Runnable> state :
                    DeskWalk.states(hand.desk()).entrySet()) {
                act(state.getValue());
                hand.rest();
                Node strip = hand.find("clock-strip", Node.class);
                waitFor(
                        "the clocks",
                        () -> !strip.isVisible() || !hand.desk().clocks.begun().isEmpty());
                reach(hand, state.getKey(), wrong);
            }
        }
        assertEquals(List.of(), wrong.stream().distinct().toList());
    }

    private static void reach(DeskHand hand, String state, List<String> wrong) throws Exception {
        List<Node> usable = onScreen(() -> {
            hand.root().applyCss();
            hand.root().layout();
            return usable(hand.root());
        });
        Set<Node> reached = new LinkedHashSet<>();
        List<Node> order = new ArrayList<>();
        act(() -> hand.root().lookup("#bench-menu").requestFocus());
        for (int i = 0; i < usable.size() + 4; i++) {
            Node focused = onScreen(() -> hand.stage().getScene().getFocusOwner());
            if (reached.add(focused)) {
                order.add(focused);
            }
            if (focused instanceof ToggleButton toggle && toggle.getToggleGroup() != null) {
                arrows(hand, toggle, reached);
            }
            hand.key(KeyCode.TAB);
        }
        // F6 goes from part to part, whatever Tab does.
        for (int i = 0; i < 6; i++) {
            hand.key(KeyCode.F6);
            reached.add(onScreen(() -> hand.stage().getScene().getFocusOwner()));
        }
        for (Node node : usable) {
            if (!reached.contains(node)) {
                wrong.add(state + ": keys don't reach " + named(node));
            }
        }
        for (Node node : reached) {
            if (node == null) {
                wrong.add(state + ": the keys went nowhere");
            } else {
                onScreen(() -> {
                    check(state, node, hand.root(), wrong);
                    return null;
                });
            }
        }
        onScreen(() -> {
            ordered(state, order, wrong);
            return null;
        });
    }

    static void arrows(DeskHand hand, ToggleButton toggle, Set<Node> reached) throws Exception {
        for (KeyCode arrow : new KeyCode[] {KeyCode.DOWN, KeyCode.UP}) {
            for (int step = 0; step < toggle.getToggleGroup().getToggles().size(); step++) {
                hand.key(arrow);
                reached.add(onScreen(() -> hand.stage().getScene().getFocusOwner()));
            }
        }
        act(toggle::requestFocus);
    }

    static List<Node> usable(Parent parent) {
        List<Node> found = new ArrayList<>();
        for (Node child : parent.getChildrenUnmodifiable()) {
            if (!child.isVisible() || child.isDisabled()) {
                continue;
            }
            if (child.isFocusTraversable()) {
                found.add(child);
            }
            // What a control is made of is the control's own affair.
            boolean whole = child instanceof Control && !(child instanceof ScrollPane);
            if (child instanceof Parent inner && !whole) {
                found.addAll(usable(inner));
            }
        }
        return found;
    }

    static boolean isNamed(Node node) {
        String told = node.getAccessibleText();
        return (told != null && !told.isBlank())
                || (node instanceof Labeled labeled && !labeled.getText().isBlank());
    }

    private static String named(Node node) {
        String told = node.getAccessibleText();
        return node.getClass().getSimpleName() + " " + (node.getId() == null ? "" : "#" + node.getId() + " ")
                + (told == null ? node instanceof Labeled labeled ? labeled.getText() : "" : told);
    }

    /** A name for whoever hears the window, and a tooltip, a label or help for whoever sees it. */
    private static void check(String state, Node node, Parent root, List<String> wrong) {
        if (!isNamed(node)) {
            wrong.add(state + ": no name: " + named(node));
        }
        boolean tip = node instanceof Control control
                && control.getTooltip() != null
                && !control.getTooltip().getText().isBlank();
        boolean label = DeskHand.seen(root).stream()
                .anyMatch(each -> each instanceof Label words && words.getLabelFor() == node);
        boolean help = node.getAccessibleHelp() != null;
        boolean part = node instanceof ScrollPane || !(node instanceof Control);
        if (!tip && !label && !help && !part) {
            wrong.add(state + ": neither tooltip nor label: " + named(node));
        }
    }

    /** Within one holder, Tab never goes up, and on one line never back. */
    private static void ordered(String state, List<Node> order, List<String> wrong) {
        for (int i = 1; i < order.size(); i++) {
            Node before = order.get(i - 1);
            Node now = order.get(i);
            if (before == null || now == null || part(before) != part(now)) {
                continue;
            }
            Bounds above = before.localToScene(before.getLayoutBounds());
            Bounds here = now.localToScene(now.getLayoutBounds());
            boolean line = here.getCenterY() > above.getMinY() && here.getCenterY() < above.getMaxY();
            boolean on = line ? here.getCenterX() > above.getCenterX() : here.getCenterY() > above.getCenterY();
            if (!on) {
                wrong.add(state + ": " + named(now) + " comes after " + named(before) + " but lies before it");
            }
        }
    }

    /** The part of the window that a node lies in, or what it is rolled in. */
    private static Node part(Node node) {
        Node part = node.getParent();
        while (part.getParent() != null
                && part.getParent().getParent() != null
                && !(part instanceof ScrollPane)
                && !part.getStyleClass().contains("head")
                && !part.getStyleClass().contains("side")
                && !part.getStyleClass().contains("tools")
                && !part.getStyleClass().contains("rail")) {
            part = part.getParent();
        }
        return part;
    }

    /** The list of keys tells the truth: each key that works anywhere is taken by the window. */
    @Test
    void everyKeyThatIsListedDoesSomething() throws Exception {
        try (DeskHand hand = new DeskHand(folder.resolve("state"))) {
            hand.smallPlate(ART);
            for (KeyList.Group group : KeyList.ALL) {
                for (KeyList.Line line : group.lines()) {
                    if (!line.anywhere().isEmpty()) {
                        act(() -> hand.desk().choose(Station.ART));
                        act(() -> hand.desk().picture.requestFocus());
                        assertTrue(press(hand, line.anywhere()), line.keys());
                    }
                }
            }
            hand.key(KeyCode.F1);
            assertTrue(onScreen(() -> hand.desk().pages.isOpen(hand.desk().keys)));
            hand.key(KeyCode.ESCAPE);
            assertTrue(onScreen(() -> !hand.desk().pages.isOpen(hand.desk().keys)));
        }
    }

    private static boolean press(DeskHand hand, String keys) throws Exception {
        List<KeyCode> held = new ArrayList<>();
        if (keys.contains("Shortcut+")) {
            held.add(KeyCode.CONTROL);
        }
        if (keys.contains("Shift+")) {
            held.add(KeyCode.SHIFT);
        }
        String last = keys.substring(keys.lastIndexOf('+') + 1);
        KeyCode code = last.matches("[0-9]") ? KeyCode.valueOf("DIGIT" + last) : KeyCode.valueOf(last);
        return hand.key(code, held.toArray(KeyCode[]::new));
    }

    /** Enter presses the button that has the keys, also in a question. */
    @Test
    void enterPressesTheButtonThatHasTheKeys() throws Exception {
        try (DeskHand hand = new DeskHand(folder.resolve("state"))) {
            hand.smallPlate(ART);
            act(() -> hand.root().lookup("#safelight").requestFocus());
            hand.key(KeyCode.ENTER);
            assertTrue(onScreen(() -> hand.desk().isSafe()));
            act(() -> hand.desk().mayClose(() -> {}));
            hand.key(KeyCode.ESCAPE);
            assertEquals("", hand.question(), "Escape gives the last answer");
        }
    }
}
