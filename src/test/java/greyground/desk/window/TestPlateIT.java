package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.app.sight.LivePicture;
import greyground.desk.look.FlatPicture;
import greyground.desk.model.TestPlateKind;
import greyground.desk.model.TestPlateState;
import greyground.film.job.Told;
import greyground.simulation.ProofOfFilm;
import greyground.workshop.Workshop;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A test plate at the desk, from its film to a taught workshop, driven through the window's own controls; an invented shop prints it. */
class TestPlateIT extends AtTheDesk {
    private static final Path PHOTOGRAPH = Path.of("testimages/still-life.png");

    private void undo() throws Exception {
        hand.key(KeyCode.Z, KeyCode.CONTROL);
    }

    private void goThere() throws Exception {
        hand.key(KeyCode.F5);
        assertTrue(onScreen(() -> hand.root().lookup("#test-plate").isVisible()));
    }

    private TestPlateState state() {
        return hand.desk().lessons.state();
    }

    private String words(String id) throws Exception {
        return onScreen(() -> hand.words(id));
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
            act(() -> hand.desk().lessons.useFilm(film));
            return scan;
        }
        act(() -> {
            @SuppressWarnings("unchecked")
            ComboBox<TestPlateKind> kinds = hand.find("test-kind", ComboBox.class);
            kinds.setValue(TestPlateKind.STRIP);
            TextField plate = hand.find("test-plate-size", TextField.class);
            plate.setText("100x30mm");
        });
        hand.toSave.add(film);
        hand.press("test-make");
        waitFor("the film", () -> !hand.desk().lessons.isWorking());
        assertTrue(state() instanceof TestPlateState.Film, state().toString());
        assertEquals("100x30mm", KeptFiles.job(film).plate().toString().replace(" ", ""));
        hand.press("test-print");
        waitFor("the search for printers", () -> hand.words("print-words").contains("make the film as a PDF"));
        hand.press("print-not");
        ProofOfFilm.scan(film, 5, 300, scan);
        return scan;
    }

    private boolean isRead() {
        return state() instanceof TestPlateState.Read;
    }

    private Workshop shop() throws Exception {
        return onScreen(() -> hand.desk().model.workshop());
    }

    @Test
    void aProofTeachesTheWorkshopAndTheLessonIsTakenBack() throws Exception {
        Path file = folder.resolve("shop.json");
        KeptFiles.saveWorkshop(file, Workshop.assumed().named("invented shop"));
        Path art = folder.resolve("leaf.png");
        Files.copy(Path.of("testimages/leaf-alpha.png"), art);
        act(() -> hand.desk().files.open(art));
        waitFor("the art", () -> hand.desk().model.state().isPresent());
        act(() -> {
            hand.desk().model.openWorkshop(file);
            hand.desk().tell("plate", Told.as(java.util.Map.of("plate", "60x45mm")));
        });
        Path scan = stripAndItsScan();
        Workshop assumed = shop();
        hand.toOpen.add(scan);
        hand.press("test-choose-scan");
        waitFor("the reading", () -> isRead());

        // The scan with what was found drawn over it: neither blank nor the bare scan, which has no hue.
        LivePicture overlay = ((TestPlateState.Read) state()).scan().orElseThrow();
        assertTrue(java.util.Arrays.stream(overlay.pixels())
                        .filter(pixel -> (pixel >> 16 & 0xFF) - (pixel & 0xFF) > 60)
                        .count()
                > 1000);
        assertTrue(
                onScreen(() -> hand.find("test-scan-picture", FlatPicture.class).isVisible()));
        hand.press("test-tones");
        assertTrue(onScreen(() -> hand.find("tone-chart", FlatPicture.class).isVisible()));

        hand.press("test-accept");
        Workshop taught = shop();
        assertEquals(1, taught.responses().size());
        assertEquals(taught, KeptFiles.workshop(file));
        assertEquals(
                assumed,
                KeptFiles.workshop(folder.resolve(
                        "shop.before-1-2026-03-04-" + taught.responses().get(0).chart() + ".json")));
        assertFalse(onScreen(() -> hand.desk().model.workshopUnsaved()));
        assertTrue(words("test-standing").contains("has learned"), words("test-standing"));
        waitFor("the plate that was taught", hand.desk()::isAtRest);
        assertFalse(onScreen(() ->
                hand.desk().sight.plate().orElseThrow().curves().measured().isEmpty()));

        undo();
        assertEquals(assumed, shop());
        assertTrue(onScreen(() -> hand.desk().model.workshopUnsaved()));
        assertTrue(words("test-standing").contains("still holds it"), words("test-standing"));
        waitFor("the plate as it was", hand.desk()::isAtRest);
        assertTrue(onScreen(() ->
                hand.desk().sight.plate().orElseThrow().curves().measured().isEmpty()));
    }

    @Test
    void aLessonIsAcceptedWithoutPictureOrFileAndSavedLater() throws Exception {
        Path scan = stripAndItsScan();
        act(() -> hand.desk().lessons.tell("depth", "40um"));
        hand.toOpen.add(PHOTOGRAPH);
        hand.press("test-choose-scan");
        waitFor("an answer", () -> !hand.desk().lessons.isWorking());
        String refused = words("test-refused");
        assertTrue(refused.startsWith("The scan shows no test plate") && !refused.contains("\n"), refused);

        hand.toOpen.add(scan);
        hand.press("test-other-scan");
        waitFor("the work", () -> hand.desk().lessons.isWorking());
        hand.press("test-stop");
        assertTrue(state() instanceof TestPlateState.Refused, state().toString());

        hand.toOpen.add(scan);
        hand.press("test-other-scan");
        waitFor("the reading", () -> isRead());
        Workshop assumed = shop();
        hand.press("test-accept");
        Workshop taught = shop();
        assertNotEquals(assumed, taught);
        assertFalse(taught.bath().rateMicrometresPerMinute().isAssumed());
        assertTrue(onScreen(() -> hand.desk().model.unsaved()));
        Path file = folder.resolve("shop.json");
        hand.toSave.add(file);
        hand.press("save-workshop");
        assertEquals(taught, KeptFiles.workshop(file));
        undo();
        assertEquals(assumed, shop());
    }

    @Test
    void aTestFilmIsSeenBeforeItIsMadeAndAProofOfAnotherIsNamed() throws Exception {
        Path scan = stripAndItsScan();
        String own = KeptFiles.chart(shared.resolve("strip.pdf")).id();
        act(() -> {
            @SuppressWarnings("unchecked")
            ComboBox<TestPlateKind> kinds = hand.find("test-kind", ComboBox.class);
            kinds.setValue(TestPlateKind.STRIP);
            hand.find("test-plate-size", TextField.class).setText("110x30mm");
        });
        hand.press("test-preview");
        waitFor("the film's picture", () -> !hand.desk().lessons.isWorking());
        TestPlateState.Film seen = (TestPlateState.Film) state();
        assertEquals(Optional.empty(), seen.written());
        assertTrue(seen.sheet().width() > seen.sheet().height());
        hand.toSave.add(folder.resolve("other.pdf"));
        hand.press("test-make");
        waitFor("the film", () -> !hand.desk().lessons.isWorking());
        hand.toOpen.add(scan);
        hand.press("test-choose-scan");
        waitFor("an answer", () -> !hand.desk().lessons.isWorking());
        String refused = words("test-refused");
        assertTrue(refused.contains("another chart, " + own), refused);
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(
                    List.of(),
                    left.filter(each -> each.toString().endsWith(".part")).toList());
        }
    }
}
