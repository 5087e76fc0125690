package greyground.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.KeptFiles;
import greyground.output.ExternalTool;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The window, driven as a hand would: through its own controls and keys, on a screen that is not there. */
class DeskIT {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    @TempDir
    Path folder;

    private final Deque<Path> toSave = new ArrayDeque<>();
    private final Deque<Path> toOpen = new ArrayDeque<>();
    private Stage stage;
    private DeskWindow desk;
    private volatile long nanos;

    @BeforeEach
    void openWindow() throws Exception {
        NativeParts.start();
        onScreen(() -> {
            desk = window(ProcessHandle.current().pid());
            stage = new Stage();
            stage.setScene(new Scene(desk.root(), DeskWindow.LEAST_WIDTH, DeskWindow.LEAST_HEIGHT));
            stage.show();
            return null;
        });
    }

    private DeskWindow window(long process) {
        FileAsking files = new FileAsking() {
            @Override
            public Optional<Path> open(String title, Kind kind) {
                return Optional.ofNullable(toOpen.poll());
            }

            @Override
            public Optional<Path> save(String title, Kind kind, String suggested) {
                return Optional.ofNullable(toSave.poll());
            }
        };
        return new DeskWindow(new DeskServices(
                files,
                new DeskFolder(folder.resolve("state")),
                process,
                () -> LocalDate.of(2026, 3, 4),
                () -> nanos == 0 ? System.nanoTime() : nanos,
                Platform::runLater));
    }

    @AfterEach
    void closeWindow() throws Exception {
        if (stage != null) {
            onScreen(() -> {
                stage.hide();
                desk.closed();
                return null;
            });
        }
    }

    private static <T> T onScreen(Callable<T> work) throws Exception {
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        return task.get(60, TimeUnit.SECONDS);
    }

