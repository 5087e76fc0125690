package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import greyground.desk.model.Station;
import greyground.desk.model.Viewport;
import greyground.film.job.JobFile;
import greyground.film.job.OutlineFields;
import greyground.film.job.RetouchFields;
import java.nio.file.Path;
import java.util.Optional;
import javafx.event.EventType;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Places burnished and deepened, and outlines drawn, with the hand on the picture: what is drawn is what the job says, and one act is one step back. */
class PlateToolsIT extends AtTheDesk {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    @BeforeEach
    void layThePlate() throws Exception {
        hand.smallPlate(ART);
        act(() -> hand.desk().choose(Station.PRINT));
        hand.rest();
    }

    /** A mouse at a place of the plate, in millimetres. */
    private void mouse(EventType<MouseEvent> what, double across, double down) throws Exception {
        act(() -> {
            Viewport port = hand.desk().picture.port();
            javafx.geometry.Point2D at = hand.desk().picture.localToScene(port.pixelX(across), port.pixelY(down));
            double x = at.getX();
            double y = at.getY();
            boolean held = what != MouseEvent.MOUSE_MOVED;
            hand.desk()
                    .picture
                    .fireEvent(new MouseEvent(
                            what,
                            x,
                            y,
                            x,
                            y,
                            MouseButton.PRIMARY,
                            1,
                            false,
                            false,
                            false,
                            false,
                            held,
                            false,
                            false,
                            false,
                            false,
                            true,
                            null));
        });
    }

    private void drag(double... places) throws Exception {
        mouse(MouseEvent.MOUSE_PRESSED, places[0], places[1]);
        for (int i = 2; i < places.length; i += 2) {
            mouse(MouseEvent.MOUSE_DRAGGED, places[i], places[i + 1]);
        }
        mouse(MouseEvent.MOUSE_RELEASED, places[places.length - 2], places[places.length - 1]);
    }

    private JsonNode touches() throws Exception {
        return new ObjectMapper().readTree(JobFile.text(hand.state().job())).at("/art/touches");
    }

    private boolean isPressed(String id) throws Exception {
        return onScreen(() -> hand.find(id, ToggleButton.class).isSelected());
    }

    private int pixel(double across, double down) throws Exception {
        return onScreen(() -> {
            Viewport port = hand.desk().picture.port();
            return hand.desk().picture.snapshot(null, null).getPixelReader().getArgb((int) port.pixelX(across), (int)
                    port.pixelY(down));
        });
    }

    @Test
    void aStrokeIsATouchOfItsSizeAndAmountAndOneStepBack() throws Exception {
        hand.press("hand-burnish");
        assertTrue(isPressed("hand-burnish"));
        assertTrue(onScreen(() -> hand.root().lookup("#tool-line").isVisible()));
        assertEquals(
                javafx.scene.Cursor.CROSSHAIR,
                onScreen(() -> hand.desk().picture.getCursor()));
        hand.type("brush-width", "6");
        hand.type("brush-amount", "12");
        drag(10, 10, 20, 12, 30, 15);
        JsonNode stroke = touches().get(0);
        assertEquals(12, stroke.path("burnish").asDouble());
        assertEquals(6, stroke.path("widthMillimetres").asDouble());
        assertEquals(3, stroke.path("featherMillimetres").asDouble());
        JsonNode points = stroke.path("pointsMillimetres");
        assertEquals(3, points.size());
        assertEquals(10, points.get(0).get(0).asDouble(), 0.1);
        assertEquals(15, points.get(2).get(1).asDouble(), 0.1);
        assertTrue(isPressed("hand-burnish"), "it stays in the hand");
        drag(30, 30, 31, 31);
        assertEquals(2, touches().size());
        hand.press("hand-deepen");
        assertFalse(isPressed("hand-burnish"));
        drag(40, 20);
        assertEquals(12, touches().get(2).path("deepen").asDouble(), "a press alone is a dab");
        assertEquals(1, touches().get(2).path("pointsMillimetres").size());
        assertEquals("deepen", onScreen(() -> hand.desk().model.undoes().orElseThrow()));
        act(hand.desk().model::undo);
        act(hand.desk().model::undo);
        assertEquals(1, touches().size());
        act(() -> hand.desk().picture.requestFocus());
        hand.key(KeyCode.ESCAPE);
        assertFalse(isPressed("hand-deepen"));
        assertFalse(onScreen(() -> hand.root().lookup("#tool-line").isVisible()));
        act(() -> hand.desk().choose(Station.ART));
        assertFalse(
                onScreen(() -> hand.root().lookup("#hand-burnish").getParent().isVisible()));
    }

