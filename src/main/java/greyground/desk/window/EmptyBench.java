package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.look.RoomLight;
import java.nio.file.Path;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.image.ImageView;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** A bench with nothing on it: one large invitation, and what lay on it lately, as pictures. */
final class EmptyBench extends VBox {
    private static final double WIDTH = 160;
    private static final double HEIGHT = 120;
    private static final int MOST = 8;

    private final DeskFiles files;
    private final FlowPane recent = new FlowPane(16, 16);
    private final Label heading = Controls.label("Recent", "quiet");
    private final Button open;
    private RoomLight light = new RoomLight(false);

    EmptyBench(DeskFiles files) {
        super(16);
        this.files = files;
        getStyleClass().add("empty");
        setAlignment(Pos.CENTER);
        setId("empty");
        open = Controls.mainButton(
                "Open a picture", "open-first", "A picture, a job or a film (Ctrl+O)", files::askOpen);
        recent.setAlignment(Pos.CENTER);
        recent.setMaxWidth(4 * (WIDTH + 32));
        getChildren()
                .addAll(
                        Controls.label("Drop art here", "invitation"),
                        Controls.label("A scan, photograph or drawing; or a job or film made before."),
                        open,
                        heading,
                        recent);
    }

    void focusFirst() {
        open.requestFocus();
    }

    void look(RoomLight shining) {
        light = shining;
        refresh();
    }

    void refresh() {
        List<Path> present = files.recent().stream().limit(MOST).toList();
        Controls.show(heading, !present.isEmpty());
        recent.getChildren().setAll(present.stream().map(this::plate).toList());
    }

    private Button plate(Path file) {
        ImageView small = new ImageView();
        small.setPreserveRatio(true);
        small.setFitWidth(WIDTH);
        small.setFitHeight(HEIGHT);
        files.pictureOf(file).ifPresent(picture -> small.setImage(light.image(picture)));
        StackPane frame = new StackPane(small);
        frame.setMinSize(WIDTH, HEIGHT);
        frame.setMaxSize(WIDTH, HEIGHT);
        Button button = new Button(String.valueOf(file.getFileName()), frame);
        button.setContentDisplay(ContentDisplay.TOP);
        button.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
        button.setMaxWidth(WIDTH + 16);
        button.getStyleClass().add("recent");
        button.setAccessibleText("Open " + file);
        button.setTooltip(new Tooltip(file.toString()));
        button.setOnAction(pressed -> files.open(file));
        return button;
    }
}
