package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.look.Icon;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** The one row at the window's head: what lies on the bench and all that can be done with it, back and forth, folds, light, and the film. */
final class HeadBar extends HBox {
    static final double HEIGHT = 44;

    private final DeskWindow desk;
    private final Label title = new Label();
    private final Button menu;
    private final Button film;
    private final Button undo;
    private final Button redo;
    private final ToggleButton tones = Controls.drawn(
            Controls.toggle("Tones", "fold-tones", "Histogram and tone diagram below the picture (F8)"), Icon.TONES);
    private final ToggleButton settings = Controls.drawn(
            Controls.toggle("Settings", "fold-settings", "Settings beside the picture (F7)"), Icon.SETTINGS);
    private final ToggleButton safe =
            Controls.toggle("Safelight", "safelight", "Amber on black, so that the screen does not fog film (F3)");

    HeadBar(DeskWindow desk) {
        super(8);
        this.desk = desk;
        getStyleClass().add("head");
        setMinHeight(HEIGHT);
        title.getStyleClass().add("strong");
        title.setMinWidth(60);
        title.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
        menu = Controls.drawn(
                Controls.button("Menu", "bench-menu", "All that can be done with the whole (F10)", this::openMenu),
                Icon.MENU);
        title.setOnMouseClicked(click -> openMenu());
        undo = Controls.drawn(Controls.button("Undo", "undo", "", desk.model::undo), Icon.BACK);
        redo = Controls.drawn(Controls.button("Redo", "redo", "", desk.model::redo), Icon.AGAIN);
        film = Controls.button(
                "Make film",
                "make-film",
                "Write the film at true size: a PDF with its plan, or a TIFF where the name ends in .tif (Ctrl+M)",
                desk.export::ask);
        film.getStyleClass().add("main");
        safe.setOnAction(pressed -> desk.shineSafely(safe.isSelected()));
        tones.setOnAction(pressed -> desk.folds.tones(tones.isSelected()));
        settings.setOnAction(pressed -> desk.folds.settings(settings.isSelected()));
        getChildren().addAll(title, menu, undo, redo, Controls.growing(new Region()), tones, settings, safe, film);
    }

    void openMenu() {
        desk.menu.open(!desk.menu.isOpen());
    }

    void focusMenu() {
        menu.requestFocus();
    }

    void title(String words, String whole) {
        title.setText(words);
        title.setTooltip(new Tooltip(whole));
    }

    void refresh() {
        film.setDisable(desk.model.state().isEmpty());
        step(undo, "Undo", desk.model.undoes(), "Ctrl+Z");
        step(redo, "Redo", desk.model.redoes(), "Ctrl+Shift+Z");
        safe.setSelected(desk.isSafe());
        tones.setSelected(desk.folds.tones());
        settings.setSelected(desk.folds.settings());
        desk.menu.refresh();
    }

    private static void step(Button button, String word, Optional<String> what, String keys) {
        button.setDisable(what.isEmpty());
        String words = word + what.map(each -> ": " + each).orElse("");
        button.getTooltip().setText(words + " (" + keys + ")");
        button.setAccessibleText(words);
    }
}
