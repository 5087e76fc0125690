package greyground.desk.window;

import greyground.desk.look.Controls;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;

/** What can be done with the whole: open, save, export, back and forth, units and light. */
final class HeadBar extends HBox {
    private final DeskWindow desk;
    private final Button save;
    private final Button saveShop;
    private final Button film;
    private final Button print;
    private final Button undo;
    private final Button redo;
    private final ToggleButton safe =
            Controls.toggle("Safelight", "safelight", "Amber on black, so that the screen does not fog film (F3)");
    private final ToggleButton inch = Controls.toggle("Inches", "inches", "Lengths in inches (F4)");

    HeadBar(DeskWindow desk) {
        super(8);
        this.desk = desk;
        DeskFiles files = desk.files;
        setAlignment(Pos.CENTER_RIGHT);
        Button open = Controls.button("Open", "open", "Open a picture, a job or a film (Ctrl+O)", files::askOpen);
        Button lately =
                Controls.button("Recent", "open-recent", "Open a recent file again (Ctrl+Shift+O)", files::askRecent);
        Button shop =
                Controls.button("Workshop", "open-workshop", "Use the numbers of another workshop", files::askWorkshop);
        save = Controls.button("Save job", "save", "Keep these settings in a file (Ctrl+S)", files::saveJob);
        saveShop = Controls.button(
                "Save workshop", "save-workshop", "Keep the workshop's numbers in a file", files::saveWorkshop);
        undo = Controls.button("Undo", "undo", "", desk.model::undo);
        redo = Controls.button("Redo", "redo", "", desk.model::redo);
        film = Controls.button(
                "Make film",
                "make-film",
                "Write the film at true size: a PDF with its plan, or a TIFF where the name ends in .tif (Ctrl+M)",
                desk.export::ask);
        print = Controls.button(
                "Print film", "print-film", "Print the film at true size on a printer (Ctrl+P)", desk::printFilm);
        film.getStyleClass().add("main");
        safe.setOnAction(pressed -> desk.shineSafely(safe.isSelected()));
        inch.setOnAction(pressed -> desk.measureInInches(inch.isSelected()));
        getChildren().addAll(open, lately, save, shop, saveShop, undo, redo, print, film);
    }

    /** How the window looks, for its foot: the head has the work. */
    Node looks() {
        inch.getStyleClass().add("small");
        safe.getStyleClass().add("small");
        return Controls.line(8, inch, safe);
    }

    void refresh() {
        boolean present = desk.model.state().isPresent();
        save.setDisable(!present);
        film.setDisable(!present);
        print.setDisable(!present);
        saveShop.setDisable(!desk.model.workshopUnsaved());
        step(undo, "Undo", desk.model.undoes(), "Ctrl+Z");
        step(redo, "Redo", desk.model.redoes(), "Ctrl+Shift+Z");
        safe.setSelected(desk.isSafe());
        inch.setSelected(desk.isInInches());
    }

    private static void step(Button button, String word, java.util.Optional<String> what, String keys) {
        button.setDisable(what.isEmpty());
        String words = word + what.map(each -> ": " + each).orElse("");
        button.getTooltip().setText(words + " (" + keys + ")");
        button.setAccessibleText(words);
    }
}
