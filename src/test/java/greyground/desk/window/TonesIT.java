package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.model.BenchState;
import greyground.desk.model.Station;
import greyground.film.job.ArtFields;
import greyground.film.job.HandFields;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.junit.jupiter.api.Test;

/** Tones under the hand, two pictures in one, and what is said at the end. */
class TonesIT extends AtTheDesk {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    @Test
    void theHistogramsGripsSetTheJobAndOnePullIsOneStepBack() throws Exception {
        hand.smallPlate(ART);
        act(() -> hand.desk().choose(Station.ART));
        hand.press("fold-tones");
        hand.rest();
        waitFor("the histogram", () -> hand.desk().tones.histogram().isPresent());
        BenchState before = hand.state();
        act(() -> hand.desk().tones.histogram().requestFocus());
        hand.key(KeyCode.INSERT);
        assertEquals(1, HandFields.TONES.of(hand.state().job()).size());
        hand.key(KeyCode.UP);
        hand.key(KeyCode.UP);
        assertEquals(52, HandFields.TONES.of(hand.state().job()).get(0).to());
        hand.rest();
        hand.key(KeyCode.DELETE);
        assertEquals(before.job(), hand.state().job());
        hand.rest();
        hand.key(KeyCode.LEFT);
        double white = onScreen(() -> hand.desk().sight.plate().orElseThrow().artWhite());
        hand.key(KeyCode.RIGHT);
        hand.key(KeyCode.MINUS);
        hand.rest();
        double pulled = ArtFields.WHITE.of(hand.state().job()).orElseThrow();
        assertTrue(pulled < white && pulled > 0.9 * white, pulled + " of " + white);
        act(() -> hand.desk().model.letGo());
        act(() -> hand.desk().model.undo());
        assertTrue(ArtFields.WHITE.of(hand.state().job()).isEmpty());
    }

    @Test
    void theArtIsHeldAgainstThePrintInThePictureItself() throws Exception {
        hand.smallPlate(ART);
        act(() -> hand.desk().choose(Station.PRINT));
        hand.rest();
        act(() -> hand.desk().picture.requestFocus());
        hand.key(KeyCode.N);
        hand.rest();
        assertTrue(onScreen(() -> hand.desk().picture.against().isSeen()));
        hand.key(KeyCode.N);
        assertFalse(onScreen(() -> hand.desk().picture.against().isOn()));
        act(() -> hand.root().fireEvent(key(KeyEvent.KEY_PRESSED)));
        hand.rest();
        assertTrue(onScreen(() -> hand.desk().picture.against().isHeld()));
        act(() -> hand.root().fireEvent(key(KeyEvent.KEY_RELEASED)));
        assertFalse(onScreen(() -> hand.desk().picture.against().isSeen()));
        hand.key(KeyCode.J);
        assertTrue(onScreen(() -> hand.desk().picture.against().isOn()));
        act(() -> hand.desk().choose(Station.COPPER));
        assertFalse(onScreen(() -> hand.desk().picture.against().isOn()), "another station is not compared with it");
    }

    private static KeyEvent key(javafx.event.EventType<KeyEvent> type) {
        return new KeyEvent(type, "", "", KeyCode.O, false, false, false, false);
    }

    @Test
    void aFilmSaysWhereItIsAndWhatStopsIt() throws Exception {
        hand.smallPlate(ART);
        Path film = folder.resolve("leaf.pdf");
        hand.toSave.add(film);
        hand.press("make-film");
        waitFor("the film", () -> hand.words("said").contains("leaf.pdf"));
        assertTrue(Files.size(film) > 10_000);
        hand.pressWords("Open folder");
        assertEquals(List.of(folder.toAbsolutePath()), hand.foldersShown);
        hand.tell("sheet", "80x80mm");
        hand.rest();
        hand.press("make-film");
        assertTrue(hand.words("said").contains("sheet is 80"), hand.words("said"));
        assertFalse(onScreen(() -> hand.desk().export.isWorking()));
        hand.pressWords("Correct it");
        assertEquals(
                "setting-sheet-width",
                onScreen(() -> hand.stage().getScene().getFocusOwner().getId()));
    }

    /** From a picture that is dropped to its plan: plate, tones, film, plan, each at one press. */
    @Test
    void theFirstWayTakesFourPresses() throws Exception {
        act(() -> hand.desk().files.open(ART));
        waitFor("the plate", () -> hand.desk().arrival.isVisible());
        hand.press("arrival-accept");
        hand.press("find-both");
        hand.toSave.add(folder.resolve("first.pdf"));
        hand.rest();
        hand.press("make-film");
        waitFor("the film", () -> hand.words("said").contains("first.pdf"));
        hand.pressWords("Plan");
        assertTrue(onScreen(() -> hand.desk().plan.isVisible()));
        assertTrue(onScreen(() -> !hand.desk().plan.lookupAll(".clock").isEmpty()));
    }

    /** What was made lately is known by its picture. */
    @Test
    void theEmptyBenchShowsWhatLayThere() throws Exception {
        hand.smallPlate(ART);
        hand.rest();
        waitFor(
                "its picture",
                () -> hand.desk().files.pictureOf(ART.toAbsolutePath()).isPresent());
        Path state = folder.resolve("state");
        hand.close();
        hand = new DeskHand(state);
        assertTrue(onScreen(() -> hand.root().lookup(".recent") != null));
        assertTrue(onScreen(() ->
                hand.desk().files.pictureOf(ART.toAbsolutePath()).orElseThrow().width() > 100));
    }
}
