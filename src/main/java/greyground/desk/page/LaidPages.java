package greyground.desk.page;

import javafx.scene.layout.StackPane;
import org.jspecify.annotations.Nullable;

/** Where pages are laid: none, or one. */
public final class LaidPages extends StackPane {
    private @Nullable LaidPage open;

    public LaidPages() {
        setVisible(false);
    }

    public boolean isOpen() {
        return open != null;
    }

    public boolean isOpen(LaidPage page) {
        return open == page;
    }

    /** Lays a page in place of any other. */
    public void open(LaidPage page) {
        close();
        open = page;
        getChildren().setAll(page);
        page.setVisible(true);
        setVisible(true);
        page.opened();
    }

    public void close() {
        LaidPage was = open;
        open = null;
        getChildren().clear();
        setVisible(false);
        if (was != null) {
            was.setVisible(false);
            was.closed();
        }
    }

    /** Gives the keys to the page that is laid. */
    public void focus() {
        LaidPage page = open;
        if (page != null) {
            page.opened();
        }
    }
}
