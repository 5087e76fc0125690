package greyground.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.javafx.scene.input.DragboardHelper;
import com.sun.javafx.tk.TKClipboard;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javafx.scene.control.Button;
import javafx.scene.input.DataFormat;
import javafx.scene.input.DragEvent;
import javafx.scene.input.Dragboard;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.TransferMode;
import org.junit.jupiter.api.Test;

/** Art is laid on the bench, cut, turned and read by hand and by keys. */
class ArtIT extends SmallPlate {
    private void mouse(javafx.event.EventType<MouseEvent> type, double x, double y) throws Exception {
        onScreen(() -> {
            // An event without a source counts from the scene's corner.
            var place = desk.picture().localToScene(x + PictureView.RULER, y + PictureView.RULER);
            desk.picture()
                    .fireEvent(new MouseEvent(
                            type,
                            place.getX(),
                            place.getY(),
                            0,
                            0,
                            MouseButton.PRIMARY,
                            1,
                            false,
                            false,
                            false,
                            false,
                            true,
                            false,
                            false,
                            false,
                            false,
                            false,
                            null));
            return null;
        });
    }

    private void drag(double fromX, double fromY, double toX, double toY) throws Exception {
        mouse(MouseEvent.MOUSE_PRESSED, fromX, fromY);
        mouse(MouseEvent.MOUSE_DRAGGED, (fromX + toX) / 2, (fromY + toY) / 2);
        mouse(MouseEvent.MOUSE_DRAGGED, toX, toY);
        mouse(MouseEvent.MOUSE_RELEASED, toX, toY);
        rest();
    }

    private Viewport.Area crop() {
        var plate = desk.sight().plate().orElseThrow();
        return Turning.area(desk.model().state().orElseThrow().job().art().crop(), plate.artWidth(), plate.artHeight());
    }

    private String word(String name) {
        return desk.model().state().orElseThrow().words().get(name);
    }

    private Viewport port() throws Exception {
        return onScreen(() -> desk.picture().port());
    }

    private void atArt() throws Exception {
        onScreen(() -> {
            desk.choose(Station.ART);
            desk.picture().requestFocus();
            desk.root().applyCss();
            desk.root().layout();
            return null;
        });
        rest();
    }

    /** What the system hands over when files are dragged into a window. */
    private static TKClipboard holding(Path file) {
        return (TKClipboard) Proxy.newProxyInstance(
                TKClipboard.class.getClassLoader(),
                new Class<?>[] {TKClipboard.class},
                (proxy, method, arguments) -> switch (method.getName()) {
                    case "getContentTypes" -> Set.of(DataFormat.FILES);
                    case "hasContent" -> arguments[0] == DataFormat.FILES;
                    case "getContent" -> arguments[0] == DataFormat.FILES ? List.of(file.toFile()) : null;
                    case "getTransferModes" -> Set.of(TransferMode.COPY);
                    default -> method.getReturnType() == boolean.class ? false : null;
                });
    }

    /** The event that the system sends when a file is let go over the window. */
    private void drop(Path file) throws Exception {
        onScreen(() -> {
            Dragboard board = DragboardHelper.createDragboard(holding(file));
            for (var type : List.of(DragEvent.DRAG_OVER, DragEvent.DRAG_DROPPED)) {
                DragEvent event =
                        new DragEvent(type, board, 400, 300, 400, 300, TransferMode.COPY, null, desk.picture(), null);
                desk.picture().fireEvent(event);
                assertTrue(event.isAccepted() || event.isConsumed(), type + " is taken by nobody");
            }
            return null;
        });
    }

