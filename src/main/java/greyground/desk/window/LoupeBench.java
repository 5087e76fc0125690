package greyground.desk.window;

import greyground.app.bite.BiteTimes;
import greyground.app.live.LivePlate;
import greyground.app.sight.LiveView;
import greyground.desk.look.Controls;
import greyground.desk.look.Icon;
import greyground.desk.look.RoomLight;
import greyground.desk.model.Comparison;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.Messages;
import greyground.desk.model.Station;
import greyground.desk.picture.PictureView;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.OptionalDouble;
import javafx.scene.control.Button;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The picture with what lies below it: two things side by side; and what can be done with loupe and view. */
final class LoupeBench extends VBox {
    private final PlateSight sight;
    private final LiveDesk live;
    private final Messages messages;
    private final Comparison comparison = new Comparison();
    private final CompareStrip strip = new CompareStrip(this);
    private final VBox tools = new VBox(2);
    private final ToggleButton loupe = Controls.drawn(
            Controls.toggle("Loupe", "loupe", "Loupe: 2 mm of plate, 80 pixels of art, where it lies (L)"), Icon.LOUPE);
    private final Button bites;
    private RoomLight light = new RoomLight(false);
    private boolean inches;

    LoupeBench(PlateSight sight, LiveDesk live, Messages messages, Runnable trueSize) {
        this.sight = sight;
        this.live = live;
        this.messages = messages;
        PictureView picture = sight.picture();
        loupe.setOnAction(pressed -> picture.toggleLoupe());
        bites = tool(
                "Two bites",
                "two-bites",
                "Two bites: this place at two bite times, in minutes (M)",
                Icon.BITES,
                this::twoBites);
        Button all = tool("All", "show-all", "All: show all of it (A)", Icon.ALL, picture::fit);
        Button trueSized = tool("True size", "true-size", "True size: as large as it is (T)", Icon.TRUE_SIZE, trueSize);
        Button freeze = tool(
                "Freeze",
                "freeze",
                "Freeze: keep what the loupe shows beside what it shows next (F)",
                Icon.BESIDE,
                this::freeze);
        tools.getChildren().addAll(loupe, freeze, bites, all, trueSized);
        VBox.setVgrow(picture, Priority.ALWAYS);
        getChildren().addAll(picture, strip);
        sight.whenLoupeSeen(this::see);
        visibleProperty().bind(picture.visibleProperty());
    }

    private static Button tool(String words, String id, String hint, Icon icon, Runnable action) {
        return Controls.drawn(Controls.button(words, id, hint, action), icon);
    }

    /** What can be done with loupe and view. */
    VBox tools() {
        return tools;
    }

    Region strip() {
        return strip;
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
            messages.done("the loupe lies on the picture now: move it to a place, then freeze that with F");
        } else if (!comparison.freeze()) {
            messages.cant("the loupe is still being computed: freeze again in a moment");
        } else {
            messages.done("frozen: move the loupe, go to another station or change a setting to compare");
        }
        refresh();
    }

    /** Lays the place under the loupe at another bite time beside the usual one. */
    void twoBites() {
        OptionalDouble other = comparison.otherMinutes(usualBite());
        if (other.isEmpty()) {
            messages.cant("an unetched film is not bitten, so it has no bite times to compare");
            return;
        }
        Station station = sight.picture().station();
        if (station == Station.ART) {
            messages.cant("the art is not bitten: go to Copper (4) or Print (5), then compare two bites");
            return;
        }
        if (station == Station.COPPER || station == Station.PRINT) {
            messages.clear();
        } else {
            messages.done("film and resist are the same at any bite time: go to Copper (4) or Print (5)");
        }
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
            messages.clear();
            askBites();
            refresh();
        } catch (Refusal refused) {
            messages.cant(String.valueOf(refused.getMessage()));
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
