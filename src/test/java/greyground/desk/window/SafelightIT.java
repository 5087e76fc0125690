package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.model.Place;
import greyground.desk.model.Station;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javafx.application.Platform;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.SnapshotParameters;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.image.WritableImage;
import javafx.scene.input.ContextMenuEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.paint.Color;
import javafx.stage.Window;
import org.junit.jupiter.api.Test;

/** Under the safelight nothing that the program shows has more blue or green than its amber: not its lists, hints and menus either. */
class SafelightIT extends AtTheDesk {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");
    /** The lightest amber of the colours is #ffb84a; two steps more for rounding. */
    private static final int MOST_BLUE = 0x4A + 2;

    private static final int MOST_GREEN = 0xB8 + 2;

    /** The most blue and green of any pixel of any window that is open. */
    static void nothingShines(String after, List<String> wrong) {
        for (Window window : List.copyOf(Window.getWindows())) {
            SnapshotParameters dark = new SnapshotParameters();
            dark.setFill(Color.BLACK);
            WritableImage seen = window.getScene().getRoot().snapshot(dark, null);
            int blue = 0;
            int green = 0;
            for (int y = 0; y < seen.getHeight(); y++) {
                for (int x = 0; x < seen.getWidth(); x++) {
                    int pixel = seen.getPixelReader().getArgb(x, y);
                    blue = Math.max(blue, pixel & 0xFF);
                    green = Math.max(green, pixel >> 8 & 0xFF);
                }
            }
            if (blue > MOST_BLUE || green > MOST_GREEN) {
                wrong.add(after + ", " + window.getClass().getSimpleName() + ": blue " + blue + ", green " + green);
            }
        }
    }

    @Test
    void noStateOfTheWindowShines() throws Exception {
        List<String> wrong = new ArrayList<>();
        act(() -> hand.desk().shineSafely(true));
        act(() -> nothingShines("Empty", wrong));
        act(() -> hand.desk().shineSafely(false));
        hand.smallPlate(ART);
        act(() -> hand.desk().shineSafely(true));
        act(() -> hand.desk().go(Place.PLAN));
        waitFor("the plan", () -> !hand.desk().plan.lookupAll(".clock").isEmpty());
        for (Map.Entry<String, Runnable> state : DeskWalk.states(hand.desk()).entrySet()) {
            act(state.getValue());
            act(() -> nothingShines(state.getKey(), wrong));
        }
        assertEquals(List.of(), wrong);
    }

    /** Lists, hints and the menus of text fields are windows of their own. */
    @Test
    void whatOpensOverTheWindowDoesNotShine() throws Exception {
        List<String> wrong = new ArrayList<>();
        Map<String, Integer> opened = new TreeMap<>();
        hand.smallPlate(ART);
        act(() -> hand.desk().folds.settings(true));
        act(() -> hand.desk().shineSafely(true));
        for (Station station : Station.values()) {
            act(() -> hand.desk().choose(station));
            act(() -> {
                hand.root().applyCss();
                hand.root().layout();
                for (Node node : DeskHand.seen(hand.root())) {
                    Bounds at = node.localToScreen(node.getLayoutBounds());
                    if (node instanceof ComboBox<?> choice) {
                        choice.show();
                        nothingShines(station + ", list of " + node.getId(), wrong);
                        opened.merge("lists", Window.getWindows().size() - 1, Integer::sum);
                        choice.hide();
                    } else if (node instanceof TextField) {
                        node.fireEvent(new ContextMenuEvent(
                                ContextMenuEvent.CONTEXT_MENU_REQUESTED,
                                4,
                                4,
                                at.getMinX(),
                                at.getMinY(),
                                false,
                                null));
                        nothingShines(station + ", menu of " + node.getId(), wrong);
                        opened.merge("menus", Window.getWindows().size() - 1, Integer::sum);
                        closePopups();
                    }
                    Tooltip hint = node instanceof Control control ? control.getTooltip() : null;
                    if (hint != null) {
                        hint.show(node, at.getMinX(), at.getMaxY());
                        nothingShines(station + ", hint of " + node.getId(), wrong);
                        opened.merge("hints", Window.getWindows().size() - 1, Integer::sum);
                        hint.hide();
                    }
                }
            });
        }
        assertEquals(List.of(), wrong.stream().distinct().toList());
        for (String kind : new String[] {"lists", "menus", "hints"}) {
            assertTrue(opened.getOrDefault(kind, 0) > 2, kind + " were opened: " + opened);
        }
    }

