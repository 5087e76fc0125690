package greyground.desk.look;

import greyground.desk.model.DeskWords;
import greyground.desk.model.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The one bar in which the window speaks; it is seen only while it has something to say. */
public final class MessageBar extends VBox implements Messages {
    private static final double WIDEST = 760;

    private final Label mark = Controls.label("", "strong");
    private final Label words = Controls.wrapped("");
    private final HBox acts = Controls.line(8);
    private final HBox said;
    private final List<Button> answers = new ArrayList<>();

    public MessageBar() {
        super(8);
        setMaxWidth(WIDEST);
        setPickOnBounds(false);
        words.setId("said");
        acts.setMinWidth(Region.USE_PREF_SIZE);
        said = Controls.line(12, mark, Controls.growing(words), acts);
        said.setId("saying");
        getChildren().add(said);
        clear();
    }

    @Override
    public void done(String sentence, Answer... next) {
        say("\u2713", "done", sentence, next);
    }

    @Override
    public void cant(String sentence, Answer... next) {
        say("!", "cant", sentence, next);
    }

    private void say(String sign, String look, String sentence, Answer... next) {
        mark.setText(sign);
        words.setText(DeskWords.sentence(sentence));
        said.getStyleClass().setAll("message", look);
        List<Button> buttons = Stream.of(next)
                .map(answer -> button(answer, sentence, this::clear))
                .toList();
        acts.getChildren().setAll(buttons);
        acts.getChildren().add(Controls.button("Close", "close-message", "Put this message away", this::clear));
        Controls.show(said, true);
    }

    @Override
    public void clear() {
        words.setText("");
        Controls.show(said, false);
    }

    /** What is said now, without a question; empty where nothing is. */
    public String said() {
        return words.getText();
    }

    private static Button button(Answer answer, String sentence, Runnable before) {
        Button button = new Button(answer.words());
        button.setMinWidth(Region.USE_PREF_SIZE);
        button.setAccessibleText(answer.words() + ". " + sentence);
        button.setAccessibleHelp(sentence);
        button.setOnAction(pressed -> {
            before.run();
            answer.then().run();
        });
        return button;
    }

    @Override
    public void ask(String sentence, Answer... several) {
        withdraw();
        answers.clear();
        for (Answer answer : several) {
            answers.add(button(answer, sentence, this::withdraw));
        }
        answers.get(0).getStyleClass().add("main");
        FlowPane row = new FlowPane(8, 8);
        row.setAlignment(Pos.CENTER_RIGHT);
        row.getChildren().addAll(answers);
        VBox question = new VBox(8, Controls.wrapped(DeskWords.sentence(sentence)), row);
        question.setId("question");
        question.getStyleClass().setAll("message", "asks");
        Controls.onEscape(question, () -> answers.get(answers.size() - 1).fire());
        getChildren().add(question);
        answers.get(0).requestFocus();
    }

    /** Takes the question away unanswered. */
    public void withdraw() {
        getChildren().removeIf(each -> each != said);
    }
}
