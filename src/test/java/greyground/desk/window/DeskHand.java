package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import greyground.app.print.PrinterAtHand;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskFolder;
import greyground.desk.model.DeskServices;
import greyground.desk.model.FileAsking;
import greyground.film.job.Told;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.event.ActionEvent;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import javafx.stage.Window;

/** A window without a screen and a hand that works it; closes it when the test is over. */
final class DeskHand implements AutoCloseable {
    /** No process has this number: Linux gives none above 4 194 304 (PID_MAX_LIMIT, linux/threads.h). */
    static final long GONE = 9_999_999_999L;

    /** Answers to the next questions for a file. */
    final Deque<Path> toSave = new ArrayDeque<>();

    final Deque<Path> toOpen = new ArrayDeque<>();
    /** Folders that were to be opened. */
    final List<Path> foldersShown = new ArrayList<>();

    final AtomicInteger rings = new AtomicInteger();
    /** Time stands here unless it is 0. */
    volatile long nanos;

    private final long later;
    /** What the system says it can print on. */
    volatile List<PrinterAtHand> printers = List.of();

    private final Path state;
    private Stage stage;
    private DeskWindow desk;

    DeskHand(Path state) throws Exception {
        this(state, DeskWindow.LEAST_WIDTH, DeskWindow.LEAST_HEIGHT);
    }

    /** At a time of day so many seconds from now. */
    DeskHand(Path state, long later) throws Exception {
        this(state, DeskWindow.LEAST_WIDTH, DeskWindow.LEAST_HEIGHT, later);
    }

    DeskHand(Path state, double width, double height) throws Exception {
        this(state, width, height, 0);
    }

    private DeskHand(Path state, double width, double height, long later) throws Exception {
        this.later = later;
        NativeParts.start();
        this.state = state;
        onScreen(() -> {
            desk = window();
            stage = new Stage();
            stage.setScene(new Scene(desk.root(), width, height));
            stage.show();
            return null;
        });
    }

