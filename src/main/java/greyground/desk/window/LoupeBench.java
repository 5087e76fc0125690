package greyground.desk.window;

import greyground.app.bite.BiteTimes;
import greyground.app.live.LivePlate;
import greyground.app.sight.LiveView;
import greyground.desk.look.Controls;
import greyground.desk.look.RoomLight;
import greyground.desk.model.Comparison;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.Station;
import greyground.desk.picture.PictureView;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The picture with what lies below it: a row of what can be done with loupe and view, and two things side by side. */
final class LoupeBench extends VBox {
    private final PlateSight sight;
    private final LiveDesk live;
    private final Consumer<String> say;
    private final Comparison comparison = new Comparison();
    private final CompareStrip strip = new CompareStrip(this);
    private final ToggleButton loupe =
            Controls.toggle("Loupe  L", "loupe", "Lay the loupe on the picture: 2 mm of plate, 80 pixels of art (L)");
    private final Button bites;
    private RoomLight light = new RoomLight(false);
    private boolean inches;

    LoupeBench(PlateSight sight, LiveDesk live, Consumer<String> say, Runnable trueSize) {
        this.sight = sight;
        this.live = live;
        this.say = say;
        PictureView picture = sight.picture();
        loupe.setOnAction(pressed -> picture.toggleLoupe());
        bites = Controls.button(
                "Two bites  M", "two-bites", "This place at two bite times, in minutes (M)", this::twoBites);
        Button all = Controls.button("All  A", "show-all", "Show all of it (A)", picture::fit);
        Button trueSized = Controls.button("True size  T", "true-size", "As large as it is (T)", trueSize);
        // While two things are compared, their own tools take the room of these; the keys go on.
        for (Button each : List.of(all, trueSized)) {
            each.visibleProperty().bind(strip.visibleProperty().not());
            each.managedProperty().bind(each.visibleProperty());
        }
        Button freeze = Controls.button(
                "Freeze  F", "freeze", "Freeze what the loupe shows, beside what it shows next (F)", this::freeze);
        HBox row = Controls.line(8, loupe, freeze, bites, all, trueSized, strip.tools());
        row.getStyleClass().add("picture-tools");
        VBox.setVgrow(picture, Priority.ALWAYS);
        getChildren().addAll(picture, strip, row);
        sight.whenLoupeSeen(this::see);
        visibleProperty().bind(picture.visibleProperty());
    }

    Comparison comparison() {
        return comparison;
    }

    void choose(Station station) {
        comparison.choose(station);
        bites.setDisable(station == Station.ART);
        refresh();
    }

    /** The plate is another. */
    void plateChanged() {
        comparison.plateChanged();
        refresh();
    }

    void look(RoomLight shining, boolean inInches) {
        light = shining;
        inches = inInches;
        refresh();
    }

    private void see(Comparison.Seen seen) {
        comparison.see(seen);
        if (comparison.kind() == Comparison.Kind.TWO_BITES) {
            askBites();
        }
        refresh();
    }

    OptionalDouble usualBite() {
        return sight.plate().map(LivePlate::biteMinutes).orElse(OptionalDouble.empty());
    }

    /** Holds fast what the loupe shows; lays the loupe down where it does not lie yet. */
    void freeze() {
        if (!sight.picture().loupeOn()) {
            sight.picture().toggleLoupe();
            say.accept("the loupe lies on the picture now: move it to a place, then freeze that with F");
        } else if (!comparison.freeze()) {
            say.accept("the loupe is still being computed: freeze again in a moment");
        } else {
            say.accept("frozen: move the loupe, go to another station or change a setting to compare");
        }
        refresh();
    }

    /** Lays the place under the loupe at another bite time beside the usual one. */
    void twoBites() {
        OptionalDouble other = comparison.otherMinutes(usualBite());
        if (other.isEmpty()) {
            say.accept("an unetched film is not bitten, so it has no bite times to compare");
            return;
        }
        Station station = sight.picture().station();
        if (station == Station.ART) {
            say.accept("the art is not bitten: go to Copper (4) or Print (5), then compare two bites");
            return;
        }
        say.accept(
                station == Station.COPPER || station == Station.PRINT
                        ? ""
                        : "film and resist are the same at any bite time: go to Copper (4) or Print (5)");
        comparison.compareBites(other.getAsDouble());
        if (!sight.picture().loupeOn()) {
            sight.picture().toggleLoupe();
        }
        askBites();
        refresh();
    }

    /** Other minutes have been typed. */
    void otherBite(String typed) {
        try {
            List<Double> minutes = BiteTimes.parse(typed.matches("[0-9., ]+") ? typed.strip() + " min" : typed)
                    .minutes();
            if (minutes.size() != 1) {
                throw Refusal.use("other bite is \"" + typed + "\"; it must be one time, such as 30 min");
            }
            comparison.compareBites(minutes.get(0));
            say.accept("");
            askBites();
            refresh();
        } catch (Refusal refused) {
            say.accept(String.valueOf(refused.getMessage()));
        }
    }

    void endComparison() {
        comparison.end();
        refresh();
        sight.picture().requestFocus();
    }

    private void askBites() {
        OptionalDouble usual = usualBite();
        OptionalDouble other = comparison.otherMinutes(usual);
        Station station = sight.picture().station();
        if (usual.isPresent() && other.isPresent() && station.stage().isPresent()) {
            LiveView view = sight.picture().loupeView();
            live.bites(station, view, new BiteTimes(List.of(usual.getAsDouble(), other.getAsDouble())), made -> {
                if (view.equals(sight.picture().loupeView())
                        && station == sight.picture().station()) {
                    comparison.bitten(made);
                    refresh();
                }
            });
        }
    }

    void refresh() {
        loupe.setSelected(sight.picture().loupeOn());
        strip.show(comparison, light, inches);
    }
}
