package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskFolder;
import greyground.desk.model.Recovery;
import greyground.desk.model.Station;
import greyground.desk.model.Viewport;
import greyground.film.job.FilmFields;
import greyground.film.job.Told;
import greyground.output.ExternalTool;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

/** The window, driven as a hand would: through its own controls and keys, on a screen that is not there. */
class DeskIT extends AtTheDesk {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    private BenchState state() {
        return hand.state();
    }

    private void smallPlate() throws Exception {
        hand.smallPlate(ART);
    }

    @Test
    void fromAPictureToAFilmThatAnIndependentReaderOpens() throws Exception {
        smallPlate();
        hand.press("station-film");
        hand.type("setting-grain", "150");
        assertEquals("150um", FilmFields.GRAIN.text(state().job()));
        hand.press("station-copper");
        hand.type("setting-bite", "12");
        assertEquals(12, state().workshop().bath().biteMinutes().value());
        waitFor("the plate", hand.desk()::isAtRest);
        Path film = folder.resolve("leaf.pdf");
        hand.toSave.add(film);
        hand.press("make-film");
        waitFor("the film", () -> !hand.desk().export.isWorking());
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
        hand.press("station-film");
        hand.type("setting-bleed", "4.5");
        act(() -> hand.desk().artTools.quarter(true));
        BenchState last = state();
        assertNotEquals(first.job(), last.job());
        hand.key(KeyCode.Z, KeyCode.CONTROL);
        hand.key(KeyCode.Z, KeyCode.CONTROL);
        assertEquals(first, state());
        hand.key(KeyCode.Y, KeyCode.CONTROL);
        hand.key(KeyCode.Y, KeyCode.CONTROL);
        assertEquals(last, state());
    }

