package greyground.desk.window;

import greyground.app.check.PlateWarning;
import greyground.desk.look.Controls;
import greyground.desk.look.Freshness;
import greyground.desk.model.BenchModel;
import greyground.desk.model.DeskWords;
import greyground.desk.model.Station;
import greyground.desk.model.Turning;
import greyground.desk.model.Viewport;
import greyground.desk.model.Weight;
import greyground.desk.picture.PictureView;
import greyground.desk.setting.Setting;
import greyground.desk.setting.Settings;
import greyground.film.job.Job;
import greyground.quantity.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/**
 * What the plate will not keep and what else deserves a look. Those that have a place are marked on the picture, with the fragment and the
 * bevel; choosing a line goes to its place, or to the setting that mends it.
 */
final class WarningsView extends VBox {
    private static final double HEIGHT = 176;
    private static final double WIDEST = 760;

    private final BenchModel model;
    private final PlateSight sight;
    private final Consumer<Station> choose;
    private final Consumer<Setting> set;
    private final ToggleButton count =
            Controls.toggle("", "warning-count", "What the plate will not keep, and what else deserves a look (W)");
    private final ListView<Line> list = new ListView<>();
    private final Freshness freshness = new Freshness(list::setOpacity);
    private List<PlateWarning> remarks = List.of();
    private List<PlateWarning> warnings = List.of();
    private boolean checked;
    private int chosen = -1;

    /**
     * A line of the list.
     *
     * @param weight the heaviest come first
     * @param number of the place on the picture, 0 for none
     * @param sizeMillimetres of what is there, 0 where it has none
     * @param setting that mends it
     */
    record Line(
            Weight weight,
            int number,
            String words,
            Optional<Offset> place,
            double sizeMillimetres,
            Optional<Setting> setting) {
        /** What stands before the words: the place's number, an arrow where a setting mends it, or a dash. */
        String mark() {
            return number > 0 ? Integer.toString(number) : setting.isPresent() ? "\u2192" : "\u2013";
        }
    }

    WarningsView(BenchModel model, PlateSight sight, Consumer<Station> choose, Consumer<Setting> set) {
        this.model = model;
        this.sight = sight;
        this.choose = choose;
        this.set = set;
        getStyleClass().add("warnings");
        count.getStyleClass().add("count");
        count.setOnAction(pressed -> open(count.isSelected()));
        Controls.onEscape(this, () -> {
            open(false);
            count.requestFocus();
        });
        list.setId("warnings");
        list.setAccessibleText("Warnings");
        list.setAccessibleHelp(
                "Enter goes to the place of a warning that has a number, or to the setting that corrects one with an arrow");
        list.setFixedCellSize(-1);
        VBox.setVgrow(list, Priority.ALWAYS);
        list.setCellFactory(view -> new Cell());
        list.setOnMouseClicked(click -> take());
        list.setOnKeyPressed(key -> {
            if (key.getCode() == KeyCode.ENTER || key.getCode() == KeyCode.SPACE) {
                take();
                key.consume();
            }
        });
        list.setPlaceholder(new Label(""));
        setMinHeight(HEIGHT);
        setPrefHeight(HEIGHT);
        setMaxSize(WIDEST, HEIGHT);
        getChildren().add(list);
        Controls.show(this, false);
        fill();
    }

    /** How many there are; pressing it opens the list. */
    ToggleButton count() {
        return count;
    }

    void open(boolean wanted) {
        Controls.show(this, wanted);
        count.setSelected(wanted);
        if (wanted) {
            focusFirst();
        }
    }

    boolean isOpen() {
        return isVisible();
    }

    private static final class Cell extends ListCell<Line> {
        Cell() {
            setWrapText(true);
            setPrefWidth(0);
        }

        @Override
        protected void updateItem(Line line, boolean empty) {
            super.updateItem(line, empty);
            setText(empty || line == null ? "" : line.mark() + "   " + line.words());
        }
    }

    /** The plate has changed: what was found by looking through the film holds no more. */
    void stale() {
        checked = false;
        freshness.stale();
        title();
    }