    @Test
    void aFileLetGoOverTheWindowIsLaidOnTheBench() throws Exception {
        Path other = folder.resolve("a leaf of another name.png");
        Files.copy(ART, other);
        drop(other);
        // The plate's size has been set, so leaving is asked about first.
        onScreen(() -> {
            desk.root().lookup("#question").lookupAll(".button").stream()
                    .map(Button.class::cast)
                    .filter(button -> button.getText().equals("Don't save"))
                    .findFirst()
                    .orElseThrow()
                    .fire();
            return null;
        });
        waitFor(
                "the other picture",
                () -> desk.model()
                        .state()
                        .filter(state -> state.art().endsWith(other.getFileName()))
                        .isPresent());
        assertTrue(desk.files().recent().get(0).endsWith(other.getFileName()));
        // And the first is at hand again, by key.
        onScreen(() -> {
            desk.picture().fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", KeyCode.O, true, true, false, false));
            desk.root().lookup("#question").lookupAll(".button").stream()
                    .map(Button.class::cast)
                    .filter(button -> button.getText().equals(ART.getFileName().toString()))
                    .findFirst()
                    .orElseThrow()
                    .fire();
            return null;
        });
        waitFor(
                "the first picture",
                () -> desk.model()
                        .state()
                        .filter(state -> state.art().endsWith(ART.getFileName()))
                        .isPresent());
    }

    @Test
    void aFragmentIsDrawnPulledAndKeptAtThePlatesShape() throws Exception {
        atArt();
        Viewport port = port();
        var plate = desk.sight().plate().orElseThrow();
        key(KeyCode.C);
        drag(
                port.pixelX(plate.artWidth() * 0.2),
                port.pixelY(plate.artHeight() * 0.2),
                port.pixelX(plate.artWidth() * 0.7),
                port.pixelY(plate.artHeight() * 0.8));
        Viewport.Area drawn = crop();
        assertEquals(0.5 * plate.artWidth(), drawn.width(), 2 * port.perPixel());
        // Its lower right grip, pulled.
        drag(
                port.pixelX(drawn.left() + drawn.width()),
                port.pixelY(drawn.top() + drawn.height()),
                port.pixelX(drawn.left() + drawn.width() / 2),
                port.pixelY(drawn.top() + drawn.height() / 2));
        Viewport.Area pulled = crop();
        assertEquals(drawn.left(), pulled.left(), 0.1);
        assertEquals(drawn.width() / 2, pulled.width(), 2 * port.perPixel());
        key(KeyCode.P);
        rest();
        assertEquals(60.0 / 45, crop().width() / crop().height(), 0.01);
        Viewport.Area kept = crop();
        drag(
                port.pixelX(kept.left()),
                port.pixelY(kept.top()),
                port.pixelX(kept.left() - 20),
                port.pixelY(kept.top() - 3));
        assertEquals(60.0 / 45, crop().width() / crop().height(), 0.01);
        assertTrue(crop().width() > kept.width());
        // Numbers say the same, and take it back.
        assertNotEquals(ArtSettings.WHOLE, word("crop"));
        press("no-crop");
        assertEquals(ArtSettings.WHOLE, word("crop"));
    }

    @Test
    void aLineAlongTheHorizonStraightensAndQuartersTurn() throws Exception {
        atArt();
        key(KeyCode.V);
        drag(100, 100, 300, 100 + 200 * Math.tan(Math.toRadians(4)));
        assertEquals(-4, Double.parseDouble(word("rotate")), 0.05);
        key(KeyCode.CLOSE_BRACKET);
        assertEquals(86, Double.parseDouble(word("rotate")), 0.05);
        key(KeyCode.OPEN_BRACKET);
        assertEquals(-4, Double.parseDouble(word("rotate")), 0.05);
    }

    @Test
    void whiteAndBlackArePickedByPointingAndByKeys() throws Exception {
        atArt();
        double[] place = onScreen(() -> {
            Viewport port = desk.picture().port();
            return new double[] {port.width() / 2.0, port.height() / 2.0};
        });
        key(KeyCode.W);
        drag(place[0], place[1], place[0], place[1]);
        String byMouse = word("white");
        assertNotEquals("automatic", byMouse);
        onScreen(() -> {
            desk.tell("white", Map.of("white", "automatic"));
            return null;
        });
        rest();
        key(KeyCode.L);
        key(KeyCode.W);
        key(KeyCode.ENTER);
        rest();
        // The loupe begins in the middle, where the mouse pointed.
        assertEquals(byMouse, word("white"));
        key(KeyCode.RIGHT);
        key(KeyCode.B);
        key(KeyCode.ENTER);
        rest();
        assertTrue(Set.of("automatic").stream().noneMatch(word("black")::equals));
    }
}
