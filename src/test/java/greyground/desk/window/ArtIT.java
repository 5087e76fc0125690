package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.javafx.scene.input.DragboardHelper;
import com.sun.javafx.tk.TKClipboard;
import greyground.desk.model.Station;
import greyground.desk.model.Turning;
import greyground.desk.model.Viewport;
import greyground.film.job.ArtFields;
import greyground.film.job.JobField;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import javafx.scene.input.DataFormat;
import javafx.scene.input.DragEvent;
import javafx.scene.input.Dragboard;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.TransferMode;
import org.junit.jupiter.api.Test;

/** Art is laid on the bench, cut, turned and read by hand and by keys. */
class ArtIT extends SmallPlate {
    private void mouse(javafx.event.EventType<MouseEvent> type, double x, double y) throws Exception {
        act(() -> {
            // An event without a source counts from the scene's corner.
            var place = hand.desk().picture.localToScene(x, y);
            hand.desk()
                    .picture
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
        });
    }

    private void drag(double fromX, double fromY, double toX, double toY) throws Exception {
        mouse(MouseEvent.MOUSE_PRESSED, fromX, fromY);
        mouse(MouseEvent.MOUSE_DRAGGED, (fromX + toX) / 2, (fromY + toY) / 2);
        mouse(MouseEvent.MOUSE_DRAGGED, toX, toY);
        mouse(MouseEvent.MOUSE_RELEASED, toX, toY);
        hand.rest();
    }

    private Viewport.Area crop() {
        var plate = hand.desk().sight.plate().orElseThrow();
        return Turning.area(
                hand.desk().model.state().orElseThrow().job().art().crop(), plate.artWidth(), plate.artHeight());
    }

    private String word(JobField<?> field) {
        return field.text(hand.desk().model.state().orElseThrow().job());
    }

    private Viewport port() throws Exception {
        return onScreen(() -> hand.desk().picture.port());
    }

    private void atArt() throws Exception {
        act(() -> {
            hand.desk().choose(Station.ART);
            hand.desk().picture.requestFocus();
            hand.root().applyCss();
            hand.root().layout();
        });
        hand.rest();
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
        act(() -> {
            Dragboard board = DragboardHelper.createDragboard(holding(file));
            for (var type : List.of(DragEvent.DRAG_OVER, DragEvent.DRAG_DROPPED)) {
                DragEvent event = new DragEvent(
                        type, board, 400, 300, 400, 300, TransferMode.COPY, null, hand.desk().picture, null);
                hand.desk().picture.fireEvent(event);
                assertTrue(event.isAccepted() || event.isConsumed(), type + " is taken by nobody");
            }
        });
    }

    @Test
    void aFileLetGoOverTheWindowIsLaidOnTheBench() throws Exception {
        Path other = folder.resolve("a leaf of another name.png");
        Files.copy(ART, other);
        drop(other);
        // The plate's size has been set, so leaving is asked about first.
        hand.answer("Don't save");
        waitFor(
                "the other picture",
                () -> hand.desk()
                        .model
                        .state()
                        .filter(state -> state.art().endsWith(other.getFileName()))
                        .isPresent());
        assertTrue(hand.desk().files.recent().get(0).endsWith(other.getFileName()));
        // And the first is at hand again, by key.
        hand.key(KeyCode.O, KeyCode.SHIFT, KeyCode.CONTROL);
        hand.answer(ART.getFileName().toString());
        waitFor(
                "the first picture",
                () -> hand.desk()
                        .model
                        .state()
                        .filter(state -> state.art().endsWith(ART.getFileName()))
                        .isPresent());
    }

    @Test
    void aFragmentIsDrawnPulledAndKeptAtThePlatesShape() throws Exception {
        atArt();
        Viewport port = port();
        var plate = hand.desk().sight.plate().orElseThrow();
        hand.key(KeyCode.X);
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
        hand.key(KeyCode.H);
        hand.rest();
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
        assertNotEquals("0%,0%,100%,100%", word(ArtFields.CROP));
        hand.press("no-crop");
        assertEquals("0%,0%,100%,100%", word(ArtFields.CROP));
    }

    private double degrees() {
        return Double.parseDouble(word(ArtFields.ROTATE).replace("degrees", ""));
    }

    @Test
    void aLineAlongTheHorizonStraightensAndQuartersTurn() throws Exception {
        atArt();
        hand.key(KeyCode.V);
        drag(100, 100, 300, 100 + 200 * Math.tan(Math.toRadians(4)));
        assertEquals(-4, degrees(), 0.05);
        hand.key(KeyCode.Q);
        assertEquals(86, degrees(), 0.05);
        hand.key(KeyCode.Q, KeyCode.SHIFT);
        assertEquals(-4, degrees(), 0.05);
    }

    @Test
    void whiteAndBlackArePickedByPointingAndByKeys() throws Exception {
        atArt();
        double[] place = onScreen(() -> {
            Viewport port = hand.desk().picture.port();
            return new double[] {port.width() / 2.0, port.height() / 2.0};
        });
        hand.key(KeyCode.P);
        drag(place[0], place[1], place[0], place[1]);
        String byMouse = word(ArtFields.WHITE);
        assertNotEquals("automatic", byMouse);
        hand.tell("white", "automatic");
        hand.rest();
        hand.key(KeyCode.L);
        hand.key(KeyCode.P);
        hand.key(KeyCode.ENTER);
        hand.rest();
        // The loupe begins in the middle, where the mouse pointed.
        assertEquals(byMouse, word(ArtFields.WHITE));
        hand.key(KeyCode.RIGHT);
        hand.key(KeyCode.K);
        hand.key(KeyCode.ENTER);
        hand.rest();
        assertTrue(Set.of("automatic").stream().noneMatch(word(ArtFields.BLACK)::equals));
    }
}
