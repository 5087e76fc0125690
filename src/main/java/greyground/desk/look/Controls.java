package greyground.desk.look;

import java.util.function.Function;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** Buttons, words, fields and rows as every part of the window has them: none is ever cut, and each says what it does. */
public final class Controls {
    private Controls() {}

    public static Button button(String words, String id, String hint, Runnable action) {
        Button button = hinted(new Button(words), id, hint);
        button.setOnAction(pressed -> action.run());
        return button;
    }

    /** The button that is pressed first. */
    public static Button mainButton(String words, String id, String hint, Runnable action) {
        Button button = button(words, id, hint, action);
        button.getStyleClass().add("main");
        return button;
    }

    public static ToggleButton toggle(String words, String id, String hint) {
        return hinted(new ToggleButton(words), id, hint);
    }

    /** Draws a button's act in place of its words, which stay its name for whoever hears it. */
    public static <B extends ButtonBase> B drawn(B button, Icon icon) {
        button.setAccessibleText(button.getText());
        button.setText("");
        button.setGraphic(icon.drawn());
        button.getStyleClass().add("tool");
        return button;
    }

    private static <B extends ButtonBase> B hinted(B button, String id, String hint) {
        button.setMinWidth(Region.USE_PREF_SIZE);
        return named(button, id, null, hint);
    }

    /** One of several is always chosen, the first to begin with. */
    public static void oneOf(Runnable chosen, ToggleButton... several) {
        ToggleGroup group = new ToggleGroup();
        for (ToggleButton each : several) {
            each.setToggleGroup(group);
            each.setOnAction(pressed -> {
                each.setSelected(true);
                chosen.run();
            });
        }
        several[0].setSelected(true);
    }

    /**
     * Names a control for programs and for whoever hears the window, and says what it is for.
     *
     * @param name null where its own words are its name
     */
    public static <C extends Control> C named(C control, String id, @Nullable String name, String hint) {
        control.setId(id);
        control.setAccessibleText(name);
        control.setTooltip(new Tooltip(hint));
        control.setAccessibleHelp(hint);
        return control;
    }

    /** A field for a line of words. */
    public static TextField field(String id, String name, String hint, String style) {
        TextField field = named(new TextField(), id, name, hint);
        field.getStyleClass().add(style);
        return field;
    }

    /** A list to choose from, each item by its words. */
    public static <T> ComboBox<T> choice(Function<T, String> words) {
        ComboBox<T> choice = new ComboBox<>();
        choice.setConverter(new StringConverter<>() {
            @Override
            public String toString(@Nullable T item) {
                return item == null ? "" : words.apply(item);
            }

            @Override
            public T fromString(String typed) {
                throw new UnsupportedOperationException("nothing is typed here: " + typed);
            }
        });
        return choice;
    }

    public static Label label(String words, String... styles) {
        Label label = new Label(words);
        label.getStyleClass().addAll(styles);
        label.setMinWidth(Region.USE_PREF_SIZE);
        return label;
    }

    /** Words that take as many lines as they need. */
    public static Label wrapped(String words, String... styles) {
        Label label = new Label(words);
        label.getStyleClass().addAll(styles);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }

    public static ProgressBar progress(String name, double width) {
        ProgressBar bar = new ProgressBar(0);
        bar.setPrefWidth(width);
        bar.setAccessibleText(name);
        return bar;
    }

    public static HBox line(double gap, Node... parts) {
        HBox line = new HBox(gap, parts);
        line.setAlignment(Pos.CENTER_LEFT);
        return line;
    }

    /** Takes what room its line has left. */
    public static <R extends Region> R growing(R part) {
        HBox.setHgrow(part, Priority.ALWAYS);
        part.setMaxWidth(Double.MAX_VALUE);
        return part;
    }

    /** A page that is rolled up and down, never sideways. */
    public static ScrollPane rolling(@Nullable Node page) {
        ScrollPane rolling = new ScrollPane(page);
        rolling.setFitToWidth(true);
        rolling.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        rolling.setFocusTraversable(false);
        return rolling;
    }

    /** Shows a part; what isn't seen takes no room. */
    public static void show(Node part, boolean wanted) {
        part.setVisible(wanted);
        part.setManaged(wanted);
    }

    /** Gives a part a look, or takes it away. */
    public static void look(Node part, String style, boolean wanted) {
        part.getStyleClass().remove(style);
        if (wanted) {
            part.getStyleClass().add(style);
        }
    }

    /** Hears that the keys have gone elsewhere. */
    public static void whenLeft(Node part, Runnable then) {
        part.focusedProperty().addListener((property, was, is) -> {
            if (was) {
                then.run();
            }
        });
    }

    public static void onEscape(Node part, Runnable then) {
        part.setOnKeyPressed(key -> {
            if (key.getCode() == KeyCode.ESCAPE) {
                then.run();
                key.consume();
            }
        });
    }

    /** Whether a node is a part of the window, or lies in it. */
    public static boolean within(@Nullable Node node, Node part) {
        for (Node each = node; each != null; each = each.getParent()) {
            if (each == part) {
                return true;
            }
        }
        return false;
    }
}
