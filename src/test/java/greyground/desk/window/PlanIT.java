package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.desk.clock.BenchClocks;
import greyground.desk.model.BenchNotes;
import greyground.desk.model.Place;
import greyground.desk.model.ProofWords;
import greyground.desk.model.Station;
import greyground.desk.setting.Setting;
import greyground.desk.setting.Settings;
import greyground.film.job.Told;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The wall card at work, on a clock that the test moves. */
class PlanIT extends AtTheDesk {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    @BeforeEach
    void openThePlan() throws Exception {
        hand.nanos = 1;
        hand.smallPlate(ART);
        hand.key(KeyCode.F2);
        waitFor("the plan", () -> !hand.desk().plan.lookupAll(".clock").isEmpty());
    }

    private void pass(double seconds) throws Exception {
        act(() -> {
            hand.nanos += (long) (seconds * 1e9);
            hand.desk().plan.tick();
        });
        // The window's own ticks hear of it, too.
        Thread.sleep(450);
    }

    private String words(String id) throws Exception {
        return onScreen(() -> {
            Node part = hand.root().lookup("#" + id);
            return part == null || !part.isVisible()
                    ? ""
                    : DeskHand.seen((Parent) part).stream()
                            .filter(Labeled.class::isInstance)
                            .map(node -> ((Labeled) node).getText())
                            .collect(Collectors.joining(" | "));
        });
    }

    /** As on the bench card on paper. */
    /** A window closed while a clock runs: the next one shows it, run on, before any picture lies there. */
    @Test
    void aClockOutlivesItsWindow() throws Exception {
        java.nio.file.Path state = folder.resolve("outliving");
        double planned;
        try (DeskHand hand = new DeskHand(state)) {
            hand.nanos = 1;
            hand.smallPlate(ART);
            act(() -> hand.desk().go(Place.PLAN));
            waitFor("the plan", () -> !hand.desk().plan.lookupAll(".clock").isEmpty());
            hand.key(KeyCode.SPACE);
            planned = onScreen(() -> hand.desk().clocks.begun().get(0).left());
        }
        try (DeskHand hand = new DeskHand(state, 600)) {
            act(() -> hand.desk().begin(java.util.Optional.empty()));
            double left = onScreen(() -> hand.desk().clocks.begun().get(0).left());
            assertTrue(left <= planned - 600, left + " of " + planned);
            act(() -> hand.desk().ticking.tick());
            hand.press("strip-clock-0");
            assertTrue(onScreen(
                    () -> hand.desk().plan.isVisible() && !hand.desk().empty.isVisible()));
            hand.press("reset-clock");
            hand.key(KeyCode.F2);
            assertTrue(onScreen(
                    () -> hand.desk().empty.isVisible() && !hand.desk().plan.isVisible()));
        }
        try (DeskHand hand = new DeskHand(state)) {
            assertTrue(onScreen(() -> hand.desk().clocks.begun().isEmpty()));
        }
    }

    @Test
    void theFiveNumbersStandAtTheHead() throws Exception {
        String numbers = words("bench-numbers");
        for (String act : List.of("Thin", "Expose", "Develop", "Harden", "Bite")) {
            assertTrue(numbers.contains(act), act + " in " + numbers);
        }
        assertTrue(numbers.matches(".*\\b20 min\\b.*"), numbers);
        ScrollPane card = onScreen(() -> (ScrollPane) hand.root().lookup("#plan-card"));
        assertEquals(0, card.getVvalue());
    }

    /** Space starts the clock that has the keys; its digits fill the head; at its end it says so and rings once. */
    @Test
    void aCountdownFillsTheHeadRingsOnceAndRunsOnWhileAnotherStationIsLookedAt() throws Exception {
        assertEquals("", words("clock-face"));
        String step = onScreen(() -> ((Button) hand.stage().getScene().getFocusOwner()).getAccessibleText());
        assertTrue(step.startsWith("Start the clock of "), step);
        act(() -> ((Button) hand.stage().getScene().getFocusOwner()).fire());
        pass(1);
        String face = words("clock-face");
        assertTrue(face.contains("Then: ") && face.contains("Stop") && face.contains("Reset"), face);
        Label digits = onScreen(() -> (Label) hand.root().lookup(".countdown"));
        assertTrue(
                onScreen(() -> digits.getHeight()) > 100, "as tall as a hand: " + onScreen(() -> digits.getHeight()));
        assertTrue(onScreen(() -> digits.getWidth() < hand.desk().plan.getWidth()));
        act(() -> hand.desk().choose(Station.FILM));
        pass(1);
        String strip = words("clock-strip");
        assertTrue(strip.matches(".+ +[0-9:]+"), strip);
        pass(36_000);
        strip = words("clock-strip");
        assertTrue(strip.contains("time is up"), strip);
        assertEquals(1, hand.rings.get());
        pass(5);
        assertEquals(1, hand.rings.get(), "it rings once");
        act(() -> ((Button) hand.root().lookup(".strip-clock")).fire());
        assertTrue(onScreen(() -> hand.desk().place() == Place.PLAN));
        pass(1);
        assertTrue(words("clock-face").contains("time is up"), words("clock-face"));
        assertTrue(onScreen(() -> !hand.root().lookupAll(".tile.over").isEmpty()), "a sign, not a colour alone");
    }

