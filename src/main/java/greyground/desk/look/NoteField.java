package greyground.desk.look;

import java.util.function.Consumer;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.VBox;

/** Words written down at the bench, as many lines as they need. Every letter is kept; Tab goes on to the next control. */
public final class NoteField extends VBox {
    private static final int MOST_LINES = 6;

    private final TextArea area = new TextArea();
    private boolean filling;

    /**
     * An empty note.
     *
     * @param what the note is on, as in "Note on thinning"
     * @param written hears the words whenever they change
     * @param left hears that the writing is over for now
     */
    public NoteField(String what, String id, Consumer<String> written, Runnable left) {
        super(2);
        Controls.named(area, id, what, what + "; it is kept in the job");
        area.setPromptText(what);
        area.setWrapText(true);
        area.getStyleClass().add("note");
        Label name = Controls.label(what, "quiet");
        name.setLabelFor(area);
        name.visibleProperty().bind(area.textProperty().isNotEmpty());
        name.managedProperty().bind(name.visibleProperty());
        area.textProperty().addListener((property, was, is) -> {
            grow(is);
            if (!filling) {
                written.accept(is);
            }
        });
        Controls.whenLeft(area, left);
        area.addEventFilter(KeyEvent.KEY_PRESSED, key -> {
            if (key.getCode() == KeyCode.TAB && !key.isControlDown() && !key.isAltDown()) {
                // As Ctrl+Tab would: a note needs no tabs.
                area.fireEvent(
                        new KeyEvent(KeyEvent.KEY_PRESSED, "", "", KeyCode.TAB, key.isShiftDown(), true, false, false));
                key.consume();
            }
        });
        grow("");
        getChildren().addAll(name, area);
    }

    private void grow(String words) {
        int lines = 0;
        for (String line : words.split("\n", -1)) {
            lines += 1 + line.length() / 90;
        }
        area.setPrefRowCount(Math.min(MOST_LINES, lines));
        area.setMinHeight(USE_PREF_SIZE);
    }

    public void show(String words) {
        if (!area.getText().equals(words)) {
            filling = true;
            area.setText(words);
            filling = false;
        }
    }
}
