package greyground.desk.setting;

import greyground.desk.look.Controls;
import greyground.desk.model.BenchModel;
import greyground.desk.model.DeskWords;
import greyground.desk.model.Station;
import greyground.film.job.JobField;
import greyground.workshop.Figure;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.geometry.Insets;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The settings of one station, and below them what the one in hand means. */
public final class SettingsPane extends VBox {
    private static final double HELP_HEIGHT = 112;

    /** So many are at hand; the rest opens below them. */
    private static final int AT_HAND = 6;

    private final BenchModel model;
    private final Supplier<Boolean> inches;
    private final Supplier<LocalDate> today;
    private final VBox rows = new VBox();
    private final ScrollPane scroll = Controls.rolling(rows);
    private final Label helpTitle = Controls.wrapped("", "strong");
    private final Label helpWords = Controls.wrapped("");
    private final VBox rest = new VBox();
    private final ToggleButton more = Controls.toggle("", "more-settings", "Further settings of this station");
    private List<Setting> shown = List.of();
    private final List<SettingRow> settingRows = new ArrayList<>();
    private Station station = Station.ART;
    private Map<JobField<?>, Double> found = Map.of();

    public SettingsPane(BenchModel model, Supplier<Boolean> inches, Supplier<LocalDate> today) {
        this.model = model;
        this.inches = inches;
        this.today = today;
        rows.getStyleClass().add("settings");
        scroll.setMinHeight(80);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        VBox words = new VBox(4, helpTitle, helpWords);
        words.getStyleClass().add("help");
        ScrollPane help = Controls.rolling(words);
        help.setFitToHeight(true);
        help.setMinHeight(HELP_HEIGHT);
        help.setPrefHeight(HELP_HEIGHT);
        more.getStyleClass().add("more");
        more.setMaxWidth(Double.MAX_VALUE);
        more.setOnAction(pressed -> unfold(more.isSelected()));
        getChildren().addAll(scroll, help);
    }

    public void show(Station chosen) {
        boolean other = chosen != station;
        station = chosen;
        refresh();
        if (other) {
            scroll.setVvalue(0);
        }
        if (other) {
            helpTitle.setText("");
            helpWords.setText("");
        }
    }

    private void unfold(boolean wanted) {
        more.setSelected(wanted);
        Controls.show(rest, wanted);
        more.setText(wanted ? "Fewer" : "More: " + (shown.size() - AT_HAND));
    }

    public void focusFirst() {
        if (!settingRows.isEmpty()) {
            settingRows.get(0).focus().requestFocus();
        }
    }

    /** Goes to a setting of the station that is shown. */
    public void focus(Setting setting) {
        settingRows.stream()
                .filter(row -> row.setting().id().equals(setting.id()))
                .findFirst()
                .ifPresent(row -> {
                    if (Controls.within(row, rest)) {
                        unfold(true);
                        rows.applyCss();
                        layout();
                    }
                    row.focus().requestFocus();
                    scroll.layout();
                    double room = rows.getHeight() - scroll.getViewportBounds().getHeight();
                    if (room > 0) {
                        scroll.setVvalue(Math.min(
                                1,
                                Math.max(
                                                0,
                                                rows.sceneToLocal(row.localToScene(row.getBoundsInLocal()))
                                                                .getMinY()
                                                        - 40)
                                        / room));
                    }
                });
    }

    /** Tells what the program found where a setting is left to it, in the job's own numbers. */
    public void found(Map<JobField<?>, Double> values) {
        found = Map.copyOf(values);
        settingRows.forEach(row -> row.found(found));
    }

    public void refresh() {
        if (model.state().isEmpty()) {
            rows.getChildren().clear();
            settingRows.clear();
            shown = List.of();
            return;
        }
        List<Setting> wanted = Settings.at(station, model.state().get());
        if (!wanted.equals(shown) || rows.getChildren().isEmpty()) {
            shown = wanted;
            build();
        }
        settingRows.forEach(SettingRow::refresh);
    }

    private void build() {
        // A choice may bring other settings; the keys stay where they are.
        Optional<String> held = settingRows.stream()
                .filter(row -> row.focus().isFocused())
                .map(row -> row.setting().id())
                .findFirst();
        settingRows.clear();
        Label name = Controls.wrapped(station.label(), "heading");
        name.setTooltip(new Tooltip(station.words()));
        rows.getChildren().setAll(name);
        rest.getChildren().clear();
        boolean ofShop = false;
        for (Setting setting : shown) {
            VBox part = settingRows.size() < AT_HAND ? rows : rest;
            if (setting instanceof Setting.ShopNumber != ofShop) {
                ofShop = !ofShop;
                Label whose = Controls.wrapped(ofShop ? "Your workshop" : "This plate", "strong");
                VBox.setMargin(whose, new Insets(16, 0, 4, 0));
                part.getChildren().add(whose);
            }
            SettingRow row = new SettingRow(setting, model, inches, today);
            row.focus().focusedProperty().addListener((what, was, is) -> {
                if (is) {
                    explain(row);
                }
            });
            row.setOnMouseEntered(over -> explain(row));
            row.found(found);
            settingRows.add(row);
            part.getChildren().add(row);
        }
        if (shown.size() > AT_HAND) {
            VBox.setMargin(more, new Insets(8, 0, 0, 0));
            rows.getChildren().addAll(more, rest);
            unfold(more.isSelected());
        }
        settingRows.stream()
                .filter(row -> held.filter(row.setting().id()::equals).isPresent())
                .forEach(row -> row.focus().requestFocus());
    }

    private void explain(SettingRow row) {
        Setting setting = row.setting();
        helpTitle.setText(setting.label());
        helpWords.setText(setting.explanation() + (setting instanceof Setting.Measure measure ? range(measure) : ""));
        row.focus().setAccessibleHelp(helpWords.getText());
    }

    /** Its ends, and how the workshop knows it. */
    private String range(Setting.Measure measure) {
        String known = model.state()
                .flatMap(state -> measure.figure(state.workshop()))
                .map(Figure::provenance)
                .map(how -> " " + DeskWords.of(how.words()) + " (" + how.basis() + ").")
                .orElse("");
        return " From " + measure.range().words(inches.get()) + "." + known;
    }
}