    private static void waitFor(String what, BooleanSupplier there) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(90);
        while (!onScreen(there::getAsBoolean)) {
            assertTrue(System.nanoTime() < end, "waited in vain for " + what);
            Thread.sleep(20);
        }
    }

    private <T extends Node> T find(String id, Class<T> kind) {
        return kind.cast(desk.root().lookup("#" + id));
    }

    private void press(String id) throws Exception {
        onScreen(() -> {
            Node node = desk.root().lookup("#" + id);
            assertFalse(node.isDisabled(), id + " can't be pressed");
            if (node instanceof ToggleButton toggle) {
                toggle.fire();
            } else {
                ((Button) node).fire();
            }
            return null;
        });
    }

    private void type(String id, String words) throws Exception {
        onScreen(() -> {
            TextField field = find("setting-" + id, TextField.class);
            field.requestFocus();
            field.setText(words);
            field.fireEvent(new javafx.event.ActionEvent());
            return null;
        });
    }

    private void key(KeyCode code, boolean command) throws Exception {
        onScreen(() -> {
            Node target = stage.getScene().getFocusOwner();
            (target == null ? desk.root() : target)
                    .fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, command, false, false));
            return null;
        });
    }

    private void answer(String words) throws Exception {
        onScreen(() -> {
            Node question = desk.root().lookup("#question");
            Button button = question.lookupAll(".button").stream()
                    .map(Button.class::cast)
                    .filter(each -> each.getText().equals(words))
                    .findFirst()
                    .orElseThrow();
            button.fire();
            return null;
        });
    }

    private void smallPlate() throws Exception {
        toOpen.add(ART);
        press("open");
        waitFor("the art", () -> desk.model().state().isPresent());
        onScreen(() -> {
            desk.tell("plate", java.util.Map.of("plate", "60x45mm", "resolution", "720dpi"));
            return null;
        });
        waitFor("a plate", desk::isAtRest);
    }

    private BenchState state() {
        return desk.model().state().orElseThrow();
    }

    @Test
    void fromAPictureToAFilmThatAnIndependentReaderOpens() throws Exception {
        smallPlate();
        press("station-film");
        type("grain", "150");
        assertEquals("150um", state().words().get("grain"));
        press("station-copper");
        type("bite", "12");
        assertEquals(12, state().workshop().bath().biteMinutes().value());
        waitFor("the plate", desk::isAtRest);
        Path film = folder.resolve("leaf.pdf");
        toSave.add(film);
        press("make-film");
        waitFor("the film", () -> !desk.export().isWorking());
        assertTrue(Files.size(film) > 10_000);
        assertEquals(12, KeptFiles.workshop(film).bath().biteMinutes().value());
        // poppler: the film's image at the printer's own resolution, one bit a pixel.
        String images = ExternalTool.run(folder, "pdfimages", "-list", film.toString());
        assertTrue(images.matches("(?s).*image +[0-9]+ +[0-9]+ +gray +1 +1 .* 720 +720 .*"), images);
    }

    @Test
    void everyChangeIsTakenBackAndDoneAgainByKeys() throws Exception {
        smallPlate();
        BenchState first = state();
        press("station-film");
        type("bleed", "4.5");
        onScreen(() -> {
            desk.artTools().quarter(true);
            return null;
        });
        BenchState last = state();
        assertNotEquals(first.job(), last.job());
        key(KeyCode.Z, true);
        key(KeyCode.Z, true);
        assertEquals(first, state());
        key(KeyCode.Y, true);
        key(KeyCode.Y, true);
        assertEquals(last, state());
    }

    @Test
    void aWrongNumberIsToldBesideItselfAndChangesNothing() throws Exception {
        smallPlate();
        press("station-film");
        BenchState before = state();
        type("bleed", "77");
        assertEquals(before, state());
        String told = onScreen(() -> desk.root().lookupAll(".fault").stream()
                .map(node -> ((Label) node).getText())
                .filter(words -> !words.isEmpty())
                .findFirst()
                .orElse(""));
        assertTrue(told.contains("77") && told.contains("between 0 and 6"), told);
    }

    /** A resist that holds no land below 120 um loses many of a 180 um grain: the check finds places, and Enter goes to one. */
    @Test
    void aWarningTakesOneToItsPlace() throws Exception {
        smallPlate();
        press("station-resist");
        type("land", "120");
        press("station-art");
        @SuppressWarnings("unchecked")
        ListView<WarningsView.Line> list = find("warnings", ListView.class);
        waitFor("a place", () -> list.getItems().stream().anyMatch(line -> line.number() > 0));
        WarningsView.Line first = onScreen(() -> {
            WarningsView.Line line = list.getItems().stream()
                    .filter(each -> each.number() > 0)
                    .findFirst()
                    .orElseThrow();
            list.getSelectionModel().select(line);
            list.requestFocus();
            return line;
        });
        key(KeyCode.ENTER, false);
        assertEquals(Station.COPPER, onScreen(() -> desk.picture().station()));
        Viewport port = onScreen(() -> desk.picture().port());
        double x = port.pixelX(first.place().orElseThrow().acrossMillimetres());
        double y = port.pixelY(first.place().orElseThrow().downMillimetres());
        assertTrue(x >= 0 && x <= port.width() && y >= 0 && y <= port.height(), x + ", " + y);
        assertTrue(port.perPixel() <= 0.02);
    }

    @Test
    void aFilmThatIsStoppedLeavesNothing() throws Exception {
        smallPlate();
        onScreen(() -> {
            desk.tell("plate", java.util.Map.of("plate", "300x300mm", "resolution", "2880dpi"));
            return null;
        });
        Path film = folder.resolve("large.pdf");
        toSave.add(film);
        press("make-film");
        waitFor("the film's beginning", () -> desk.export().isWorking());
        press("stop-film");
        waitFor("the end", () -> !desk.export().isWorking());
        assertFalse(Files.exists(film));
        try (var left = Files.list(folder)) {
            assertEquals(
                    List.of(),
                    left.filter(file -> file.toString().endsWith(".part")).toList());
        }
    }

    @Test
    void unsavedWorkIsGuardedAndTakenUpAfterAKill() throws Exception {
        smallPlate();
        boolean[] closed = new boolean[1];
        assertFalse(onScreen(() -> desk.mayClose(() -> closed[0] = true)));
        answer("Stay here");
        assertFalse(closed[0]);
        // A killed desk: its work is kept under a process number that is no more.
        new Recovery(new DeskFolder(folder.resolve("state")), 9_999_999_999L).keep(state(), Optional.empty(), 0);
        BenchState lost = state();
        onScreen(() -> {
            desk.closed();
            desk = window(ProcessHandle.current().pid());
            stage.getScene().setRoot(desk.root());
            desk.begin(Optional.empty());
            return null;
        });
        answer("Take it up");
        waitFor("the work", () -> desk.model().state().isPresent());
        assertEquals(lost, state());
        assertTrue(onScreen(() -> desk.model().unsaved()));
        Path job = folder.resolve("leaf.json");
        toSave.add(job);
        assertFalse(onScreen(() -> desk.mayClose(() -> closed[0] = true)));
        answer("Save first");
        assertTrue(closed[0]);
        assertEquals(lost.job(), KeptFiles.job(job));
    }

    @Test
    void theWallCardCountsDownWithAClockThatStops() throws Exception {
        nanos = 1;
        smallPlate();
        key(KeyCode.F2, false);
        waitFor("the plan", () -> !desk.plan().lookupAll(".clock").isEmpty());
        Label clock = onScreen(
                () -> (Label) desk.plan().lookupAll(".clock").iterator().next());
        String whole = onScreen(clock::getText);
        Button start = onScreen(
                () -> (Button) clock.getParent().lookupAll(".button").iterator().next());
        onScreen(() -> {
            start.fire();
            nanos += 61_000_000_000L;
            desk.plan().tick();
            return null;
        });
        assertNotEquals(whole, onScreen(clock::getText));
        assertEquals("Stop", onScreen(start::getText));
        onScreen(() -> {
            nanos += 36_000_000_000_000L;
            desk.plan().tick();
            return null;
        });
        assertTrue(onScreen(clock::getText).startsWith("time is up"), onScreen(clock::getText));
    }

    /** Tab, and arrow keys among the stations, must come by every control that can be used. */
    @Test
    void everyControlIsReachedByKeysAndHasAName() throws Exception {
        smallPlate();
        for (Station station : Station.values()) {
            onScreen(() -> {
                desk.choose(station);
                return null;
            });
            Set<Node> usable = onScreen(() -> new HashSet<>(usable(desk.root())));
            Set<Node> reached = new HashSet<>();
            onScreen(() -> {
                desk.root().lookup("#open").requestFocus();
                return null;
            });
            for (int i = 0; i < usable.size() + 4; i++) {
                Node focused = onScreen(() -> stage.getScene().getFocusOwner());
                reached.add(focused);
                // Tab comes to one of a group; arrow keys go through the rest.
                if (focused instanceof ToggleButton toggle && toggle.getToggleGroup() != null) {
                    for (KeyCode arrow : new KeyCode[] {KeyCode.DOWN, KeyCode.UP}) {
                        for (int step = 0; step < Station.values().length + Place.values().length - 1; step++) {
                            key(arrow, false);
                            reached.add(onScreen(() -> stage.getScene().getFocusOwner()));
                        }
                    }
                    onScreen(() -> {
                        focused.requestFocus();
                        return null;
                    });
                }
                key(KeyCode.TAB, false);
            }
            usable.removeAll(reached);
            assertEquals(Set.of(), usable, station.label());
            for (Node node : reached) {
                assertTrue(onScreen(() -> isNamed(node)), "no name: " + node);
            }
        }
    }

    private static List<Node> usable(Parent parent) {
        List<Node> found = new ArrayList<>();
        for (Node child : parent.getChildrenUnmodifiable()) {
            if (!child.isVisible() || child.isDisabled()) {
                continue;
            }
            boolean takesKeys = child.isFocusTraversable();
            if (takesKeys) {
                found.add(child);
            }
            // What a control is made of is the control's own affair.
            boolean whole = child instanceof Control && !(child instanceof javafx.scene.control.ScrollPane);
            if (child instanceof Parent inner && !whole) {
                found.addAll(usable(inner));
            }
        }
        return found;
    }

    private static boolean isNamed(Node node) {
        boolean told =
                node.getAccessibleText() != null && !node.getAccessibleText().isBlank();
        return told || (node instanceof Labeled labeled && !labeled.getText().isBlank());
    }

    /** At the least size, and with letters twice as large on a window twice as large, no label ends in dots. */
    @Test
    void noWordsAreCutShort() throws Exception {
        smallPlate();
        for (double scale : new double[] {1, 2}) {
            onScreen(() -> {
                stage.setWidth(DeskWindow.LEAST_WIDTH * scale);
                stage.setHeight(DeskWindow.LEAST_HEIGHT * scale);
                desk.root().setStyle("-fx-font-size: " + 13 * scale + "px;");
                return null;
            });
            for (Station station : Station.values()) {
                List<String> cut = onScreen(() -> {
                    desk.choose(station);
                    desk.root().applyCss();
                    desk.root().layout();
                    return cut(desk.root());
                });
                assertEquals(List.of(), cut, station.label() + " at " + scale);
            }
        }
    }

    private static List<String> cut(Parent parent) {
        List<String> found = new ArrayList<>();
        for (Node child : parent.getChildrenUnmodifiable()) {
            if (!child.isVisible() || child instanceof ListView) {
                continue;
            }
            if (child instanceof Labeled labeled && !labeled.getText().isEmpty()) {
                for (Node part : labeled.getChildrenUnmodifiable()) {
                    if (part instanceof Text text && !text.getText().equals(labeled.getText())) {
                        found.add(labeled.getText() + " shows as " + text.getText());
                    }
                }
            }
            if (child instanceof Parent inner) {
                found.addAll(cut(inner));
            }
        }
        return found;
    }
}
