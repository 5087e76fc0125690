package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.look.Question;
import greyground.desk.look.RoomLight;
import greyground.desk.model.DeskWords;
import greyground.desk.picture.DiagramView;
import greyground.desk.picture.StationRail;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/**
 * Where the parts of the window lie: a head with title and questions, stations on the left, what is worked on in the middle, settings
 * and tone diagram on the right, and a line at the foot.
 */
final class DeskFrame extends BorderPane {
    private static final double DIAGRAM_SHARE = 0.28;

    private final VBox top = new VBox();
    private final Label title = new Label();
    private final Label message = new Label();
    private final Label tone = Controls.label("", "quiet");

    DeskFrame() {
        getStylesheets().add(String.valueOf(DeskFrame.class.getResource("desk.css")));
        getStyleClass().add("root");
    }

    /** Fills the head: the title and what can be done with the whole. */
    void head(HeadBar actions) {
        title.getStyleClass().add("strong");
        title.setMinWidth(60);
        title.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
        HBox line = Controls.line(16, Controls.growing(title), actions);
        line.getStyleClass().add("head");
        top.getChildren().setAll(line);
        setTop(top);
    }

    /** Fills the middle: what is worked on, of which one is seen at a time, above the warnings. */
    void middle(StationRail rail, WarningsView warnings, Node... views) {
        StackPane middle = new StackPane(views);
        for (Node view : views) {
            // What isn't seen takes no room.
            view.managedProperty().bind(view.visibleProperty());
        }
        VBox.setVgrow(middle, Priority.ALWAYS);
        setLeft(rail);
        setCenter(new VBox(middle, warnings));
    }

    /** Fills the right side: the tone diagram, and above it panes of which one is seen at a time. */
    void side(DiagramView diagram, Node... panes) {
        StackPane one = new StackPane(panes);
        VBox side = new VBox(one, diagram);
        VBox.setVgrow(one, Priority.ALWAYS);
        side.getStyleClass().add("side");
        heightProperty().addListener((what, was, is) -> diagram.tall(is.doubleValue() * DIAGRAM_SHARE));
        setRight(side);
    }

    /** Fills the foot: clocks that run, what is said, the place under the pointer, and work in the making. */
    void foot(ClockStrip clocks, Runnable showKeys, Node... works) {
        message.setId("said");
        message.setMinWidth(0);
        Button keys = Controls.button("Keys", "show-keys", "All keys of this window (F1)", showKeys);
        keys.getStyleClass().add("small");
        HBox status = Controls.line(16, Controls.growing(message), tone);
        status.getChildren().addAll(works);
        status.getChildren().add(keys);
        status.getStyleClass().add("status");
        status.setMinHeight(32);
        setBottom(new VBox(clocks, status));
    }

    void title(String words, String whole) {
        title.setText(words);
        title.setTooltip(new Tooltip(whole));
    }

    /** Puts a question at the window's head; an earlier one goes. */
    void ask(String words, Question.Answer... answers) {
        top.getChildren().removeIf(Question.class::isInstance);
        Question[] own = new Question[1];
        own[0] = new Question(words, List.of(answers), () -> top.getChildren().remove(own[0]));
        top.getChildren().add(own[0]);
        own[0].focusFirst();
    }

    /** Keeps a strip at the window's head, below which questions come. */
    void strip(Node strip) {
        top.getChildren().add(strip);
    }

    /** Says something at the window's foot; empty words take it back. */
    void say(String words) {
        message.setText(DeskWords.of(words));
        message.setTooltip(words.isEmpty() ? null : new Tooltip(words));
    }

    String said() {
        return message.getText();
    }

    /** Tells the place under the pointer, and its tone. */
    void tellTone(String words) {
        tone.setText(words);
    }

    /** Amber on black, or daylight. */
    void look(RoomLight light) {
        Controls.look(this, "safelight", light.safe());
    }
}
