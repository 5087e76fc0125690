package greyground.desk;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** What can be done with the whole: open, save, export, back and forth, units and light. */
final class HeadBar extends HBox {
    private final DeskWindow desk;
    private final Button save;
    private final Button saveShop;
    private final Button film;
    private final Button print;
    private final Button undo;
    private final Button redo;
    private final ToggleButton safe = toggle("Safelight", "safelight");
    private final ToggleButton inch = toggle("Inches", "inches");

    HeadBar(DeskWindow desk, DeskFiles files, ExportBar export) {
        super(8);
        this.desk = desk;
        setAlignment(Pos.CENTER_RIGHT);
        Button open = button("Open", "open", "Open a picture, a job or a film (Ctrl+O)", files::askOpen);
        Button lately =
                button("Lately", "open-lately", "Open again what was opened lately (Ctrl+Shift+O)", files::askRecent);
        Button shop = button("Workshop", "open-workshop", "Use the numbers of another workshop", files::askWorkshop);
        save = button("Save job", "save", "Keep these settings in a file (Ctrl+S)", files::saveJob);
        saveShop =
                button("Save workshop", "save-workshop", "Keep the workshop's numbers in a file", files::saveWorkshop);
        undo = button("Undo", "undo", "", desk.model()::undo);
        redo = button("Redo", "redo", "", desk.model()::redo);
        film = button(
                "Make film",
                "make-film",
                "Write the film at true size: a PDF with its plan, or a TIFF where the name ends in .tif (Ctrl+E)",
                export::ask);
        print = button(
                "Print film", "print-film", "Print the film at true size on a printer (Ctrl+P)", desk::printFilm);
        film.getStyleClass().add("main");
        safe.setTooltip(new Tooltip("Amber on black, so that the screen does not fog film (F3)"));
        safe.setOnAction(pressed -> desk.shineSafely(safe.isSelected()));
        inch.setTooltip(new Tooltip("Lengths in inches (F4)"));
        inch.setOnAction(pressed -> desk.measureInInches(inch.isSelected()));
        getChildren().addAll(open, lately, save, shop, saveShop, undo, redo, print, film);
    }

    /** How the window looks, for its foot: the head has the work. */
    Node looks() {
        inch.getStyleClass().add("small");
        safe.getStyleClass().add("small");
        HBox looks = new HBox(8, inch, safe);
        looks.setAlignment(Pos.CENTER);
        return looks;
    }

    private static Button button(String words, String id, String hint, Runnable action) {
        Button button = new Button(words);
        button.setId(id);
        button.setMinWidth(Region.USE_PREF_SIZE);
        button.setTooltip(new Tooltip(hint));
        button.setOnAction(pressed -> action.run());
        return button;
    }

    private static ToggleButton toggle(String words, String id) {
        ToggleButton button = new ToggleButton(words);
        button.setId(id);
        button.setMinWidth(Region.USE_PREF_SIZE);
        return button;
    }

    void refresh() {
        boolean present = desk.model().state().isPresent();
        save.setDisable(!present);
        film.setDisable(!present);
        print.setDisable(!present);
        saveShop.setDisable(!desk.model().workshopUnsaved());
        step(undo, "Undo", desk.model().undoes(), "Ctrl+Z");
        step(redo, "Redo", desk.model().redoes(), "Ctrl+Shift+Z");
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