    @Test
    void aWrongNumberIsToldBesideItselfAndChangesNothing() throws Exception {
        smallPlate();
        hand.press("station-film");
        BenchState before = state();
        hand.type("setting-bleed", "77");
        assertEquals(before, state());
        String told = onScreen(() -> hand.root().lookupAll(".fault").stream()
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
        hand.press("station-resist");
        hand.type("setting-land", "120");
        hand.press("station-art");
        @SuppressWarnings("unchecked")
        ListView<WarningsView.Line> list = hand.find("warnings", ListView.class);
        waitFor("a place", () -> list.getItems().stream().anyMatch(line -> line.number() > 0));
        hand.press("warning-count");
        WarningsView.Line first = onScreen(() -> {
            WarningsView.Line line = list.getItems().stream()
                    .filter(each -> each.number() > 0)
                    .findFirst()
                    .orElseThrow();
            list.getSelectionModel().select(line);
            list.requestFocus();
            return line;
        });
        hand.key(KeyCode.ENTER);
        assertEquals(Station.COPPER, onScreen(() -> hand.desk().picture.station()));
        Viewport port = onScreen(() -> hand.desk().picture.port());
        double x = port.pixelX(first.place().orElseThrow().acrossMillimetres());
        double y = port.pixelY(first.place().orElseThrow().downMillimetres());
        assertTrue(x >= 0 && x <= port.width() && y >= 0 && y <= port.height(), x + ", " + y);
        assertTrue(port.perPixel() <= 0.02);
    }

    @Test
    void aFilmThatIsStoppedLeavesNothing() throws Exception {
        smallPlate();
        act(() -> hand.desk().tell("plate", Told.as(java.util.Map.of("plate", "300x300mm", "resolution", "2880dpi"))));
        Path film = folder.resolve("large.pdf");
        hand.toSave.add(film);
        hand.press("make-film");
        waitFor("the film's beginning", () -> hand.desk().export.isWorking());
        hand.press("stop-film");
        waitFor("the end", () -> !hand.desk().export.isWorking());
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
        assertFalse(onScreen(() -> hand.desk().mayClose(() -> closed[0] = true)));
        hand.answer("Stay here");
        assertFalse(closed[0]);
        // A killed desk: its work is kept under a process number that is no more.
        new Recovery(new DeskFolder(folder.resolve("state")), DeskHand.GONE).keep(state(), Optional.empty(), 0);
        BenchState lost = state();
        hand.close();
        hand = new DeskHand(folder.resolve("state"));
        act(() -> hand.desk().begin(Optional.empty()));
        hand.answer("Recover");
        waitFor("the work", () -> hand.desk().model.state().isPresent());
        assertEquals(lost, state());
        assertTrue(onScreen(() -> hand.desk().model.unsaved()));
        Path job = folder.resolve("leaf.json");
        hand.toSave.add(job);
        assertFalse(onScreen(() -> hand.desk().mayClose(() -> closed[0] = true)));
        hand.answer("Save first");
        assertTrue(closed[0]);
        assertEquals(lost.job(), KeptFiles.job(job));
    }

    @Test
    void theWallCardCountsDownWithAClockThatStops() throws Exception {
        hand.nanos = 1;
        smallPlate();
        hand.key(KeyCode.F2);
        waitFor("the plan", () -> !hand.desk().plan.lookupAll(".clock").isEmpty());
        Label clock = onScreen(
                () -> (Label) hand.desk().plan.lookupAll(".clock").iterator().next());
        String whole = onScreen(clock::getText);
        Button start = onScreen(
                () -> (Button) clock.getParent().lookupAll(".button").iterator().next());
        act(() -> {
            start.fire();
            hand.nanos += 61_000_000_000L;
            hand.desk().plan.tick();
        });
        assertNotEquals(whole, onScreen(clock::getText));
        assertEquals("Stop", onScreen(start::getText));
        act(() -> {
            hand.nanos += 36_000_000_000_000L;
            hand.desk().plan.tick();
        });
        assertTrue(onScreen(clock::getText).startsWith("time is up"), onScreen(clock::getText));
    }

    /** Tab, and arrow keys among the stations, must come by every control that can be used. */
    @Test
    void everyControlIsReachedByKeysAndHasAName() throws Exception {
        smallPlate();
        for (Station station : Station.values()) {
            act(() -> hand.desk().choose(station));
            Set<Node> usable = onScreen(() -> new HashSet<>(KeyboardIT.usable(hand.root())));
            Set<Node> reached = new HashSet<>();
            act(() -> hand.root().lookup("#bench-menu").requestFocus());
            for (int i = 0; i < usable.size() + 4; i++) {
                Node focused = onScreen(() -> hand.stage().getScene().getFocusOwner());
                reached.add(focused);
                // Tab comes to one of a group; arrow keys go through the rest.
                if (focused instanceof ToggleButton toggle && toggle.getToggleGroup() != null) {
                    KeyboardIT.arrows(hand, toggle, reached);
                }
                hand.key(KeyCode.TAB);
            }
            usable.removeAll(reached);
            assertEquals(Set.of(), usable, station.label());
            for (Node node : reached) {
                assertTrue(onScreen(() -> KeyboardIT.isNamed(node)), "no name: " + node);
            }
        }
    }

    /** At the least size, and with letters twice as large on a window twice as large, no label ends in dots. */
    @Test
    void noWordsAreCutShort() throws Exception {
        smallPlate();
        for (double scale : new double[] {1, 2}) {
            act(() -> {
                hand.stage().setWidth(DeskWindow.LEAST_WIDTH * scale);
                hand.stage().setHeight(DeskWindow.LEAST_HEIGHT * scale);
                hand.root().setStyle("-fx-font-size: " + 13 * scale + "px;");
            });
            for (Station station : Station.values()) {
                List<String> cut = onScreen(() -> {
                    hand.desk().choose(station);
                    hand.root().applyCss();
                    hand.root().layout();
                    return CutWords.dotted(hand.root());
                });
                assertEquals(List.of(), cut, station.label() + " at " + scale);
            }
        }
    }
}
