package greyground.desk.page;

import greyground.desk.look.Controls;
import greyground.desk.look.Surround;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.Locale;
import java.util.stream.Stream;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What the person wishes of the window, for good: unit of lengths, the screen's true size, the usual plate, what lies round the picture. */
public final class PreferencesPage extends LaidPage {
    private static final double MILLIMETRES_PER_INCH = 25.4;
    /** The line that is measured with a ruler, in millimetres of what the screen is held to be. */
    private static final double LINE = 100;

    private static final Range MEASURED =
            new Range(LINE / 10, LINE * 10, Unit.MILLIMETRES, "measure from end to end of the line");

    private final Wishes wishes;
    private final ToggleButton millimetres = Controls.toggle("mm", "wish-mm", "Lengths in millimetres (F4)");
    private final ToggleButton inches = Controls.toggle("inches", "wish-inches", "Lengths in inches (F4)");
    private final Region line = new Region();
    private final Label screen = Controls.wrapped("", "quiet");
    private final TextField measured = Controls.field(
            "wish-measured",
            "Length of the line in mm",
            "What a ruler says the line measures, in millimetres",
            "number");
    private final TextField plate = Controls.field(
            "wish-plate",
            "Usual plate",
            "The plate that a new picture is laid on: such as 200x250mm, 8x10in, A5",
            "told");
    private final Label screenFault = Controls.wrapped("", "fault");
    private final Label plateFault = Controls.wrapped("", "fault");
    private final ToggleButton[] surrounds = Stream.of(Surround.values())
            .map(each -> Controls.toggle(
                    each.word(), "wish-" + each.word(), "A " + each.word() + " grey round the picture (D)"))
            .toArray(ToggleButton[]::new);

    /** What is wished now, and how to wish otherwise. */
    public interface Wishes {
        boolean inches();

        void inches(boolean wanted);

        Surround surround();

        void surround(Surround wanted);

        /** Pixels of the window on an inch of the screen. */
        double pixelsPerInch();

        void pixelsPerInch(double wanted);

        /** The usual plate as it is typed; "" for the one used last. */
        String plate();

        /** Refused where it is no size. */
        void plate(String typed);
    }

    public PreferencesPage(Wishes wishes, Runnable close) {
        super("preferences", close);
        this.wishes = wishes;
        Controls.oneOf(() -> wishes.inches(inches.isSelected()), millimetres, inches);
        Controls.oneOf(this::takeSurround, surrounds);
        line.setId("wish-line");
        line.getStyleClass().add("measured-line");
        line.setMinHeight(2);
        line.setMaxHeight(2);
        measured.setOnAction(entered -> takeMeasured());
        plate.setOnAction(entered -> takePlate());
        Controls.whenLeft(plate, this::takePlate);
        plate.setPromptText("the one used last");
        roll(
                "Preferences",
                "Put this page away (Escape)",
                close,
                row("Lengths", new HBox(0, millimetres, inches)),
                row("Round the picture", new HBox(0, surrounds)),
                row("Usual plate", new VBox(4, plate, plateFault)),
                row(
                        "True size",
                        new VBox(
                                8,
                                Controls.wrapped("Lay a ruler on the screen: this line is to be 100 mm long."),
                                line,
                                Controls.line(8, Controls.label("It measures"), measured, Controls.label("mm")),
                                screen,
                                screenFault)));
    }

    private static Node row(String name, Node control) {
        Label label = Controls.label(name, "strong");
        label.setMinWidth(160);
        HBox row = new HBox(16, label, control);
        VBox.setMargin(row, new Insets(8, 0, 0, 0));
        return row;
    }

    private void takeSurround() {
        for (Surround each : Surround.values()) {
            if (Stream.of(surrounds)
                    .anyMatch(button -> button.isSelected() && button.getText().equals(each.word()))) {
                wishes.surround(each);
            }
        }
    }

    private void takeMeasured() {
        attempt(screenFault, () -> {
            double length = MEASURED.check(
                    "length of the line", Unit.MILLIMETRES.parse("length of the line", measured.getText(), false));
            wishes.pixelsPerInch(wishes.pixelsPerInch() * LINE / length);
        });
    }

    private void takePlate() {
        attempt(plateFault, () -> wishes.plate(plate.getText().strip()));
    }

    private void attempt(Label fault, Runnable take) {
        String said = "";
        try {
            take.run();
        } catch (Refusal refused) {
            said = String.valueOf(refused.getMessage());
        }
        fault.setText(said);
        Controls.show(fault, !said.isEmpty());
        if (said.isEmpty()) {
            refresh();
        }
    }

    /** Shows what is wished now. */
    public void refresh() {
        (wishes.inches() ? inches : millimetres).setSelected(true);
        for (ToggleButton each : surrounds) {
            if (each.getText().equals(wishes.surround().word())) {
                each.setSelected(true);
            }
        }
        double width = LINE / MILLIMETRES_PER_INCH * wishes.pixelsPerInch();
        line.setMinWidth(width);
        line.setMaxWidth(width);
        measured.setText("100");
        screen.setText(String.format(Locale.ROOT, "%.1f pixels of the window to the inch", wishes.pixelsPerInch()));
        plate.setText(wishes.plate());
    }

    @Override
    protected void opened() {
        Controls.show(screenFault, false);
        Controls.show(plateFault, false);
        refresh();
        (wishes.inches() ? inches : millimetres).requestFocus();
    }
}
