package greyground.desk.plan;

import greyground.desk.look.Controls;
import greyground.desk.model.DeskWords;
import greyground.desk.model.KeyList;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** All keys on one page, over whatever was seen. */
public final class KeysView extends ScrollPane {
    public KeysView(Runnable close) {
        super();
        setId("keys");
        setAccessibleText("Keys of this window");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        GridPane grid = new GridPane();
        grid.setHgap(24);
        grid.setVgap(4);
        int row = 0;
        for (KeyList.Group group : KeyList.ALL) {
            Label title = Controls.wrapped(group.title(), "strong");
            GridPane.setMargin(title, new Insets(row == 0 ? 8 : 16, 0, 4, 0));
            grid.add(title, 0, row++, 2, 1);
            for (KeyList.Line line : group.lines()) {
                Label words = Controls.wrapped(DeskWords.of(line.words()), "plain");
                GridPane.setHgrow(words, Priority.ALWAYS);
                grid.addRow(row++, Controls.label(line.keys(), "key"), words);
            }
        }
        Button back = Controls.button("Back", "keys-back", "Put these keys away (Escape or F1)", close);
        VBox page = new VBox(8, Controls.wrapped("Keys", "heading"), grid, back);
        VBox.setMargin(back, new Insets(16, 0, 0, 0));
        page.getStyleClass().add("card");
        setContent(page);
        setVisible(false);
        Controls.onEscape(this, close);
    }

    public void show(boolean wanted) {
        setVisible(wanted);
        if (wanted) {
            setVvalue(0);
            requestFocus();
        }
    }
}
