package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.model.BenchModel;
import greyground.desk.model.Hand;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.Station;
import greyground.desk.model.Turning;
import greyground.desk.model.Viewport;
import greyground.film.job.ArtFields;
import greyground.film.job.Job;
import greyground.film.job.JobField;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import javafx.geometry.Insets;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** What the hand can do on the art: pick its white and its black, draw a fragment, turn it; and the buttons for it. */
final class ArtTools extends FlowPane {
    private final BenchModel model;
    private final LiveDesk live;
    private final PlateSight sight;
    private final BiConsumer<String, UnaryOperator<Job>> tell;
    private final ToggleButton plateShape = Controls.toggle(
            "Keep proportion  H",
            "plate-shape",
            "Cut to the plate's proportion, and keep it while the fragment is drawn or pulled (H)");

    ArtTools(BenchModel model, LiveDesk live, PlateSight sight, BiConsumer<String, UnaryOperator<Job>> tell) {
        super(8, 8);
        this.model = model;
        this.live = live;
        this.sight = sight;
        this.tell = tell;
        tool(
                "Paper white  P",
                "pick-white",
                "Point at what shall print as bare paper (P)",
                () -> hold(Hand.PICK_WHITE));
        tool("Ink black  K", "pick-black", "Point at what shall print darkest (K)", () -> hold(Hand.PICK_BLACK));
        tool("Find white and black", "find-both", "Let the program find the art's white and black", this::findEnds);
        String crop = "Drag over the part that is wanted; its grips can be pulled afterwards (X)";
        tool("Draw crop  X", "draw-crop", crop, () -> hold(Hand.CROP));
        getChildren().add(plateShape);
        tool("No crop", "no-crop", "Take all of the picture", this::cropNothing);
        String cover = "Take the largest part of the plate's proportion that the straightened picture fills";
        tool("Crop to cover", "crop-covered", cover, this::cropToCover);
        tool(
                "Quarter turn left  Shift+Q",
                "quarter-left",
                "Turn it a quarter to the left (Shift+Q)",
                () -> quarter(false));
        tool("Quarter turn right  Q", "quarter-right", "Turn it a quarter to the right (Q)", () -> quarter(true));
        String level = "Draw a line along what should be level or upright, and the picture turns (V)";
        tool("Straighten  V", "draw-level", level, () -> hold(Hand.LEVEL));
        plateShape.setOnAction(pressed -> keepPlateShape(plateShape.isSelected()));
        VBox.setMargin(this, new Insets(0, 0, 8, 0));
        sight.picture().hand().whenDone(this::done);
    }

    private void tool(String words, String id, String hint, Runnable action) {
        getChildren().add(Controls.button(words, id, hint, action));
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
    }

    /** Takes up a tool, where there is art to work on. */
    void take(Hand hand) {
        if (sight.picture().station() == Station.ART) {
            hold(hand);
            sight.picture().requestFocus();
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