    /** What is burnished prints lighter there, and nowhere else. */
    @Test
    void theBurnishedPlacePrintsLighter() throws Exception {
        hand.rest();
        int before = pixel(30, 22) & 0xFF;
        int far = pixel(8, 8) & 0xFF;
        hand.press("hand-burnish");
        hand.type("brush-width", "12");
        hand.type("brush-amount", "20");
        drag(26, 22, 34, 22);
        hand.rest();
        hand.key(KeyCode.ESCAPE);
        mouse(MouseEvent.MOUSE_MOVED, 58, 44);
        assertTrue((pixel(30, 22) & 0xFF) > before, before + " and then " + (pixel(30, 22) & 0xFF));
        assertEquals(far, pixel(8, 8) & 0xFF);
    }

    @Test
    void wrongBrushesAreSaidAndChangeNothing() throws Exception {
        hand.press("hand-burnish");
        for (String[] wrong :
                new String[][] {{"0", "5"}, {"-3", "5"}, {"8", "31"}, {"x", "5"}, {"8", ""}, {"1e9", "5"}}) {
            hand.type("brush-width", wrong[0]);
            hand.type("brush-amount", wrong[1]);
            act(() -> hand.desk().messages.clear());
            drag(10, 10, 20, 10);
            assertEquals(0, touches().size(), String.join(" ", wrong));
            assertFalse(hand.words("said").isEmpty(), String.join(" ", wrong));
        }
    }

    private String outline() throws Exception {
        return OutlineFields.OUTLINE
                .kind()
                .print(OutlineFields.OUTLINE.of(hand.state().job()));
    }

    @Test
    void outlinesAreDraggedOrSetCornerByCorner() throws Exception {
        hand.press("hand-rectangle");
        drag(10, 8, 50, 38);
        assertTrue(outline().matches("rectangle:(10|9[.]\\d+|10[.]\\d+)mm,.*"), outline());
        assertFalse(isPressed("hand-rectangle"), "put down after it was drawn");
        hand.press("hand-ellipse");
        drag(50, 38, 10, 8);
        assertTrue(outline().startsWith("ellipse:"), outline());
        hand.press("hand-polygon");
        for (double[] corner : new double[][] {{10, 10}, {50, 12}, {30, 40}}) {
            drag(corner);
        }
        assertTrue(isPressed("hand-polygon"));
        drag(10, 10);
        assertTrue(outline().startsWith("polygon:"), outline());
        assertEquals(3, outline().chars().filter(each -> each == ':').count(), outline());
        assertFalse(isPressed("hand-polygon"));
        act(hand.desk().model::undo);
        assertTrue(outline().startsWith("ellipse:"), outline());
        // Two corners are no shape; Backspace takes one away; Escape gives up.
        hand.press("hand-polygon");
        drag(10, 10);
        drag(50, 12);
        hand.key(KeyCode.ENTER);
        assertTrue(isPressed("hand-polygon"));
        drag(30, 40);
        hand.key(KeyCode.BACK_SPACE);
        hand.key(KeyCode.ENTER);
        assertTrue(isPressed("hand-polygon"));
        hand.key(KeyCode.ESCAPE);
        assertTrue(outline().startsWith("ellipse:"), outline());
        // A press without a drag draws no shape, and a box too small is refused.
        hand.press("hand-ellipse");
        drag(20, 20);
        assertTrue(isPressed("hand-ellipse"));
        hand.rest();
    }

    /** By keys alone the loupe is the hand. */
    @Test
    void byKeysTheLoupeDabsAndSetsCorners() throws Exception {
        act(() -> hand.desk().picture.requestFocus());
        hand.key(KeyCode.L);
        hand.press("hand-deepen");
        hand.key(KeyCode.ENTER);
        assertEquals(1, touches().size());
        assertEquals(
                30, touches().get(0).path("pointsMillimetres").get(0).get(0).asDouble(), 0.1, "the middle");
        hand.press("hand-polygon");
        hand.key(KeyCode.ENTER);
        hand.key(KeyCode.RIGHT);
        hand.key(KeyCode.RIGHT);
        hand.key(KeyCode.ENTER);
        hand.key(KeyCode.DOWN);
        hand.key(KeyCode.DOWN);
        hand.key(KeyCode.ENTER);
        hand.key(KeyCode.L);
        hand.key(KeyCode.ENTER);
        assertTrue(outline().startsWith("polygon:"), outline());
        assertEquals(Optional.of("outline"), onScreen(() -> hand.desk().model.undoes()));
        assertEquals(1, RetouchFields.TOUCHES.of(hand.state().job()).size());
    }
}