    @Test
    void aChangeOfTheBathLeavesARunningClockAloneAndSaysSo() throws Exception {
        BenchClocks clocks = hand.desk().clocks;
        BenchClocks.StepClock bite = onScreen(() -> clocks.of("Bite").orElseThrow());
        act(bite::startOrStop);
        pass(60);
        String before = onScreen(bite::words);
        act(() -> hand.desk()
                .model
                .change(
                        "bath",
                        "",
                        state -> ((Setting.ShopNumber) Settings.named("temperature"))
                                .with(state, 30, java.time.LocalDate.of(2026, 3, 4))));
        waitFor("the new plan", () -> !bite.change().isEmpty());
        assertEquals(before, onScreen(bite::words));
        pass(1);
        assertTrue(words("clock-face").contains("The plan has changed to "), words("clock-face"));
    }

    @Test
    void notesAreWrittenByKeysUndoneAndSavedWithTheJob() throws Exception {
        TextArea note = hand.find("note-plate", TextArea.class);
        act(() -> {
            note.requestFocus();
            note.setText("second state");
        });
        assertEquals("second state", onScreen(() -> hand.desk().model.notes().plate()));
        hand.key(KeyCode.Z, KeyCode.CONTROL);
        assertEquals("", onScreen(note::getText));
        hand.key(KeyCode.Y, KeyCode.CONTROL);
        assertEquals("second state", onScreen(note::getText));
        hand.key(KeyCode.TAB);
        assertFalse(onScreen(note::isFocused), "Tab goes on");
        Path job = folder.resolve("leaf.json");
        hand.toSave.add(job);
        hand.press("save");
        assertEquals("second state", BenchNotes.of(KeptFiles.job(job)).plate());
    }

    /** The command's own answer for the same log: plan --bitten --measured, through the same workshop and film. */
    @Test
    void theBiteLogTellsWhatFurtherMinutesDo() throws Exception {
        enter("10", ProofWords.Kind.DEPTH, "-3");
        assertTrue(words("bite-log").contains("Depth at the proof is -3"), words("bite-log"));
        enter("10", ProofWords.Kind.DEPTH, "12");
        enter("16", ProofWords.Kind.DEPTH, "18");
        assertEquals(2, hand.desk().model.notes().proofs().size());
        hand.press("ask-log");
        waitFor(
                "the answer",
                120,
                () -> hand.root().lookup("#bite-log").lookupAll(".table").size() > 4);
        String said = words("bite-log");
        // 12 um in 10 min, then 6 um in 6 min: 1.2 and 1.0 um/min.
        assertTrue(said.contains("1.20") && said.contains("1.00"), said);
        assertTrue(said.contains("+2 ") && said.contains("16 min"), said);
        act(() -> hand.desk().model.undo());
        assertTrue(words("bite-log").contains("ask again"), words("bite-log"));
        assertEquals(
                List.of(OptionalDouble.of(12)),
                hand.desk().model.notes().proofs().stream()
                        .map(greyground.app.bite.LoggedProof::depthMicrometres)
                        .toList());
    }

    @SuppressWarnings("unchecked")
    private void enter(String minutes, ProofWords.Kind kind, String measured) throws Exception {
        act(() -> {
            hand.find("proof-minutes", TextField.class).setText(minutes);
            ((ComboBox<ProofWords.Kind>) hand.root().lookup("#proof-kind")).setValue(kind);
            hand.find("proof-measured", TextField.class).setText(measured);
        });
        hand.press("add-proof");
    }

    @Test
    void aPlateThatIsNotBittenHasNoBiteLog() throws Exception {
        act(() -> hand.desk().tell("process", Told.as(Map.of("process", "unetched-film"))));
        waitFor("the new plan", () -> hand.root().lookup("#bite-log") == null);
    }
}
