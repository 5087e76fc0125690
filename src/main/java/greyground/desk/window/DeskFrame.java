package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.look.MessageBar;
import greyground.desk.look.RoomLight;
import greyground.desk.look.Surround;
import javafx.geometry.Bounds;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/**
 * Where the parts of the window lie: one row at the head, stations on the left with the tools beside them, the picture to the edges, tones
 * below it and settings on the right, both of which fold. What the window says, the place under the pointer and the warnings lie on
 * the picture's foot.
 */
final class DeskFrame extends StackPane {
    private static final double EDGE = 8;

    final MessageBar messages = new MessageBar();
    private final BorderPane body = new BorderPane();
    private final StackPane middle = new StackPane();
    private final VBox foot = new VBox(EDGE);
    private final Label tone = Controls.label("", "on-picture");
    private final Label work = Controls.label("", "on-picture");

    DeskFrame() {
        getStylesheets().add(String.valueOf(DeskFrame.class.getResource("desk.css")));
        getStyleClass().add("root");
        getChildren().add(body);
        tone.setId("tone");
        work.setTooltip(
                new Tooltip("What is dimmed is of before; a new grain or bath takes some seconds the first time"));
        tellTone("");
        tellWork("");
    }

    /** Fills the head, and what opens over the window below it. */
    void head(HeadBar head, BenchMenu menu, Node strip) {
        body.setTop(new VBox(head, strip));
        setAlignment(menu, Pos.TOP_LEFT);
        setMargin(menu, new Insets(HeadBar.HEIGHT, 0, 0, 8));
        getChildren().add(menu);
    }

    /** Fills the middle: what is worked on, of which one is seen at a time, the tools before it and the tones below it. */
    void middle(Node rail, Node tools, Node tones, WarningsView warnings, Node zoom, VBox works, Node... views) {
        HBox line = Controls.line(8, tone, Controls.growing(new Region()), work, zoom, warnings.count());
        foot.getChildren().setAll(messages, works, warnings, line);
        foot.setAlignment(Pos.BOTTOM_CENTER);
        foot.setPickOnBounds(false);
        line.setPickOnBounds(false);
        foot.setPadding(new Insets(EDGE));
        middle.getChildren().setAll(views);
        for (Node view : views) {
            // What isn't seen takes no room.
            view.managedProperty().bind(view.visibleProperty());
        }
        middle.getChildren().add(foot);
        middle.setMinSize(0, 0);
        VBox column = new VBox(middle, tones);
        VBox.setVgrow(middle, Priority.ALWAYS);
        body.setCenter(column);
        body.setLeft(new HBox(rail, tools));
    }

    /** What the window says keeps clear of a strip at the foot of the picture, while that is seen. */
    void keepAbove(Region strip) {
        Runnable lie =
                () -> foot.setPadding(new Insets(EDGE, EDGE, EDGE + (strip.isVisible() ? strip.getHeight() : 0), EDGE));
        strip.heightProperty().addListener(height -> lie.run());
        strip.visibleProperty().addListener(seen -> lie.run());
    }

    /** How much room there is for what is worked on. */
    Bounds room() {
        return middle.getLayoutBounds();
    }

    /** Fills the right side with panes of which one is seen at a time. */
    void side(Region... panes) {
        for (Region pane : panes) {
            pane.getStyleClass().add("side");
        }
        body.setRight(new StackPane(panes));
    }

    void foot(ClockStrip clocks) {
        body.setBottom(clocks);
    }

    /** Tells the place under the pointer, and its tone. */
    void tellTone(String words) {
        tone.setText(words);
        Controls.show(tone, !words.isEmpty());
    }

    /** Tells what is being computed. */
    void tellWork(String words) {
        work.setText(words);
        Controls.show(work, !words.isEmpty());
    }

    /** Amber on black, or daylight. */
    void look(RoomLight light) {
        Controls.look(this, "round-middle", !light.safe() && light.round() == Surround.MIDDLE);
        Controls.look(this, "round-dark", !light.safe() && light.round() == Surround.DARK);
        Controls.look(this, "safelight", light.safe());
    }
}
