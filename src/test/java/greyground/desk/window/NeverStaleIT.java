package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.cli.Attempt;
import greyground.desk.model.BenchState;
import greyground.desk.model.Place;
import greyground.desk.model.Station;
import greyground.desk.picture.PictureView;
import greyground.film.job.Told;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import javafx.scene.SnapshotParameters;
import javafx.scene.control.Label;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.paint.Color;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is seen belongs to what lies on the bench, or is dimmed; and what can't be read never gets there. */
class NeverStaleIT extends AtTheDesk {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");
    private static final int ACTS = 120;

    /** Under the safelight no pixel is bluer than the lightest amber of its colours, #ffb84a, whatever is still computed. */
    private void nothingShinesBlue(String after) throws Exception {
        act(() -> {
            if (hand.desk().isSafe()) {
                SnapshotParameters dark = new SnapshotParameters();
                // A focus ring may reach past the window's edge, where nothing is drawn.
                dark.setFill(Color.BLACK);
                WritableImage seen = hand.root().snapshot(dark, null);
                int most = 0;
                for (int y = 0; y < seen.getHeight(); y += 2) {
                    for (int x = 0; x < seen.getWidth(); x += 2) {
                        most = Math.max(most, seen.getPixelReader().getArgb(x, y) & 0xFF);
                    }
                }
                assertTrue(most <= 0x4A + 2, after + ": blue " + most);
            }
        });
    }

    private void lawHolds(String after) throws Exception {
        nothingShinesBlue(after);
        act(() -> {
            Optional<BenchState> now = hand.desk().model.state();
            for (PictureView view :
                    List.of(hand.desk().picture, hand.desk().sheet.picture())) {
                view.shows()
                        .ifPresent(shown -> assertTrue(
                                view.isStale()
                                        || now.filter(shown::makesTheSameAs).isPresent(),
                                after + ": " + view.getId() + " shows " + shown + " as if it were " + now));
            }
            now.ifPresent(state -> assertTrue(
                    ((Label) hand.root().lookup(".head .strong"))
                            .getText()
                            .startsWith(state.art().getFileName() + ""),
                    after));
        });
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void whateverIsDoneOnlyThePresentIsShownAsSuch(long seed) throws Exception {
        Random random = new Random(seed);
        Path other = folder.resolve("other.png");
        Files.copy(Path.of("testimages/cup.png"), other);
        byte[] whole = Files.readAllBytes(ART);
        Path cut = folder.resolve("cut.png");
        Files.write(cut, Arrays.copyOf(whole, whole.length / 3));
        hand.smallPlate(ART);
        for (int i = 0; i < ACTS; i++) {
            String done = seed + ", act " + i + ": " + something(random, List.of(ART, other, cut));
            lawHolds(done);
            if (random.nextInt(4) == 0) {
                Thread.sleep(random.nextInt(120));
                lawHolds(done + ", later");
            }
        }
        waitFor("rest", hand.desk()::isAtRest);
        onScreen(() -> null);
        lawHolds("at rest");
        assertFalse(onScreen(() -> hand.desk().picture.isStale()), "all is fresh in the end");
    }

    private String something(Random random, List<Path> files) throws Exception {
        int kind = random.nextInt(12);
        switch (kind) {
            case 0, 1 -> act(() -> hand.desk().choose(Station.values()[random.nextInt(5)]));
            case 2, 3 -> hand.tell("bleed", random.nextInt(5) + "mm");
            case 4 -> hand.tell("hardness", random.nextInt(30) + "");
            case 5 -> act(hand.desk().model::undo);
            case 6 -> act(hand.desk().model::redo);
            case 7 -> {
                act(() -> hand.desk().model.leave());
                act(() -> hand.desk().files.open(files.get(random.nextInt(files.size()))));
                if (!hand.question().isEmpty()) {
                    hand.answer("Don't save");
                }
            }
            case 8 -> act(hand.desk()::toggleLoupe);
            case 9 -> act(() -> hand.desk().go(Place.values()[random.nextInt(Place.values().length)]));
            case 10 -> act(() -> hand.desk().shineSafely(random.nextBoolean()));
            default -> hand.key(random.nextBoolean() ? KeyCode.Q : KeyCode.A);
        }
        return kind + "";
    }

    /** A picture cut off in the middle: the job that lies there stays, with its pictures, and the bar says why. */
    @Test
    void aPictureThatCantBeReadLeavesTheJobAsItWas() throws Exception {
        hand.smallPlate(ART);
        act(() -> hand.desk().choose(Station.PRINT));
        hand.rest();
        BenchState before = hand.state();
        byte[] whole = Files.readAllBytes(ART);
        Path cut = folder.resolve("cut.png");
        Files.write(cut, Arrays.copyOf(whole, whole.length / 3));
        act(() -> hand.desk().files.open(cut));
        hand.answer("Don't save");
        waitFor("a word", () -> !hand.desk().frame.messages.said().isEmpty());
        assertTrue(hand.words("said").contains("cut.png"), hand.words("said"));
        hand.rest();
        assertEquals(before, hand.state());
        assertEquals(before, onScreen(() -> hand.desk().picture.shows().orElseThrow()));
        assertEquals(Station.PRINT, onScreen(() -> hand.desk().picture.station()));
        assertFalse(onScreen(() -> hand.desk().files.recent().contains(cut)));
    }

    /** The window shows one plate: a set is not taken for the job of its first. */
    @Test
    void aSetOfPlatesLeavesTheJobAsItWas() throws Exception {
        hand.smallPlate(ART);
        BenchState before = hand.state();
        Path inks = Files.writeString(
                folder.resolve("inks.json"),
                "{\"greyground\": \"inks\", \"version\": 1, \"inks\": [{\"name\": \"black\"}]}");
        Path set = folder.resolve("set.pdf");
        Attempt.done("plates", ART, "--inks=" + inks, "--plate=40x30mm", "--resolution=720", "--out=" + set);
        act(() -> hand.desk().files.open(set));
        hand.answer("Don't save");
        waitFor("a word", () -> !hand.desk().frame.messages.said().isEmpty());
        assertTrue(hand.words("said").contains("et.pdf is a set of plates"), hand.words("said"));
        hand.rest();
        assertEquals(before, hand.state());
    }

    /** A grain that was never made takes a while; the art is there before. */
    @Test
    void artIsSeenBeforeItsPlateIsComputed() throws Exception {
        hand.toOpen.add(ART);
        hand.press("open");
        waitFor("the art", () -> hand.desk().picture.shows().isPresent());
        hand.acceptPlate();
        hand.tell("plate", "61.3x43.7mm");
        hand.rest();
        act(() -> hand.desk().tell("grain", Told.as(Map.of("grain", "173um"))));
        assertTrue(onScreen(() -> hand.desk().picture.isStale()));
        hand.rest();
        assertFalse(onScreen(() -> hand.desk().picture.isStale()));
    }
}
