package greyground.desk.page;

import greyground.desk.look.Controls;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** A page over what is seen; Escape puts it away. */
public abstract class LaidPage extends VBox {
    protected LaidPage(String id, Runnable close) {
        setId(id);
        getStyleClass().add("page");
        Controls.onEscape(this, close);
        setVisible(false);
    }

    /** Fills it with a heading, parts that are rolled, and a way back. */
    protected final ScrollPane roll(String title, String hint, Runnable close, Node... parts) {
        Button back = Controls.button("Back", getId() + "-back", hint, close);
        VBox card = new VBox(8, Controls.wrapped(title, "heading"));
        card.getChildren().addAll(parts);
        card.getChildren().add(back);
        VBox.setMargin(back, new Insets(16, 0, 0, 0));
        card.getStyleClass().add("card");
        ScrollPane rolling = Controls.rolling(card);
        rolling.setFocusTraversable(true);
        rolling.setId(getId() + "-card");
        rolling.setAccessibleText(title);
        VBox.setVgrow(rolling, Priority.ALWAYS);
        getChildren().setAll(rolling);
        return rolling;
    }

    /** It is laid down: shows what is so now, and takes the keys. */
    protected abstract void opened();

    /** It is put away. */
    protected void closed() {}
}
