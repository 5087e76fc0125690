package greyground.desk;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A window with a small plate of a real picture on the bench, driven as a hand would. */
abstract class SmallPlate {
    static final Path ART = Path.of("testimages/leaf-alpha.png");

    @TempDir
    Path folder;

    Stage stage;
    DeskWindow desk;

    /** What is laid on the bench. */
    Path art() throws Exception {
        return ART;
    }

    @BeforeEach
    void openWindow() throws Exception {
        NativeParts.start();
        FileAsking none = new FileAsking() {
            @Override
            public Optional<Path> open(String title, Kind kind) {
                return Optional.empty();
            }

            @Override
            public Optional<Path> save(String title, Kind kind, String suggested) {
                return Optional.empty();
            }
        };
        onScreen(() -> {
            desk = new DeskWindow(new DeskServices(
                    none,
                    new DeskFolder(folder.resolve("state")),
                    ProcessHandle.current().pid(),
                    () -> LocalDate.of(2026, 3, 4),
                    System::nanoTime,
                    Platform::runLater));
            stage = new Stage();
            stage.setScene(new Scene(desk.root(), DeskWindow.LEAST_WIDTH, DeskWindow.LEAST_HEIGHT));
            stage.show();
            desk.files().open(art());
            return null;
        });
        waitFor("the art", () -> desk.model().state().isPresent());
        onScreen(() -> {
            desk.tell("plate", Map.of("plate", "60x45mm", "resolution", "720dpi"));
            return null;
        });
        rest();
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

    static <T> T onScreen(Callable<T> work) throws Exception {
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        return task.get(60, TimeUnit.SECONDS);
    }

    static void waitFor(String what, BooleanSupplier there) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(90);
        while (!onScreen(there::getAsBoolean)) {
            assertTrue(System.nanoTime() < end, "waited in vain for " + what);
            Thread.sleep(20);
        }
    }

    void rest() throws Exception {
        waitFor("rest", () -> desk.isAtRest() && desk.sight().plate().isPresent());
        // What was told last may lie behind the question.
        onScreen(() -> null);
    }

    void key(KeyCode code) throws Exception {
        onScreen(() -> {
            desk.picture().fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false));
            return null;
        });
    }

    void press(String id) throws Exception {
        onScreen(() -> {
            ((Button) desk.root().lookup("#" + id)).fire();
            return null;
        });
    }

    void loupeAt(double x, double y) throws Exception {
        onScreen(() -> {
            desk.sight().pointAt(x, y);
            return null;
        });
        rest();
    }
}
