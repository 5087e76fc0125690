package greyground.desk.setting;

import greyground.desk.look.Controls;
import greyground.desk.model.BenchModel;
import greyground.desk.model.DeskWords;
import greyground.workshop.Figure;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Every number of the workshop: what it is, how it is known and since when; and a way to the setting that changes it. */
public final class WorkshopPage extends VBox {
    private static final double WIDEST = 860;

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

    public WorkshopPage(BenchModel model, Consumer<Setting> set) {
        this.model = model;
        this.set = set;
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
        getChildren().add(scroll);
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
        button.getStyleClass().add("figure");
        button.setTooltip(new Tooltip("Change it at " + setting.get().station().label()));
        button.setOnAction(pressed -> set.accept(setting.get()));
        return button;
    }
}
