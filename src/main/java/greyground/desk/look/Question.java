package greyground.desk.look;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** A question within the window: a sentence and its answers, the first of which Enter gives and Escape the last. */
public final class Question extends HBox {
    private final List<Button> buttons = new ArrayList<>();

    /** The words of its button, and what follows when that is pressed. */
    public record Answer(String words, Runnable then) {}

    @FunctionalInterface
    public interface Asking {
        void ask(String words, Answer... answers);
    }

    public Question(String words, List<Answer> answers, Runnable close) {
        super(8);
        getStyleClass().add("question");
        setAlignment(Pos.CENTER_LEFT);
        setId("question");
        getChildren().add(Controls.growing(Controls.wrapped(words)));
        for (Answer answer : answers) {
            Button button = new Button(answer.words());
            button.setMinWidth(Region.USE_PREF_SIZE);
            button.setAccessibleText(answer.words() + ". " + words);
            button.setAccessibleHelp(words);
            button.setOnAction(pressed -> {
                close.run();
                answer.then().run();
            });
            buttons.add(button);
        }
        getChildren().addAll(buttons);
        buttons.get(0).getStyleClass().add("main");
        Controls.onEscape(this, () -> buttons.get(buttons.size() - 1).fire());
    }

    public void focusFirst() {
        buttons.get(0).requestFocus();
    }
}
