package greyground.desk.window;

import greyground.desk.model.Place;
import greyground.desk.model.Station;
import greyground.simulation.ProofOfFilm;
import java.nio.file.Path;
import javafx.scene.control.ToggleButton;
import javafx.stage.Stage;

/** Draws the pictures of the test plate; an invented shop prints it. */
final class TestPlatePictures {
    private TestPlatePictures() {}

    /** The test plate: nothing yet, its film, a refused scan, a proof read, accepted, and a check of it. */
    static void draw(DeskWindow desk, Stage stage, Path folder, Path state) throws Exception {
        go(desk, Station.ART, Place.TEST_PLATE);
        DeskPictures.shot(desk, stage, folder, "test-empty", 1100, 700, 1);
        DeskPictures.shot(desk, stage, folder, "test-empty-1400", 1400, 900, 1);
        DeskPictures.onScreen(() -> {
            desk.lessons.plate("120x85mm");
            desk.lessons.preview();
            return null;
        });
        DeskPictures.shot(desk, stage, folder, "test-working", 1100, 700, 1, false);
        DeskPictures.shot(desk, stage, folder, "test-film", 1100, 700, 1);
        Path film = state.resolve("test.pdf");
        DeskPictures.onScreen(() -> {
            desk.lessons.make(film);
            return null;
        });
        DeskPictures.rest(desk);
        DeskPictures.onScreen(() -> {
            desk.lessons.read(Path.of("testimages/still-life.png"));
            return null;
        });
        DeskPictures.shot(desk, stage, folder, "test-refused", 1100, 700, 1);
        Path scan = state.resolve("proof.png");
        ProofOfFilm.scan(film, 3, 400, scan);
        DeskPictures.onScreen(() -> {
            desk.lessons.tell("depth", "34um");
            desk.lessons.read(scan);
            return null;
        });
        DeskPictures.shot(desk, stage, folder, "test-scan", 1100, 700, 1);
        DeskPictures.onScreen(() -> {
            ((ToggleButton) desk.root().lookup("#test-tones")).fire();
            return null;
        });
        DeskPictures.shot(desk, stage, folder, "test-tones", 1100, 700, 1);
        DeskPictures.shot(desk, stage, folder, "test-tones-1400", 1400, 900, 1);
        DeskPictures.onScreen(() -> {
            desk.lessons.accept();
            return null;
        });
        DeskPictures.shot(desk, stage, folder, "test-accepted", 1400, 900, 1);
        DeskPictures.shot(desk, stage, folder, "test-accepted-200", 1100, 700, 2);
        DeskPictures.onScreen(() -> {
            desk.shineSafely(true);
            return null;
        });
        DeskPictures.shot(desk, stage, folder, "test-safelight", 1100, 700, 1);
        DeskPictures.onScreen(() -> {
            ((ToggleButton) desk.root().lookup("#test-scan")).fire();
            return null;
        });
        DeskPictures.shot(desk, stage, folder, "test-scan-safelight", 1100, 700, 1);
        DeskPictures.onScreen(() -> {
            desk.shineSafely(false);
            desk.choose(Station.COPPER);
            return null;
        });
        DeskPictures.shot(desk, stage, folder, "copper-taught", 1400, 900, 1);
    }

    private static void go(DeskWindow desk, Station station, Place place) throws Exception {
        DeskPictures.onScreen(() -> {
            desk.choose(station);
            desk.go(place);
            return null;
        });
    }
}
