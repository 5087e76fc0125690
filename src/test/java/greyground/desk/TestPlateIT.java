package greyground.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.KeptFiles;
import greyground.app.LivePicture;
import greyground.simulation.ProofOfFilm;
import greyground.workshop.Workshop;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A test plate at the desk, from its film to a taught workshop, driven through the window's own controls; an invented shop prints it. */
class TestPlateIT {
    private static final Path PHOTOGRAPH = Path.of("testimages/still-life.png");

    @TempDir
    Path folder;

    private final Deque<Path> toSave = new ArrayDeque<>();
    private final Deque<Path> toOpen = new ArrayDeque<>();
    private Stage stage;
    private DeskWindow desk;

    @BeforeEach
    void openWindow() throws Exception {
        NativeParts.start();
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
        onScreen(() -> {
            desk = new DeskWindow(new DeskServices(
                    files,
                    new DeskFolder(folder.resolve("state")),
                    ProcessHandle.current().pid(),
                    () -> LocalDate.of(2026, 3, 4),
                    System::nanoTime,
                    Platform::runLater,
                    List::of,
                    () -> {}));
            stage = new Stage();
            stage.setScene(new Scene(desk.root(), DeskWindow.LEAST_WIDTH, DeskWindow.LEAST_HEIGHT));
            stage.show();
            return null;
        });
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
            assertTrue(node != null && node.isVisible() && !node.isDisabled(), id + " can't be pressed");
            if (node instanceof ToggleButton toggle) {
                toggle.fire();
            } else {
                ((Button) node).fire();
            }
            return null;
        });
    }

    private void undo() throws Exception {
        onScreen(() -> {
            desk.root().fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", KeyCode.Z, false, true, false, false));
            return null;
        });
    }

    private void goThere() throws Exception {
        onScreen(() -> {
            desk.root().fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", KeyCode.F5, false, false, false, false));
            return null;
        });
        assertTrue(onScreen(() -> desk.root().lookup("#test-plate").isVisible()));
    }

    private TestPlateState state() {
        return desk.lessons().state();
    }

    private String words(String id) throws Exception {
        return onScreen(() -> find(id, Label.class).getText());
    }

    /** Made in the window by the test that comes first, and read by the others too. */
    @TempDir
    static Path shared;

    /** A strip on the least plate, and a scan of its proof from an invented shop. */
    private Path stripAndItsScan() throws Exception {
        goThere();
        Path film = shared.resolve("strip.pdf");
        Path scan = shared.resolve("proof.png");
        if (Files.exists(scan)) {
            onScreen(() -> {
                desk.lessons().useFilm(film);
                return null;
            });
            return scan;
        }
        onScreen(() -> {
            @SuppressWarnings("unchecked")
            ComboBox<TestPlateModel.Kind> kinds = find("test-kind", ComboBox.class);
            kinds.setValue(TestPlateModel.Kind.STRIP);
            TextField plate = find("test-plate-size", TextField.class);
            plate.setText("100x30mm");
            return null;
        });
        toSave.add(film);
        press("test-make");
        waitFor("the film", () -> !desk.lessons().isWorking());
        assertTrue(state() instanceof TestPlateState.Film, state().toString());
        assertEquals("100x30mm", KeptFiles.job(film).plate().toString().replace(" ", ""));
        press("test-print");
        waitFor(
                "the search for printers",
                () -> find("print-words", Label.class).getText().contains("make the film as a PDF"));
        press("print-not");
        ProofOfFilm.scan(film, 5, 300, scan);
        return scan;
    }

    private boolean isRead() {
        return state() instanceof TestPlateState.Read;
    }

    private Workshop shop() throws Exception {
        return onScreen(() -> desk.model().workshop());
    }

    @Test
    void aProofTeachesTheWorkshopAndTheLessonIsTakenBack() throws Exception {
        Path file = folder.resolve("shop.json");
        KeptFiles.saveWorkshop(file, Workshop.assumed().named("invented shop"));
        Path art = folder.resolve("leaf.png");
        Files.copy(Path.of("testimages/leaf-alpha.png"), art);
        onScreen(() -> {
            desk.files().open(art);
            return null;
        });
        waitFor("the art", () -> desk.model().state().isPresent());
        onScreen(() -> {
            desk.model().openWorkshop(file);
            desk.tell("plate", java.util.Map.of("plate", "60x45mm"));
            return null;
        });
        Path scan = stripAndItsScan();
        Workshop assumed = shop();
        toOpen.add(scan);
        press("test-choose-scan");
        waitFor("the reading", () -> isRead());

        // The scan with what was found drawn over it: neither blank nor the bare scan, which has no hue.
        LivePicture overlay = ((TestPlateState.Read) state()).report().scan().orElseThrow();
        assertTrue(java.util.Arrays.stream(overlay.pixels())
                        .filter(pixel -> (pixel >> 16 & 0xFF) - (pixel & 0xFF) > 60)
                        .count()
                > 1000);
        assertTrue(onScreen(() -> find("test-scan-picture", FlatPicture.class).isVisible()));
        press("test-tones");
        assertTrue(onScreen(() -> find("tone-chart", ToneChart.class).isVisible()));

        press("test-accept");
        Workshop taught = shop();
        assertEquals(1, taught.responses().size());
        assertEquals(taught, KeptFiles.workshop(file));
        assertEquals(
                assumed,
                KeptFiles.workshop(folder.resolve(
                        "shop.before-1-2026-03-04-" + taught.responses().get(0).chart() + ".json")));
        assertTrue(assumed.figures().entrySet().stream()
                .anyMatch(one -> one.getValue().isAssumed()
                        && !taught.figures().get(one.getKey()).isAssumed()));
        assertFalse(onScreen(() -> desk.model().workshopUnsaved()));
        assertTrue(words("test-standing").contains("has learned"), words("test-standing"));
        waitFor("the plate that was taught", desk::isAtRest);
        assertFalse(onScreen(
                () -> desk.sight().plate().orElseThrow().curves().measured().isEmpty()));

        undo();
        assertEquals(assumed, shop());
        assertTrue(onScreen(() -> desk.model().workshopUnsaved()));
        assertTrue(words("test-standing").contains("still holds it"), words("test-standing"));
        waitFor("the plate as it was", desk::isAtRest);
        assertTrue(onScreen(
                () -> desk.sight().plate().orElseThrow().curves().measured().isEmpty()));
    }

    @Test
    void aLessonIsAcceptedWithoutPictureOrFileAndSavedLater() throws Exception {
        Path scan = stripAndItsScan();
        onScreen(() -> {
            desk.lessons().tell("depth", "40um");
            return null;
        });
        toOpen.add(PHOTOGRAPH);
        press("test-choose-scan");
        waitFor("an answer", () -> !desk.lessons().isWorking());
        String refused = words("test-refused");
        assertTrue(refused.startsWith("The scan shows no test plate") && !refused.contains("\n"), refused);

        toOpen.add(scan);
        press("test-other-scan");
        waitFor("the work", () -> desk.lessons().isWorking());
        press("test-stop");
        assertTrue(state() instanceof TestPlateState.Refused, state().toString());

        toOpen.add(scan);
        press("test-other-scan");
        waitFor("the reading", () -> isRead());
        Workshop assumed = shop();
        press("test-accept");
        Workshop taught = shop();
        assertNotEquals(assumed, taught);
        assertFalse(taught.bath().rateMicrometresPerMinute().isAssumed());
        assertTrue(onScreen(() -> desk.model().unsaved()));
        Path file = folder.resolve("shop.json");
        toSave.add(file);
        press("save-workshop");
        assertEquals(taught, KeptFiles.workshop(file));
        undo();
        assertEquals(assumed, shop());
    }

    @Test
    void aTestFilmIsSeenBeforeItIsMadeAndAProofOfAnotherIsNamed() throws Exception {
        Path scan = stripAndItsScan();
        String own = KeptFiles.chart(shared.resolve("strip.pdf")).id();
        onScreen(() -> {
            @SuppressWarnings("unchecked")
            ComboBox<TestPlateModel.Kind> kinds = find("test-kind", ComboBox.class);
            kinds.setValue(TestPlateModel.Kind.STRIP);
            find("test-plate-size", TextField.class).setText("110x30mm");
            return null;
        });
        press("test-preview");
        waitFor("the film's picture", () -> !desk.lessons().isWorking());
        TestPlateState.Film seen = (TestPlateState.Film) state();
        assertEquals(Optional.empty(), seen.written());
        assertTrue(seen.sheet().width() > seen.sheet().height());
        toSave.add(folder.resolve("other.pdf"));
        press("test-make");
        waitFor("the film", () -> !desk.lessons().isWorking());
        toOpen.add(scan);
        press("test-choose-scan");
        waitFor("an answer", () -> !desk.lessons().isWorking());
        String refused = words("test-refused");
        assertTrue(refused.contains("another chart, " + own), refused);
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(
                    List.of(),
                    left.filter(each -> each.toString().endsWith(".part")).toList());
        }
    }
}
