package greyground.desk;

import javafx.scene.control.Label;
import javafx.scene.layout.Region;

/** Lines of the wall card. */
final class PlanWords {
    /** Stands before a caution. */
    static final String CARE = "\u26a0 ";

    private PlanWords() {}

    /** Words that wrap and are never cut. */
    static Label line(String text, String style) {
        Label label = new Label(text);
        label.getStyleClass().add(style);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }
}
