package greyground.desk.look;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** A question within the window: a sentence and its answers, the first of which Enter gives and Escape the last. */
public final class Question extends HBox {
    private final List<Button> buttons = new ArrayList<>();

    /**
     * An answer.
     *
     * @param words on its button
     * @param then what follows
     */
    public record Answer(String words, Runnable then) {}

    public Question(String words, List<Answer> answers, Runnable close) {
        super(8);
        getStyleClass().add("question");
        setAlignment(Pos.CENTER_LEFT);
        setId("question");
        Label label = new Label(words);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        label.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(label, Priority.ALWAYS);
        getChildren().add(label);
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
            getChildren().add(button);
        }
        buttons.get(0).getStyleClass().add("main");
        setOnKeyPressed(key -> {
            if (key.getCode() == KeyCode.ESCAPE) {
                buttons.get(buttons.size() - 1).fire();
                key.consume();
            }
        });
    }

    public void focusFirst() {
        buttons.get(0).requestFocus();
    }
}
