package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.look.Icon;
import greyground.desk.model.BenchModel;
import greyground.desk.model.Hand;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.Station;
import greyground.desk.model.Turning;
import greyground.desk.model.Viewport;
import greyground.film.job.ArtFields;
import greyground.film.job.Job;
import greyground.film.job.JobField;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.VBox;

/** What the hand can do on the art: pick its white and its black, draw a fragment, turn it; and the buttons for it. */
final class ArtTools extends VBox {
    private final BenchModel model;
    private final LiveDesk live;
    private final PlateSight sight;
    private final BiConsumer<String, UnaryOperator<Job>> tell;
    private final Map<Hand, ToggleButton> hands = new EnumMap<>(Hand.class);
    private final ToggleButton plateShape = Controls.drawn(
            Controls.toggle(
                    "Keep proportion",
                    "plate-shape",
                    "Keep proportion: cut to the plate's, and keep it while the fragment is drawn or pulled (H)"),
            Icon.PROPORTION);

    ArtTools(BenchModel model, LiveDesk live, PlateSight sight, BiConsumer<String, UnaryOperator<Job>> tell) {
        super(2);
        this.model = model;
        this.live = live;
        this.sight = sight;
        this.tell = tell;
        hand(Hand.PICK_WHITE, Icon.PAPER, "Paper white", "pick-white", "point at what shall print as bare paper (P)");
        hand(Hand.PICK_BLACK, Icon.INK, "Ink black", "pick-black", "point at what shall print darkest (K)");
        tool(Icon.ENDS, "Find white and black", "find-both", "let the program find both in the art", this::findEnds);
        String cut = "drag over the part that is wanted; its grips can be pulled afterwards (X)";
        hand(Hand.CROP, Icon.CUT, "Cut out", "draw-crop", cut);
        getChildren().add(plateShape);
        tool(Icon.WHOLE, "Uncut", "no-crop", "take all of the picture", this::cropNothing);
        String cover = "the largest part of the plate's proportion that the straightened picture fills";
        tool(Icon.COVER, "Cut to cover", "crop-covered", cover, this::cropToCover);
        tool(Icon.LEFT, "Quarter turn left", "quarter-left", "Shift+Q", () -> quarter(false));
        tool(Icon.RIGHT, "Quarter turn right", "quarter-right", "Q", () -> quarter(true));
        String level = "draw a line along what should be level or upright, and the picture turns (V)";
        hand(Hand.LEVEL, Icon.STRAIGHTEN, "Straighten", "draw-level", level);
        plateShape.setOnAction(pressed -> keepPlateShape(plateShape.isSelected()));
        sight.picture().hand().whenDone(this::done);
        sight.picture().hand().whenTaken(taken -> hands.forEach((each, button) -> button.setSelected(each == taken)));
    }

    private void tool(Icon icon, String words, String id, String hint, Runnable action) {
        getChildren().add(Controls.drawn(Controls.button(words, id, words + ": " + hint, action), icon));
    }

    /** A tool that stays in the hand until it has been used or is put down. */
    private void hand(Hand hand, Icon icon, String words, String id, String hint) {
        ToggleButton button = Controls.drawn(Controls.toggle(words, id, words + ": " + hint), icon);
        button.setOnAction(pressed -> hold(button.isSelected() ? hand : Hand.MOVE));
        hands.put(hand, button);
        getChildren().add(button);
    }

    /** Width over height of the plate, 0 where there is none. */
    private double proportion() {
        return model.state()
                .map(state -> state.job().plate())
                .map(plate -> plate.widthMillimetres() / plate.heightMillimetres())
                .orElse(0.0);
    }

    /** Cuts to the plate's proportion and keeps it, or lets it go. */
    void keepPlateShape(boolean kept) {
        plateShape.setSelected(kept);
        plateChanged();
        if (kept) {
            double proportion = proportion();
            sight.picture()
                    .cropFrame()
                    .map(frame -> frame.cutTo(proportion))
                    .ifPresent(frame -> tell.accept(
                            "crop to the plate's proportion",
                            job -> Turning.cropped(job, frame.area(), frame.artWidth(), frame.artHeight())));
        }
    }

    /** The same by key, at the art. */
    void togglePlateShape() {
        if (sight.picture().station() == Station.ART) {
            keepPlateShape(!plateShape.isSelected());
        }
    }

    /** The plate may have another shape now. */
    void plateChanged() {
        sight.picture().hand().keep(plateShape.isSelected() ? proportion() : 0);
    }

    private void hold(Hand hand) {
        sight.picture().hand().take(hand);
        sight.picture().requestFocus();
    }

    /** Takes up a tool, where there is art to work on. */
    void take(Hand hand) {
        if (sight.picture().station() == Station.ART) {
            hold(hand);
        }
    }

    private void findEnds() {
        tell.accept(
                "white and black found",
                job -> ArtFields.WHITE.with(ArtFields.BLACK.with(job, Optional.empty()), Optional.empty()));
    }

    private void cropNothing() {
        tell.accept("crop", job -> ArtFields.CROP.with(job, ArtFields.CROP.usual()));
    }

    private void cropToCover() {
        sight.plate()
                .ifPresent(made -> tell.accept("crop", job -> Turning.covered(job, made.artWidth(), made.artHeight())));
    }

    void quarter(boolean clockwise) {
        tell.accept("quarter turn", job -> Turning.quarter(job, clockwise));
    }

    private void done(Hand hand, Viewport.Area area) {
        if (hand.isOfPlate()) {
            return;
        }
        sight.plate().ifPresent(made -> {
            if (hand == Hand.LEVEL) {
                tell.accept("straighten", job -> Turning.levelled(job, area.width(), area.height()));
            } else if (hand == Hand.CROP) {
                tell.accept("crop", job -> Turning.cropped(job, area, made.artWidth(), made.artHeight()));
            } else {
                boolean white = hand == Hand.PICK_WHITE;
                JobField<Optional<Double>> point = white ? ArtFields.WHITE : ArtFields.BLACK;
                live.luminance(
                        area.left() + area.width() / 2,
                        area.top() + area.height() / 2,
                        luminance -> tell.accept(
                                white ? "paper white" : "ink black",
                                // To a ten-thousandth of a percent, as it would be typed.
                                job -> point.with(job, Optional.of(Math.rint(luminance * 1e6) / 1e6))));
            }
        });
    }
}
