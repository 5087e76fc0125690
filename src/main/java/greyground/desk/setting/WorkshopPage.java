package greyground.desk.setting;

import greyground.desk.look.Controls;
import greyground.desk.model.BenchModel;
import greyground.desk.model.DeskWords;
import greyground.desk.model.KeptWorkshops;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Every number of the workshop: what it is, how it is known and since when; and a way to the setting that changes it. */
public final class WorkshopPage extends VBox {
    private static final double WIDEST = 860;
    private static final int MOST_STEPS = 8;
    private static final int MOST_CHANGES = 3;

    /** Parts of the workshop by their names in its file; what has none here is shown by that name. */
    private static final Map<String, String> PARTS = Map.of(
            "filmPrinter", "Film printer",
            "light", "Lamp",
            "bath", "Bath",
            "wipe", "Wiping");

    private final BenchModel model;
    private final Consumer<Setting> set;
    private final VBox card = new VBox();
    private final ScrollPane scroll;
    private final KeptWorkshops kept;
    private final ComboBox<String> names = Controls.named(
            Controls.choice(each -> each.isEmpty() ? "not kept under a name" : each),
            "workshop-names",
            "Workshop",
            "Your workshops; each keeps itself");
    private final TextField name =
            Controls.field("workshop-name", "Name", "A name for these numbers: a bath, a place, a paper", "told");
    private final Button take;
    private final Consumer<String> cant;
    private boolean filling;

    /**
     * A page that shows nothing yet.
     *
     * @param set goes to a setting
     * @param kept workshops by name
     * @param use takes the workshop of a name
     * @param call gives this workshop a name
     * @param cant hears what can't be done
     */
    public WorkshopPage(
            BenchModel model,
            Consumer<Setting> set,
            KeptWorkshops kept,
            Consumer<String> use,
            Consumer<String> call,
            Consumer<String> cant) {
        this.model = model;
        this.set = set;
        this.kept = kept;
        this.cant = cant;
        this.take = Controls.button(
                "Keep as",
                "workshop-take",
                "Keep these numbers as a workshop of this name, from now on by itself",
                () -> {
                    call.accept(name.getText());
                    name.clear();
                });
        setId("workshop");
        getStyleClass().add("plan");
        card.getStyleClass().add("card");
        card.setMaxWidth(WIDEST);
        HBox middle = new HBox(card);
        middle.setAlignment(Pos.TOP_CENTER);
        HBox.setHgrow(card, Priority.ALWAYS);
        scroll = Controls.rolling(middle);
        scroll.setFocusTraversable(true);
        scroll.setId("workshop-card");
        scroll.setAccessibleText("My workshop");
        VBox.setVgrow(scroll, Priority.ALWAYS);
        name.setPromptText("another name");
        name.setOnAction(entered -> take.fire());
        names.valueProperty().addListener((what, was, is) -> {
            if (!filling && is != null && !is.isEmpty()) {
                use.accept(is);
                refresh();
            }
        });
        HBox line = Controls.line(8, Controls.label("Workshop"), names, Controls.growing(new Region()), name, take);
        line.getStyleClass().add("strip");
        getChildren().addAll(line, scroll);
        setVisible(false);
    }

    public void focusFirst() {
        scroll.requestFocus();
    }

    /** Shows the workshop again, where it is seen. */
    public void refresh() {
        if (!isVisible()) {
            return;
        }
        showNames();
        Map<String, Map<String, Figure>> parts = new LinkedHashMap<>();
        Map<String, Figure> all = model.workshop().figures();
        all.forEach((path, figure) -> parts.computeIfAbsent(
                        path.substring(0, path.indexOf('.')), part -> new LinkedHashMap<>())
                .put(path, figure));
        long measured = all.values().stream().filter(each -> !each.isAssumed()).count();
        String name = model.workshop().name();
        card.getChildren()
                .setAll(
                        Controls.wrapped(name.isEmpty() ? "My workshop" : name, "heading"),
                        Controls.wrapped(
                                "\u25cf measured: " + measured + " of " + all.size()
                                        + "   \u25cb only assumed. A test plate measures most of them.",
                                "quiet"));
        parts.forEach((part, figures) -> {
            Label title = Controls.wrapped(PARTS.getOrDefault(part, DeskWords.of(part)), "strong");
            VBox.setMargin(title, new Insets(24, 0, 8, 0));
            card.getChildren().addAll(title, rows(figures));
        });
        card.getChildren().addAll(2, history());
    }