    void remarks(List<PlateWarning> said) {
        freshness.fresh();
        remarks = said;
        warnings = List.of();
        fill();
    }

    /** The film has been looked through. */
    void checked(List<PlateWarning> found) {
        warnings = found;
        checked = true;
        chosen = -1;
        fill();
        mark();
    }

    /** Nothing is on the bench. */
    void idle() {
        remarks = List.of();
        warnings = List.of();
        checked = false;
        freshness.fresh();
        fill();
        open(false);
    }

    void focusFirst() {
        list.requestFocus();
        if (list.getSelectionModel().isEmpty()) {
            list.getSelectionModel().selectFirst();
        }
    }

    // ------------------------------------------------------------------ the list

    private List<Line> lines() {
        List<PlateWarning> all = new ArrayList<>(warnings);
        for (PlateWarning remark : remarks) {
            if (warnings.stream().noneMatch(warning -> warning.words().equals(remark.words()))) {
                all.add(remark);
            }
        }
        all.sort(Comparator.comparing(Weight::of));
        List<Line> lines = new ArrayList<>();
        int number = 0;
        for (PlateWarning warning : all) {
            Optional<Offset> place = warning.place();
            String where = place.map(at -> String.format(
                            Locale.ROOT,
                            ", at %.1f mm across, %.1f mm down",
                            at.acrossMillimetres(),
                            at.downMillimetres()))
                    .orElse("");
            Weight weight = Weight.of(warning);
            lines.add(new Line(
                    weight,
                    place.isPresent() ? ++number : 0,
                    (weight == Weight.STOPS ? "No film: " + warning.words() : DeskWords.of(warning.words())) + where,
                    place,
                    warning.sizeMillimetres(),
                    Settings.mending(warning.mends())));
        }
        return lines;
    }

    private void fill() {
        list.getItems().setAll(lines());
        title();
    }

    /** What stops the film, if anything does. */
    Optional<Line> stopping() {
        return list.getItems().stream()
                .filter(line -> line.weight() == Weight.STOPS)
                .findFirst();
    }

    private int many(Weight weight) {
        return (int)
                list.getItems().stream().filter(line -> line.weight() == weight).count();
    }

    private void title() {
        int costs = many(Weight.COSTS);
        int assumed = many(Weight.COULD_BE_MEASURED);
        List<String> parts = new ArrayList<>();
        parts.add(stopping().isPresent() ? "No film yet" : checked ? "Ready" : "Checking");
        if (costs > 0) {
            parts.add(costs == 1 ? "1 warning" : costs + " warnings");
        }
        if (assumed > 0) {
            parts.add(assumed + " to measure");
        }
        count.setText(String.join(", ", parts));
        Controls.look(count, "stops", stopping().isPresent());
    }

    // ------------------------------------------------------------------ places

    private void take() {
        Line line = list.getSelectionModel().getSelectedItem();
        if (line != null) {
            line.place()
                    .ifPresentOrElse(
                            place -> goTo(line, place), () -> line.setting().ifPresent(set));
        }
    }

    private void goTo(Line line, Offset place) {
        if (sight.picture().station() == Station.ART) {
            choose.accept(Station.COPPER);
        }
        chosen = line.number() - 1;
        mark();
        sight.picture().goTo(place.acrossMillimetres(), place.downMillimetres());
    }

    void mark() {
        model.state().ifPresent(state -> mark(state.job()));
    }

    private void mark(Job job) {
        sight.picture()
                .mark(new PictureView.Marks(
                        sight.plate().map(made -> Turning.area(job.art().crop(), made.artWidth(), made.artHeight())),
                        job.placing().bevelMillimetres(),
                        lines().stream().flatMap(line -> area(line).stream()).toList(),
                        chosen));
    }

    private static Optional<Viewport.Area> area(Line line) {
        return line.place()
                .map(at -> new Viewport.Area(at.acrossMillimetres(), at.downMillimetres(), line.sizeMillimetres(), 0));
    }
}
