package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.look.Icon;
import greyground.desk.look.RoomLight;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskHabits;
import greyground.desk.model.DeskWords;
import greyground.desk.model.FirstSight;
import greyground.desk.model.PlateFilling;
import greyground.desk.model.Turning;
import greyground.desk.model.Viewport;
import greyground.desk.picture.PlateDrawn;
import greyground.film.job.FilmFields;
import greyground.film.job.Placing.Fit;
import greyground.film.job.PlacingFields;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** A picture has arrived: asks for its plate, drawn to scale with the picture in it. A wrong size is the dearest mistake. */
final class ArrivalView extends HBox {
    /** ISO 216. */
    private static final List<String> SHEETS = List.of("A6", "A5", "A4", "A3");

    private final DeskWindow desk;
    private final DeskHabits habits;
    private final PlateDrawn drawn = new PlateDrawn();
    private final FlowPane own = new FlowPane(8, 8);
    private final VBox ofOwn = new VBox(8, Controls.label("Your plates", "quiet"), own);
    private final List<ToggleButton> sizes = new ArrayList<>();
    private final ToggleButton filled = Controls.toggle("Filled", "arrival-filled", "The picture fills the plate");
    private final ToggleButton whole = Controls.toggle("Whole", "arrival-whole", "All of the picture is shown");
    private final TextField other =
            Controls.field("arrival-size", "Other size", "Width x height, such as 200x250mm, 8x10in or A5", "wide");
    private final Label fault = Controls.wrapped("", "fault");
    private final Label words = Controls.wrapped("");
    private final Button accept =
            Controls.mainButton("Use this plate", "arrival-accept", "Go on with this plate (Enter)", this::accept);
    private @Nullable FirstSight seen;

    ArrivalView(DeskWindow desk, DeskHabits habits) {
        this.desk = desk;
        this.habits = habits;
        setId("arrival");
        getStyleClass().add("bench");
        HBox.setHgrow(drawn, Priority.ALWAYS);
        FlowPane sheets = new FlowPane(8, 8);
        for (String sheet : SHEETS) {
            sheets.getChildren().add(size(sheet, "arrival-" + sheet, Size.parse("plate", sheet)));
        }
        Controls.oneOf(() -> fit(filled.isSelected() ? Fit.FILL : Fit.WHOLE), filled, whole);
        Button turn = Controls.button("Turn", "arrival-turn", "The plate on its other side", this::turn);
        turn.setGraphic(Icon.RIGHT.drawn());
        other.setPromptText("such as 200x250mm");
        other.setOnAction(entered -> typed());
        Controls.show(fault, false);
        VBox card = new VBox(
                16,
                Controls.wrapped("How large is the plate?", "heading"),
                ofOwn,
                new VBox(8, Controls.label("Sheets", "quiet"), sheets),
                new VBox(8, Controls.label("Other size", "quiet"), other, fault),
                Controls.line(8, new HBox(0, filled, whole), turn),
                words,
                accept);
        card.getStyleClass().add("arrival-card");
        card.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(drawn, card);
        setVisible(false);
    }

    private ToggleButton size(String name, String id, Size upright) {
        ToggleButton button = Controls.toggle(name, id, upright + "");
        button.setUserData(upright);
        button.setOnAction(pressed -> take(upright));
        sizes.add(button);
        return button;
    }

    /** Asks for the plate of what has just been laid on the bench. */
    void ask() {
        sizes.removeIf(own.getChildren()::contains);
        own.getChildren().clear();
        for (Size each : habits.plates()) {
            String name = DeskWords.lengths(
                    desk.wishes.inches(), " \u00d7 ", each.widthMillimetres(), each.heightMillimetres());
            own.getChildren().add(size(name, "arrival-own-" + own.getChildren().size(), each));
        }
        Controls.show(ofOwn, !own.getChildren().isEmpty());
        other.setText("");
        setVisible(true);
        desk.middle.refresh();
        refresh();
        accept.requestFocus();
    }

    void show(FirstSight first) {
        seen = first;
        drawn.picture(first.picture(), first.view());
        refresh();
    }

    void look(RoomLight light) {
        drawn.look(light);
        FirstSight first = seen;
        if (first != null) {
            drawn.picture(first.picture(), first.view());
        }
    }

    /** Shows the plate of the model again. */
    void refresh() {
        FirstSight first = seen;
        if (!isVisible() || first == null || desk.model.state().isEmpty()) {
            return;
        }
        BenchState state = desk.model.state().get();
        Viewport.Area part = Turning.area(state.job().art().crop(), first.width(), first.height());
        Size plate = state.job().plate();
        Fit fit = state.job().placing().fit();
        PlateFilling filling = PlateFilling.of(plate, fit, part.width() / part.height());
        drawn.show(filling, part, desk.wishes.inches());
        drawn.setAccessibleText("The plate with the picture in it. " + filling.words(desk.wishes.inches()));
        words.setText(filling.words(desk.wishes.inches()));
        (fit == Fit.FILL ? filled : whole).setSelected(true);
        sizes.forEach(each -> each.setSelected(
                plate.equals(each.getUserData()) || plate.turned().equals(each.getUserData())));
    }

    /** The size lies as the picture does. */
    private void take(Size upright) {
        FirstSight first = seen;
        boolean lying = first != null && first.width() > first.height();
        desk.tell("plate", job -> FilmFields.PLATE.with(job, lying ? upright.turned() : upright));
        refresh();
    }

    private void turn() {
        desk.tell("plate", job -> FilmFields.PLATE.with(job, job.plate().turned()));
    }

    private void fit(Fit fit) {
        desk.tell("picture", job -> PlacingFields.FIT.with(job, fit));
    }

    private void typed() {
        try {
            if (!other.getText().isBlank()) {
                Size typed = Size.parse("plate", other.getText());
                desk.model.tell("plate", job -> FilmFields.PLATE.with(job, typed));
            }
            fault.setText("");
            accept.requestFocus();
        } catch (Refusal refused) {
            fault.setText(DeskWords.sentence(String.valueOf(refused.getMessage())));
        }
        Controls.show(fault, !fault.getText().isEmpty());
    }

    private void accept() {
        close();
        desk.middle.focusMiddle();
    }

    /** Goes on with the plate as it is. */
    void close() {
        if (isVisible()) {
            setVisible(false);
            desk.model.state().ifPresent(state -> habits.usePlate(state.job().plate()));
            desk.middle.refresh();
        }
    }
}
