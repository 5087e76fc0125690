package greyground.desk.page;

import greyground.desk.look.Controls;
import greyground.desk.model.DeskWords;
import greyground.desk.model.KeyList;
import javafx.geometry.Insets;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;

/** All keys on one page. */
public final class KeysPage extends LaidPage {
    private final ScrollPane rolling;

    public KeysPage(Runnable close) {
        super("keys", close);
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
        rolling = roll("Keys", "Put these keys away (Escape or F1)", close, grid);
    }

    @Override
    protected void opened() {
        rolling.setVvalue(0);
        rolling.requestFocus();
    }
}
