package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.model.Place;
import greyground.desk.model.Station;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

/** Choosing by keys never takes the keys elsewhere, whatever else the choice changes. */
class ChoicesIT extends AtTheDesk {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    private final Set<String> walked = new TreeSet<>();

    /** Goes through every list that is seen, item by item, down and up again. */
    private void walk(String where) throws Exception {
        List<String> ids = onScreen(() -> {
            hand.root().applyCss();
            hand.root().layout();
            return DeskHand.seen(hand.root()).stream()
                    .filter(node -> node instanceof ComboBox<?> && !node.isDisabled())
                    .map(Node::getId)
                    .toList();
        });
        for (String id : ids) {
            int items = onScreen(() -> hand.find(id, ComboBox.class).getItems().size());
            act(() -> hand.find(id, ComboBox.class).requestFocus());
            for (KeyCode way : new KeyCode[] {KeyCode.DOWN, KeyCode.UP}) {
                for (int i = 0; i < items; i++) {
                    hand.key(way);
                    onScreen(() -> null);
                    Node owner = onScreen(() -> hand.stage().getScene().getFocusOwner());
                    assertEquals(
                            id, owner == null ? "nothing" : owner.getId(), where + ", " + id + ", " + way + " " + i);
                }
                Object value = onScreen(() -> hand.find(id, ComboBox.class).getValue());
                Object end = onScreen(
                        () -> hand.find(id, ComboBox.class).getItems().get(way == KeyCode.DOWN ? items - 1 : 0));
                assertEquals(end, value, "the arrows choose in " + id);
            }
            walked.add(id);
        }
    }

    @Test
    void theKeysStayWithTheListThatIsChosenFrom() throws Exception {
        hand.printers = DeskPictures.invented();
        hand.smallPlate(ART);
        hand.key(KeyCode.F7);
        for (Station station : Station.values()) {
            act(() -> hand.desk().choose(station));
            act(() -> {
                if (hand.root().lookup("#more-settings") instanceof javafx.scene.control.ToggleButton more
                        && !more.isSelected()) {
                    more.fire();
                }
            });
            walk(station.label());
        }
        hand.rest();
        hand.press("print-film");
        waitFor(
                "the printer",
                () -> hand.find("print-printer", ComboBox.class) != null
                        && !hand.find("print-printer", ComboBox.class)
                                .getItems()
                                .isEmpty());
        walk("Printing");
        hand.press("print-not");
        act(() -> hand.desk().shops.name("Old bath"));
        act(() -> hand.desk().shops.name("New bath"));
        act(() -> hand.desk().go(Place.WORKSHOP));
        walk("Workshop");
        act(() -> hand.desk().go(Place.TEST_PLATE));
        walk("Test plate");
        act(() -> hand.desk().go(Place.PLAN));
        waitFor("the plan", () -> !hand.desk().plan.lookupAll(".clock").isEmpty());
        walk("Plan");
        assertTrue(
                walked.containsAll(List.of(
                        "workshop-names",
                        "setting-process",
                        "setting-carrier",
                        "setting-source",
                        "print-printer",
                        "print-paper",
                        "test-kind")),
                walked.toString());
    }
}
