package greyground.desk.plan;

import greyground.desk.look.Controls;
import javafx.scene.control.Label;

/** Lines of the wall card. */
final class PlanWords {
    /** Stands before a caution. */
    static final String CARE = "\u26a0 ";

    private PlanWords() {}

    /** Words that wrap and are never cut. */
    static Label line(String text, String style) {
        Label label = Controls.wrapped(text);
        label.getStyleClass().add(style);
        return label;
    }
}
