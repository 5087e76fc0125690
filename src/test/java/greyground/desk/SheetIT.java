package greyground.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.PrinterAtHand;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole film sheet, and printing it, in a window that is not on any screen. */
class SheetIT {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    @TempDir
    Path folder;

    private List<PrinterAtHand> printers = List.of();
    private Optional<Path> toSave = Optional.empty();
    private Stage stage;
    private DeskWindow desk;

    @BeforeEach
    void openWindow() throws Exception {
        NativeParts.start();
        FileAsking files = new FileAsking() {
            @Override
            public Optional<Path> open(String title, Kind kind) {
                return Optional.empty();
            }

            @Override
            public Optional<Path> save(String title, Kind kind, String suggested) {
                return toSave;
            }
        };
        onScreen(() -> {
            desk = new DeskWindow(new DeskServices(
                    files,
                    new DeskFolder(folder.resolve("state")),
                    1,
                    () -> LocalDate.of(2026, 3, 4),
                    System::nanoTime,
                    Platform::runLater,
                    () -> printers,
                    () -> {}));
            stage = new Stage();
            stage.setScene(new Scene(desk.root(), DeskWindow.LEAST_WIDTH, DeskWindow.LEAST_HEIGHT));
            stage.show();
            desk.begin(Optional.of(ART));
            return null;
        });
        waitFor(
                "the art",
                () -> desk.model().state().isPresent() && desk.sight().plate().isPresent());
        tell("plate", "60x40mm", "resolution", "720dpi");
    }

    @AfterEach
    void closeWindow() throws Exception {
        onScreen(() -> {
            stage.hide();
            desk.closed();
            return null;
        });
    }

    private static <T> T onScreen(Callable<T> work) throws Exception {
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        return task.get(60, TimeUnit.SECONDS);
    }

    private String labels() {
        try {
            return onScreen(() -> desk.root().lookupAll(".label").stream()
                    .map(node -> node instanceof Label label ? label.getText() : "")
                    .filter(text -> !text.isEmpty())
                    .toList()
                    .toString());
        } catch (Exception unseen) {
            return unseen.toString();
        }
    }

    private void waitFor(String what, BooleanSupplier there) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(40);
        while (!onScreen(there::getAsBoolean)) {
            assertTrue(System.nanoTime() < end, () -> "waited in vain for " + what + "; seen: " + labels());
            Thread.sleep(20);
        }
    }

    private void tell(String... words) throws Exception {
        onScreen(() -> {
            for (int i = 0; i < words.length; i += 2) {
                desk.tell(words[i], Map.of(words[i], words[i + 1]));
            }
            return null;
        });
    }

    private void press(String id) throws Exception {
        onScreen(() -> {
            Node node = desk.root().lookup("#" + id);
            assertFalse(node.isDisabled(), id + " can't be pressed");
            assertTrue(node.isFocusTraversable(), id + " can't be reached by Tab");
            ((ButtonBase) node).fire();
            return null;
        });
    }

    private void key(KeyCode code) throws Exception {
        onScreen(() -> {
            desk.root().fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false));
            return null;
        });
    }

    private String words(String id) {
        return ((Label) desk.root().lookup("#" + id)).getText();
    }

    private boolean said(String words) {
        return desk.root().lookupAll(".label").stream()
                .anyMatch(node -> node instanceof Label label && label.getText().contains(words));
    }

    @Test
    void theSheetIsSeenTurnedOverAndFollowsTheSettings() throws Exception {
        key(KeyCode.S);
        waitFor(
                "the sheet",
                () -> desk.sheet().sheet() != null && words("sheet-size").startsWith("sheet 174.0"));
        assertEquals(
                "Ink side towards you: the picture reads right, the words read right.",
                onScreen(() -> words("sheet-words")));
        key(KeyCode.U);
        assertTrue(onScreen(() -> words("sheet-words")).contains("ink down, seen through the film's back"));
        tell("ink-side", "up");
        waitFor("the other side", () -> words("sheet-words").contains("ink up"));
        tell("sheet", "100x100mm");
        waitFor("the refusal", () -> words("sheet-words").startsWith("The sheet is 100 x 100 mm"));
        tell("sheet", "300x400mm");
        waitFor("the larger sheet", () -> words("sheet-size").startsWith("sheet 300.0"));
        press("sheet-view");
        assertEquals(Place.STATION, onScreen(desk::place));
    }

    @Test
    void aFilmIsPrintedOnThePrinterChosen() throws Exception {
        press("print-film");
        waitFor("the advice", () -> words("print-words").equals(PrintingModel.NO_PRINTER));
        press("print-not");
        Path paper = folder.resolve("film.ps");
        try (OutputStream out = Files.newOutputStream(paper)) {
            printers = PrintingModelTest.printers(out);
            press("print-film");
            waitFor("the printer", () -> words("print-words").contains("100 mm rulers"));
            press("print-plan");
            press("print-now");
            waitFor("the end of printing", () -> said("Handed to"));
        }
        assertTrue(Files.size(paper) > 100_000, "the film is on paper");
        assertNotNull(desk);
    }

    @Test
    void aTiffIsWrittenWhereTheNameSaysSo() throws Exception {
        Path tiff = folder.resolve("film.TIF");
        toSave = Optional.of(tiff);
        press("make-film");
        waitFor("the film", () -> said("Film written: film.TIF"));
        byte[] start = Files.readAllBytes(tiff);
        // TIFF 6.0 (1992), section 2: little-endian files begin with II and 42.
        assertEquals("II*", new String(start, 0, 3, java.nio.charset.StandardCharsets.US_ASCII));
    }
}
