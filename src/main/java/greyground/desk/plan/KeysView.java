package greyground.desk.plan;

import greyground.desk.model.KeyList;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** All keys on one page, over whatever was seen. */
public final class KeysView extends ScrollPane {
    private final Button back = new Button("Back");

    /**
     * The page.
     *
     * @param close puts it away
     */
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
            Label title = PlanWords.line(group.title(), "strong");
            GridPane.setMargin(title, new Insets(row == 0 ? 8 : 16, 0, 4, 0));
            grid.add(title, 0, row++, 2, 1);
            for (KeyList.Line line : group.lines()) {
                Label keys = new Label(line.keys());
                keys.getStyleClass().add("key");
                keys.setMinWidth(Region.USE_PREF_SIZE);
                Label words = PlanWords.line(
                        line.words().substring(0, 1).toUpperCase(java.util.Locale.ROOT)
                                + line.words().substring(1),
                        "plain");
                GridPane.setHgrow(words, Priority.ALWAYS);
                grid.addRow(row++, keys, words);
            }
        }
        back.setId("keys-back");
        back.setTooltip(new Tooltip("Put these keys away (Escape or F1)"));
        back.setOnAction(pressed -> close.run());
        VBox page = new VBox(8, PlanWords.line("Keys", "heading"), grid, back);
        VBox.setMargin(back, new Insets(16, 0, 0, 0));
        page.getStyleClass().add("card");
        setContent(page);
        setVisible(false);
        setOnKeyPressed(key -> {
            if (key.getCode() == KeyCode.ESCAPE) {
                close.run();
                key.consume();
            }
        });
    }

    /** Shows the page or puts it away. */
    public void show(boolean wanted) {
        setVisible(wanted);
        if (wanted) {
            setVvalue(0);
            requestFocus();
        }
    }
}
