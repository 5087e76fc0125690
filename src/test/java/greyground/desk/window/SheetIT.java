package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.model.Place;
import greyground.desk.model.PrintingModel;
import greyground.desk.model.PrintingModelTest;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The whole film sheet, and printing it, in a window that is not on any screen. */
class SheetIT extends AtTheDesk {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    @BeforeEach
    void layArt() throws Exception {
        act(() -> hand.desk().begin(Optional.of(ART)));
        waitFor(
                "the art",
                () -> hand.desk().model.state().isPresent()
                        && hand.desk().sight.plate().isPresent());
        hand.tell("plate", "60x40mm", "resolution", "720dpi");
    }

    private static void waitFor(String what, BooleanSupplier there) throws Exception {
        DeskHand.waitFor(what, 40, there);
    }

    private boolean said(String words) {
        return hand.root().lookupAll(".label").stream()
                .anyMatch(node -> node instanceof Label label && label.getText().contains(words));
    }

    @Test
    void theSheetIsSeenTurnedOverAndFollowsTheSettings() throws Exception {
        hand.key(KeyCode.S);
        waitFor(
                "the sheet",
                () -> hand.desk().sheet.sheet() != null
                        && hand.words("sheet-size").startsWith("sheet 174.0"));
        assertEquals(
                "Ink side towards you: the picture reads right, the words read right.",
                onScreen(() -> hand.words("sheet-words")));
        hand.key(KeyCode.U);
        assertTrue(onScreen(() -> hand.words("sheet-words")).contains("ink down, seen through the film's back"));
        hand.tell("ink-side", "up");
        waitFor("the other side", () -> hand.words("sheet-words").contains("ink up"));
        hand.tell("sheet", "100x100mm");
        waitFor("the refusal", () -> hand.words("sheet-words").startsWith("The sheet is 100 x 100 mm"));
        hand.tell("sheet", "300x400mm");
        waitFor("the larger sheet", () -> hand.words("sheet-size").startsWith("sheet 300.0"));
        hand.press("sheet-view");
        assertEquals(Place.STATION, onScreen(hand.desk()::place));
    }

    @Test
    void aFilmIsPrintedOnThePrinterChosen() throws Exception {
        hand.press("print-film");
        waitFor("the advice", () -> hand.words("print-words").equals(PrintingModel.NO_PRINTER));
        hand.press("print-not");
        Path paper = folder.resolve("film.ps");
        try (OutputStream out = Files.newOutputStream(paper)) {
            hand.printers = PrintingModelTest.printers(out);
            hand.press("print-film");
            waitFor("the printer", () -> hand.words("print-words").contains("100 mm rulers"));
            hand.press("print-plan");
            hand.press("print-now");
            waitFor("the end of printing", () -> said("Handed to"));
        }
        assertTrue(Files.size(paper) > 100_000, "the film is on paper");
        assertNotNull(hand.desk());
    }

    @Test
    void aTiffIsWrittenWhereTheNameSaysSo() throws Exception {
        Path tiff = folder.resolve("film.TIF");
        hand.toSave.add(tiff);
        hand.press("make-film");
        waitFor("the film", () -> said("Film made: film.TIF"));
        byte[] start = Files.readAllBytes(tiff);
        // TIFF 6.0 (1992), section 2: little-endian files begin with II and 42.
        assertEquals("II*", new String(start, 0, 3, java.nio.charset.StandardCharsets.US_ASCII));
    }
}
