package greyground.desk.window;

import greyground.desk.look.Controls;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Everything that can be done with the whole, by name and key: what lies under the name of what is on the bench. */
final class BenchMenu extends VBox {
    private final DeskWindow desk;
    private final Button saveShop;
    private final List<Button> ofPlate;
    private final ToggleButton inch = Controls.toggle("Inches  F4", "inches", "Lengths in inches (F4)");
    private final ToggleButton rulers = Controls.toggle("Rulers  R", "rulers", "Rulers along the picture (R)");

    private final Button surround =
            Controls.button("", "surround", "The grey round the picture: light, middle or dark (D)", () -> {});

    BenchMenu(DeskWindow desk) {
        this.desk = desk;
        DeskFiles files = desk.files;
        getStyleClass().add("menu");
        setId("menu");
        setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        act("Open  Ctrl+O", "open", "Open a picture, a job or a film", files::askOpen);
        act("Recent  Ctrl+Shift+O", "open-recent", "Open a recent file again", files::askRecent);
        Button save = act("Save job  Ctrl+S", "save", "Keep these settings in a file", files::saveJob);
        Button saveAs =
                act("Save job as  Ctrl+Shift+S", "save-as", "Keep these settings under another name", files::saveJobAs);
        act("Use a workshop", "open-workshop", "Use the numbers of another workshop", desk.shops::ask);
        saveShop = act("Save workshop", "save-workshop", "Keep the workshop's numbers in a file", desk.shops::save);
        Button print =
                act("Print film  Ctrl+P", "print-film", "Print the film at true size on a printer", desk::printFilm);
        ofPlate = List.of(save, saveAs, print);
        inch.setOnAction(pressed -> desk.wishes.inches(inch.isSelected()));
        rulers.setOnAction(pressed -> desk.folds.rulers(rulers.isSelected()));
        surround.setOnAction(pressed -> {
            desk.wishes.surround(desk.wishes.surround().next());
            refresh();
        });
        add(inch);
        add(surround);
        add(rulers);
        act("Whole screen  F11", "whole-screen", "Fill the screen, and back", desk::fillScreen);
        act(
                "Preferences",
                "show-preferences",
                "Units, the screen's true size, your usual plate",
                () -> desk.toggle(desk.preferences));
        act("All keys  F1", "show-keys", "All keys of this window", () -> desk.toggle(desk.keys));
        act("About", "show-about", "Versions and licences of all that is inside", () -> desk.toggle(desk.about));
        addEventFilter(KeyEvent.KEY_PRESSED, this::key);
        open(false);
    }

    private Button act(String words, String id, String hint, Runnable then) {
        return add(Controls.button(words, id, hint, () -> {
            open(false);
            desk.middle.focusMiddle();
            then.run();
        }));
    }

    private <B extends ButtonBase> B add(B button) {
        button.getStyleClass().add("menu-item");
        button.setMaxWidth(Double.MAX_VALUE);
        getChildren().add(button);
        return button;
    }

    private void key(KeyEvent event) {
        int step = event.getCode() == KeyCode.DOWN ? 1 : event.getCode() == KeyCode.UP ? -1 : 0;
        if (event.getCode() == KeyCode.ESCAPE) {
            open(false);
            desk.head.focusMenu();
            event.consume();
        } else if (step != 0) {
            int size = getChildren().size();
            int at = getChildren().indexOf(getScene().getFocusOwner());
            do {
                at = Math.floorMod(at + step, size);
            } while (getChildren().get(at).isDisabled());
            getChildren().get(at).requestFocus();
            event.consume();
        }
    }

    boolean isOpen() {
        return isVisible();
    }

    void open(boolean wanted) {
        if (wanted) {
            refresh();
        }
        Controls.show(this, wanted);
        if (wanted) {
            getChildren().get(0).requestFocus();
        }
    }

    void refresh() {
        boolean present = desk.model.state().isPresent();
        ofPlate.forEach(each -> each.setDisable(!present));
        saveShop.setDisable(!desk.model.workshopUnsaved());
        surround.setText("Surround: " + desk.wishes.surround().word() + "  D");
        inch.setSelected(desk.wishes.inches());
        rulers.setSelected(desk.folds.rulers());
    }
}