    private DeskWindow window() {
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
                new DeskFolder(state),
                ProcessHandle.current().pid(),
                () -> LocalDate.of(2026, 3, 4),
                () -> nanos == 0 ? System.nanoTime() : nanos,
                () -> java.time.Instant.now().plusSeconds(later),
                Platform::runLater,
                () -> printers,
                rings::incrementAndGet,
                foldersShown::add));
    }

    DeskWindow desk() {
        return desk;
    }

    Stage stage() {
        return stage;
    }

    Parent root() {
        return desk.root();
    }

    BenchState state() {
        return desk.model.state().orElseThrow();
    }

    @Override
    public void close() throws Exception {
        onScreen(() -> {
            stage.hide();
            desk.closed();
            return null;
        });
    }

    static <T> T onScreen(Callable<T> work) throws Exception {
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        return task.get(60, TimeUnit.SECONDS);
    }

    static void act(Runnable work) throws Exception {
        onScreen(() -> {
            work.run();
            return null;
        });
    }

    static void waitFor(String what, BooleanSupplier there) throws Exception {
        waitFor(what, 90, there);
    }

    static void waitFor(String what, int seconds, BooleanSupplier there) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
        while (!onScreen(there::getAsBoolean)) {
            if (System.nanoTime() >= end) {
                fail("waited in vain for " + what + "; seen: " + onScreen(DeskHand::labels));
            }
            Thread.sleep(20);
        }
    }

    /** The words in every open window. */
    private static List<String> labels() {
        return Window.getWindows().stream()
                .flatMap(window -> seen(window.getScene().getRoot()).stream())
                .map(node -> node instanceof Label label ? label.getText() : "")
                .filter(text -> !text.isEmpty())
                .toList();
    }

    <T extends Node> T find(String id, Class<T> kind) {
        return kind.cast(desk.root().lookup("#" + id));
    }

    void press(String id) throws Exception {
        act(() -> {
            // What was laid since the last pulse has its parts by the style sheet alone.
            desk.root().applyCss();
            ButtonBase button = find(id, ButtonBase.class);
            assertNotNull(button, "no " + id);
            if (button.getParent() == desk.menu) {
                desk.menu.open(true);
            }
            assertTrue(button.isVisible() && !button.isDisabled(), id + " can't be pressed");
            assertTrue(button.isFocusTraversable(), id + " can't be reached by Tab");
            button.fire();
        });
    }

    /** Presses a button by its words. */
    void pressWords(String words) throws Exception {
        act(() -> seen(desk.root()).stream()
                .filter(node -> node instanceof ButtonBase button && words.equals(button.getText()))
                .map(ButtonBase.class::cast)
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + words))
                .fire());
    }

    /** Types words into a field in place of what stands there, and Enter. */
    void type(String id, String words) throws Exception {
        act(() -> {
            TextField field = find(id, TextField.class);
            field.requestFocus();
            field.setText(words);
            field.fireEvent(new ActionEvent());
        });
    }

    String words(String id) {
        return find(id, Label.class).getText();
    }

    /** Sets one word after the other, as a command line would: name, value, name, value. */
    void tell(String... words) throws Exception {
        act(() -> {
            for (int i = 0; i < words.length; i += 2) {
                desk.tell(words[i], Told.as(Map.of(words[i], words[i + 1])));
            }
        });
    }

    /** Presses a key where the keys go, or at the window; says whether anything took it. */
    boolean key(KeyCode code, KeyCode... held) throws Exception {
        List<KeyCode> with = List.of(held);
        return onScreen(() -> {
            Node focused = stage.getScene().getFocusOwner();
            boolean[] reachedTheEnd = {false};
            javafx.event.EventHandler<KeyEvent> end = event -> reachedTheEnd[0] = true;
            stage.getScene().addEventHandler(KeyEvent.KEY_PRESSED, end);
            (focused == null ? desk.root() : focused)
                    .fireEvent(new KeyEvent(
                            KeyEvent.KEY_PRESSED,
                            "",
                            "",
                            code,
                            with.contains(KeyCode.SHIFT),
                            with.contains(KeyCode.CONTROL),
                            with.contains(KeyCode.ALT),
                            false));
            stage.getScene().removeEventHandler(KeyEvent.KEY_PRESSED, end);
            Node after = stage.getScene().getFocusOwner();
            if (after != null && after == focused) {
                // A button acts when its key is let go.
                after.fireEvent(new KeyEvent(KeyEvent.KEY_RELEASED, "", "", code, false, false, false, false));
            }
            return !reachedTheEnd[0];
        });
    }

    void answer(String words) throws Exception {
        act(() -> desk.root().lookup("#question").lookupAll(".button").stream()
                .map(ButtonBase.class::cast)
                .filter(each -> each.getText().equals(words))
                .findFirst()
                .orElseThrow()
                .fire());
    }

    /** What the question in the window says; empty where there is none. */
    String question() throws Exception {
        return onScreen(() -> {
            Node question = desk.root().lookup("#question");
            return question == null
                    ? ""
                    : question.lookupAll(".label").stream()
                            .filter(Label.class::isInstance)
                            .map(label -> ((Label) label).getText())
                            .findFirst()
                            .orElse("");
        });
    }

    void openArt(Path art) throws Exception {
        toOpen.add(art);
        press("open");
        waitFor("the art", () -> desk.model.state().isPresent());
        acceptPlate();
    }

    /** Goes on with the plate that is offered. */
    void acceptPlate() throws Exception {
        waitFor("the plate", () -> desk.arrival.isVisible());
        press("arrival-accept");
    }

    /** A plate so small that every test is quick. */
    void smallPlate(Path art) throws Exception {
        openArt(art);
        act(() -> desk.tell("plate", Told.as(Map.of("plate", "60x45mm", "resolution", "720dpi"))));
        rest();
    }

    /** Until the plate is made and nothing more is under way. */
    void rest() throws Exception {
        waitFor("rest", () -> desk.isAtRest() && desk.sight.plate().isPresent());
        // What was told last may lie behind the question.
        onScreen(() -> null);
    }

    /** All nodes that can be seen, parents before children. */
    static List<Node> seen(Parent parent) {
        List<Node> found = new ArrayList<>();
        for (Node child : parent.getChildrenUnmodifiable()) {
            if (child.isVisible()) {
                found.add(child);
                if (child instanceof Parent inner) {
                    found.addAll(seen(inner));
                }
            }
        }
        return found;
    }
}
