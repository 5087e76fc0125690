package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.sight.LivePicture;
import greyground.desk.model.Comparison;
import greyground.desk.model.Station;
import greyground.desk.model.Viewport;
import java.util.Arrays;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

/** The loupe and what is compared under it, in the window. */
class LoupeIT extends SmallPlate {
    private Comparison comparison() {
        return hand.desk().loupeBench.comparison();
    }

    private static int[] pixels(Optional<Comparison.Side> side) {
        return side.flatMap(Comparison.Side::picture).map(LivePicture::pixels).orElseThrow();
    }

    /** Where one has looked from near, all of the plate is seen again at once, at whatever station. */
    @Test
    void allIsSeenAgainRightAfterALookFromNear() throws Exception {
        act(() -> {
            hand.desk().choose(Station.PRINT);
            hand.desk().picture.goTo(30, 20);
        });
        hand.rest();
        for (int i = 0; i < 3; i++) {
            act(() -> {
                hand.desk().choose(Station.PRINT);
                hand.desk().picture.goTo(30, 20);
            });
            // The near picture is under way when all is wanted.
            Thread.sleep(40 + 60 * i);
            act(() -> {
                hand.desk().choose(Station.COPPER);
                hand.desk().picture.fit();
            });
            hand.rest();
            WritableImage seen = onScreen(() -> hand.desk().picture.snapshot(null, null));
            Viewport port = onScreen(() -> hand.desk().picture.port());
            int bench = 0xFFC8C8C8;
            for (double[] place : new double[][] {{5, 5}, {55, 5}, {5, 40}, {55, 40}}) {
                int x = (int) port.pixelX(place[0]);
                int y = (int) port.pixelY(place[1]);
                assertNotEquals(bench, seen.getPixelReader().getArgb(x, y), "nothing to see at " + place[0]);
            }
        }
    }

    @Test
    void whatIsHeldFastStaysBesideWhatTheLoupeShowsNext() throws Exception {
        act(() -> {
            hand.desk().choose(Station.COPPER);
            hand.desk().picture.requestFocus();
        });
        hand.key(KeyCode.L);
        loupeAt(30, 20);
        double height = onScreen(() -> hand.desk().picture.getHeight());
        hand.key(KeyCode.F);
        assertEquals(Comparison.Kind.TWO_PLACES, comparison().kind());
        int[] held = pixels(comparison().left(false));
        loupeAt(33, 24);
        assertTrue(Arrays.equals(held, pixels(comparison().left(false))));
        assertFalse(Arrays.equals(held, pixels(comparison().right(false))));
        assertTrue(comparison().left(false).orElseThrow().lines().get(0).contains("30.0, 20.0 mm"));
        assertTrue(comparison().right(false).orElseThrow().lines().get(0).contains("33.0, 24.0 mm"));
        Node strip = hand.root().lookup("#compare");
        act(() -> {
            hand.root().applyCss();
            hand.root().layout();
        });
        assertTrue(strip.isVisible());
        // The strip takes room of its own; it lies on nothing.
        assertTrue(onScreen(() -> hand.desk().picture.getHeight()) < height);
        assertTrue(onScreen(() -> hand.desk()
                        .picture
                        .localToScene(hand.desk().picture.getLayoutBounds())
                        .getMaxY()
                <= strip.localToScene(strip.getLayoutBounds()).getMinY() + 0.5));
        hand.press("close-compare");
        assertFalse(strip.isVisible());
    }

    @Test
    void onePlaceIsSeenAtTwoBiteTimes() throws Exception {
        act(() -> hand.desk().choose(Station.PRINT));
        hand.press("two-bites");
        loupeAt(30, 20);
        waitFor(
                "both bites",
                () -> comparison().left(false).flatMap(Comparison.Side::picture).isPresent());
        int[] usual = pixels(comparison().left(false));
        assertFalse(Arrays.equals(usual, pixels(comparison().right(false))));
        hand.type("other-bite", "20");
        waitFor(
                "the same bite twice",
                () -> comparison()
                        .right(false)
                        .flatMap(Comparison.Side::picture)
                        .isPresent());
        // The workshop's usual bite is 20 min, as assumed: typed, it must be the same plate.
        assertTrue(Arrays.equals(
                pixels(comparison().left(false)), pixels(comparison().right(false))));
        assertTrue(comparison().left(false).orElseThrow().lines().get(0).startsWith("bite 20 min"));
        hand.type("other-bite", "5000");
        assertEquals(
                20, comparison().otherMinutes(java.util.OptionalDouble.empty()).orElseThrow());
    }
}