    private void showNames() {
        String present = model.workshopFile().flatMap(kept::name).orElse("");
        List<String> all = new ArrayList<>(kept.names());
        if (!all.contains(present)) {
            all.add(0, present);
        }
        filling = true;
        if (!names.getItems().equals(all)) {
            names.getItems().setAll(all);
        }
        names.setValue(present);
        filling = false;
    }

    /** What was changed since the window opened, and what the workshop held when earlier days began. */
    private List<Node> history() {
        List<Node> lines = new ArrayList<>();
        List<BenchModel.WorkshopStep> steps = model.workshopSteps();
        for (BenchModel.WorkshopStep step : steps.stream().limit(MOST_STEPS).toList()) {
            lines.add(past(
                    "Back to before",
                    DeskWords.of(step.what()) + changes(step),
                    "step-back-" + lines.size(),
                    () -> step.before()));
        }
        for (KeptWorkshops.Earlier earlier :
                model.workshopFile().map(kept::earlier).orElse(List.of())) {
            lines.add(past(
                    "Use these",
                    "As it was when " + earlier.day() + " began",
                    "step-back-" + lines.size(),
                    () -> kept.held(earlier)));
        }
        if (!lines.isEmpty()) {
            Label title = Controls.wrapped("Changes, latest first", "strong");
            VBox.setMargin(title, new Insets(24, 0, 8, 0));
            lines.add(0, title);
        }
        return lines;
    }

    /** A line of the past, and a way back. */
    private Node past(String act, String words, String id, Supplier<Workshop> before) {
        Button back = Controls.button(act, id, "The numbers as they were then; undo takes this back", () -> {
            try {
                model.returnTo(before.get());
            } catch (Refusal refused) {
                cant.accept(String.valueOf(refused.getMessage()));
            }
        });
        back.setAccessibleText(act + ": " + words);
        back.getStyleClass().add("small");
        HBox line = Controls.line(16, Controls.growing(Controls.wrapped(words)), back);
        VBox.setMargin(line, new Insets(0, 0, 4, 0));
        return line;
    }

    /** Which numbers a step changed, and from what to what. */
    private static String changes(BenchModel.WorkshopStep step) {
        Map<String, Figure> before = step.before().figures();
        List<String> changed = new ArrayList<>();
        step.after().figures().forEach((path, figure) -> {
            Figure was = before.get(path);
            if (was != null && !was.equals(figure)) {
                FigureWords words = FigureWords.of(path);
                changed.add(
                        words.label() + " " + words.value(was.value()) + " \u2192 " + words.withUnit(figure.value()));
            }
        });
        String more = changed.size() > MOST_CHANGES ? " and " + (changed.size() - MOST_CHANGES) + " more" : "";
        return changed.isEmpty()
                ? ""
                : ": " + String.join(", ", changed.subList(0, Math.min(MOST_CHANGES, changed.size()))) + more;
    }

    private GridPane rows(Map<String, Figure> figures) {
        GridPane grid = new GridPane();
        grid.setHgap(16);
        grid.setVgap(4);
        int row = 0;
        for (Map.Entry<String, Figure> each : figures.entrySet()) {
            FigureWords words = FigureWords.of(each.getKey());
            Figure figure = each.getValue();
            String basis = figure.provenance().basis();
            String known = DeskWords.of(
                    figure.isAssumed() ? basis : figure.provenance().words() + ": " + basis);
            Label how = Controls.wrapped(known, "quiet");
            GridPane.setHgrow(how, Priority.ALWAYS);
            Label value = Controls.label(words.withUnit(figure.value()));
            grid.addRow(
                    row++,
                    Controls.label(figure.isAssumed() ? "\u25cb" : "\u25cf"),
                    name(each.getKey(), words.label()),
                    value,
                    how);
        }
        return grid;
    }

    /** Its name; a button where a station sets it and there is a plate to see what it does. */
    private Node name(String path, String label) {
        Optional<Setting> setting = Settings.mending(path)
                .filter(any -> model.state().filter(any::applies).isPresent());
        if (setting.isEmpty()) {
            return Controls.label(label);
        }
        Button button = new Button(label);
        button.setMinWidth(Region.USE_PREF_SIZE);
        button.getStyleClass().add("figure");
        button.setTooltip(new Tooltip("Change it at " + setting.get().station().label()));
        button.setOnAction(pressed -> set.accept(setting.get()));
        return button;
    }
}