    private static void closePopups() {
        List.copyOf(Window.getWindows()).stream()
                .filter(javafx.stage.PopupWindow.class::isInstance)
                .forEach(Window::hide);
    }

    // ------------------------------------------------------------------ files

    /** A key press that may lead to a question for a file, which holds the press until it is answered. */
    private void press(KeyCode code, boolean control) {
        Platform.runLater(() -> hand.root()
                .fireEvent(new javafx.scene.input.KeyEvent(
                        javafx.scene.input.KeyEvent.KEY_PRESSED, "", "", code, false, control, false, false)));
    }

    private void waitForFiles() throws Exception {
        waitFor("the files", () -> hand.desk().pages.isOpen(hand.desk().filePage));
    }

    @Test
    void filesAreChosenByKeysInTheWindowsOwnColours() throws Exception {
        List<String> wrong = new ArrayList<>();
        Path scans = Files.createDirectories(folder.resolve("scans"));
        Files.copy(ART, scans.resolve("leaf.png"));
        Files.copy(Path.of("testimages/cup.png"), scans.resolve("cup.png"));
        Files.writeString(scans.resolve("notes.txt"), "no picture");
        hand.smallPlate(scans.resolve("leaf.png"));
        act(() -> hand.desk().shineSafely(true));
        hand.toOpen.add(Path.of("/the/system/was/asked"));
        press(KeyCode.O, true);
        waitForFiles();
        act(() -> nothingShines("files", wrong));
        javafx.scene.control.ListView<?> list = hand.find("file-list", javafx.scene.control.ListView.class);
        assertEquals(2, onScreen(() -> list.getItems().size()));
        assertTrue(onScreen(list::isFocused));
        hand.key(KeyCode.BACK_SPACE);
        assertTrue(onScreen(() -> list.getSelectionModel().getSelectedItem().toString())
                .contains("scans"));
        hand.key(KeyCode.ENTER);
        hand.type("file-name", "nowhere.png");
        assertTrue(onScreen(() -> hand.root().lookup("#files .fault").isVisible()));
        act(list::requestFocus);
        act(() -> list.getSelectionModel().selectFirst());
        hand.key(KeyCode.ENTER);
        waitFor(
                "the cup",
                () -> hand.desk().model.state().orElseThrow().art().endsWith("cup.png")
                        || hand.root().lookup("#question") != null);
        if (!hand.question().isEmpty()) {
            hand.answer("Don't save");
            waitFor(
                    "the cup",
                    () -> hand.desk().model.state().orElseThrow().art().endsWith("cup.png"));
        }
        hand.acceptPlate();
        assertEquals(1, hand.toOpen.size(), "the system's own window was not asked");
        assertEquals(List.of(), wrong);
    }

    @Test
    void aFileIsWrittenReplacedOnlyWhenToldTwiceOrNotAtAll() throws Exception {
        hand.smallPlate(ART);
        act(() -> hand.desk().shineSafely(true));
        Path job = folder.resolve("leaf.json");
        press(KeyCode.S, true);
        waitForFiles();
        hand.key(KeyCode.ESCAPE);
        waitFor("the end", () -> !hand.desk().pages.isOpen());
        assertTrue(onScreen(() -> hand.desk().picture.isVisible()));
        press(KeyCode.S, true);
        waitForFiles();
        hand.type("file-name", job.toString());
        waitFor("the job", () -> Files.exists(job));
        Files.writeString(job, "something else");
        Platform.runLater(() -> hand.desk().files.saveJobAs());
        waitForFiles();
        hand.type("file-name", job.toString());
        assertEquals("something else", Files.readString(job), "asked first");
        assertTrue(onScreen(() -> hand.desk().pages.isOpen()));
        hand.press("file-take");
        waitFor("the job", () -> !hand.desk().pages.isOpen());
        assertTrue(Files.readString(job).contains("greyground"));
        // The window closes while files are asked for.
        Platform.runLater(() -> hand.desk().files.saveJobAs());
        waitForFiles();
    }
}
