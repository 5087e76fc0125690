package greyground.desk;

import greyground.quantity.Refusal;
import java.util.Map;
import java.util.function.BiConsumer;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What the hand can do on the art: pick its white and its black, draw a fragment, turn it; and the buttons for it. */
final class ArtTools extends FlowPane {
    private final BenchModel model;
    private final LiveDesk live;
    private final PlateSight sight;
    private final BiConsumer<String, Map<String, String>> tell;

    /**
     * The tools.
     *
     * @param tell changes the job: what is changed, and the job's words for it
     */
    ArtTools(BenchModel model, LiveDesk live, PlateSight sight, BiConsumer<String, Map<String, String>> tell) {
        super(8, 8);
        this.model = model;
        this.live = live;
        this.sight = sight;
        this.tell = tell;
        getChildren()
                .addAll(
                        tool(
                                "Pick white  W",
                                "pick-white",
                                "Point at the paper: what counts as white (W)",
                                () -> hold(Hand.PICK_WHITE)),
                        tool(
                                "Pick black  B",
                                "pick-black",
                                "Point at the darkest ink: what counts as black (B)",
                                () -> hold(Hand.PICK_BLACK)),
                        tool("Find both", "find-both", "Leave white and black to the program again", this::findEnds),
                        tool(
                                "Draw crop  C",
                                "draw-crop",
                                "Drag over the part of the picture that you want (C)",
                                () -> hold(Hand.CROP)),
                        tool(
                                "No crop",
                                "no-crop",
                                "Take the whole picture",
                                () -> tell.accept("crop", Map.of("crop", ArtSettings.WHOLE))),
                        tool(
                                "Quarter left  [",
                                "quarter-left",
                                "Turn the picture a quarter to the left ([)",
                                () -> quarter(false)),
                        tool(
                                "Quarter right  ]",
                                "quarter-right",
                                "Turn the picture a quarter to the right (])",
                                () -> quarter(true)));
        VBox.setMargin(this, new Insets(0, 0, 8, 0));
        sight.picture().hand().whenDone(this::done);
    }

    private static Button tool(String words, String id, String hint, Runnable action) {
        Button button = new Button(words);
        button.setId(id);
        button.setTooltip(new Tooltip(hint));
        button.setMinWidth(Region.USE_PREF_SIZE);
        button.setOnAction(pressed -> action.run());
        return button;
    }

    private void hold(Hand hand) {
        sight.picture().hand().take(hand);
    }

    /** Takes up a tool, where there is art to work on. */
    void take(Hand hand) {
        if (sight.picture().station() == Station.ART) {
            hold(hand);
            sight.picture().requestFocus();
        }
    }

    private void findEnds() {
        tell.accept("white and black found", Map.of("white", "automatic", "black", "automatic"));
    }

    void quarter(boolean clockwise) {
        model.state()
                .ifPresent(state ->
                        tell.accept("quarter turn", Turning.quarter(state.job().art(), clockwise)));
    }

    private void done(Hand hand, Viewport.Area area) {
        sight.plate().ifPresent(made -> {
            if (hand == Hand.CROP) {
                tell.accept("crop", Turning.cropped(area, made.artWidth(), made.artHeight()));
            } else {
                String word = hand == Hand.PICK_WHITE ? "white" : "black";
                live.luminance(
                        area.left() + area.width() / 2,
                        area.top() + area.height() / 2,
                        luminance -> tell.accept("ink " + word, Map.of(word, Refusal.plain(luminance * 100) + "%")));
            }
        });
    }
}
