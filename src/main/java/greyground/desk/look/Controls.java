package greyground.desk.look;

import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Region;

/** Buttons and words as every part of the window has them: none is ever cut, and each button says what it does. */
public final class Controls {
    private Controls() {}

    public static Button button(String words, String id, String hint, Runnable action) {
        Button button = button(words, id, hint);
        button.setOnAction(pressed -> action.run());
        return button;
    }

    /** A button whose work is told later. */
    public static Button button(String words, String id, String hint) {
        return named(new Button(words), id, hint);
    }

    public static ToggleButton toggle(String words, String id, String hint) {
        return named(new ToggleButton(words), id, hint);
    }

    private static <B extends ButtonBase> B named(B button, String id, String hint) {
        button.setId(id);
        button.setMinWidth(Region.USE_PREF_SIZE);
        button.setTooltip(new Tooltip(hint));
        button.setAccessibleHelp(hint);
        return button;
    }

    /** Words that take as many lines as they need. */
    public static Label wrapped(String words) {
        Label label = new Label(words);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }
}
