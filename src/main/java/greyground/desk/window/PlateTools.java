package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.look.Icon;
import greyground.desk.model.DeskHabits;
import greyground.desk.model.Hand;
import greyground.desk.model.Viewport;
import greyground.desk.picture.HandOnPicture;
import greyground.film.job.Job;
import greyground.film.job.Outline;
import greyground.film.job.OutlineFields;
import greyground.film.job.RetouchFields;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** What the hand can do on the plate: burnish and deepen places, draw the shape in which the picture ends; and the line that says how, with the brush. */
final class PlateTools extends VBox {
    private static final String BRUSH = "brushMillimetres";
    private static final String AMOUNT = "brushLightness";
    private static final double USUAL_BRUSH = 8;
    private static final double USUAL_AMOUNT = 5;
    private static final double FINEST = 100;

    private final PlateSight sight;
    private final DeskHabits habits;
    private final BiConsumer<String, UnaryOperator<Job>> tell;
    private final Map<Hand, ToggleButton> tools = new EnumMap<>(Hand.class);
    private final Map<Hand, String> hints = new EnumMap<>(Hand.class);
    private final Label hint = Controls.label("");
    private final TextField brush =
            Controls.field("brush-width", "Brush in mm", "How wide the brush is, in millimetres of plate", "number");
    private final TextField amount = Controls.field(
            "brush-amount",
            "Amount in L*",
            "How much lighter or darker, in L* of the art; 5 is clearly seen",
            "number");
    private final HBox ofBrush = Controls.line(
            8,
            Controls.label("Brush"),
            brush,
            Controls.label("mm"),
            Controls.label("by"),
            amount,
            Controls.label("L*"));
    private final HBox line = Controls.line(16, hint, ofBrush);

    PlateTools(PlateSight sight, DeskHabits habits, BiConsumer<String, UnaryOperator<Job>> tell) {
        super(2);
        this.sight = sight;
        this.habits = habits;
        this.tell = tell;
        tool(Hand.BURNISH, Icon.BURNISH, "Burnish", "draw over what shall print lighter");
        tool(Hand.DEEPEN, Icon.DEEPEN, "Deepen", "draw over what shall print darker");
        tool(Hand.RECTANGLE, Icon.BOX, "Outline, rectangle", "drag from corner to corner of what shall be seen");
        tool(Hand.ELLIPSE, Icon.ROUND, "Outline, ellipse", "drag from corner to corner of a box round it");
        tool(
                Hand.POLYGON,
                Icon.CORNERS,
                "Outline, corners",
                "press at each corner, at the first again or Enter to close it");
        line.setId("tool-line");
        line.getStyleClass().add("works");
        brush.setText(Unit.RATIO.words(habits.number(BRUSH, 0.1, 3000).orElse(USUAL_BRUSH), false));
        amount.setText(Unit.RATIO.words(habits.number(AMOUNT, 0, 30).orElse(USUAL_AMOUNT), false));
        for (TextField field : List.of(brush, amount)) {
            field.setOnAction(entered -> sight.picture().requestFocus());
            Controls.onEscape(field, () -> hold(Hand.MOVE));
        }
        brush.textProperty().addListener((what, was, is) -> sizeBrush());
        HandOnPicture hand = sight.picture().hand();
        hand.whenTaken(this::taken);
        hand.whenDone(this::done);
        hand.whenDrawn(this::drawn);
        taken(Hand.MOVE);
        sizeBrush();
    }

    private void tool(Hand hand, Icon icon, String words, String how) {
        String id = "hand-" + hand.name().toLowerCase(java.util.Locale.ROOT);
        ToggleButton button = Controls.drawn(Controls.toggle(words, id, words + ": " + how), icon);
        button.setOnAction(pressed -> hold(button.isSelected() ? hand : Hand.MOVE));
        tools.put(hand, button);
        hints.put(hand, words + ": " + how + ". Escape puts it down.");
        getChildren().add(button);
    }

    /** What the tool in the hand does, and its brush. */
    Node line() {
        return line;
    }

    private void hold(Hand hand) {
        sight.picture().hand().take(hand);
        sight.picture().requestFocus();
    }

    private void taken(Hand hand) {
        tools.forEach((each, button) -> button.setSelected(each == hand));
        hint.setText(hints.getOrDefault(hand, ""));
        Controls.show(line, hand.isOfPlate());
        Controls.show(ofBrush, hand.isBrush());
    }

    private void sizeBrush() {
        double width;
        try {
            width = width();
        } catch (Refusal notYetANumber) {
            width = 0;
        }
        sight.picture().hand().brush(Math.max(0, width));
    }

    private double width() {
        return Unit.MILLIMETRES.parse("brush", brush.getText(), false);
    }

    private double amount() {
        return Unit.LIGHTNESS.parse("amount", amount.getText());
    }

    private void drawn(Hand hand, List<Offset> points) {
        if (hand == Hand.POLYGON) {
            outline(() -> new Outline.Polygon(points));
        } else {
            tell.accept(hand == Hand.BURNISH ? "burnish" : "deepen", job -> {
                double by = amount();
                Job touched = RetouchFields.withStroke(job, hand == Hand.BURNISH ? by : -by, width(), points);
                habits.keep(BRUSH, width());
                habits.keep(AMOUNT, by);
                return touched;
            });
        }
    }

    private void done(Hand hand, Viewport.Area area) {
        if (hand.isBox()) {
            outline(() -> {
                Optional<Outline.Box> box = Optional.of(new Outline.Box(
                        rounded(area.left()), rounded(area.top()), rounded(area.width()), rounded(area.height())));
                return hand == Hand.ELLIPSE
                        ? new Outline.Ellipse(box)
                        : new Outline.Rectangle(Outline.Corner.SQUARE, 0, box);
            });
        }
    }

    private void outline(java.util.function.Supplier<Outline> shape) {
        tell.accept("outline", job -> OutlineFields.OUTLINE.with(job, Optional.of(shape.get())));
    }

    /** To a hundredth of a millimetre: the hand is no finer. */
    private static double rounded(double millimetres) {
        return Math.rint(millimetres * FINEST) / FINEST;
    }
}
