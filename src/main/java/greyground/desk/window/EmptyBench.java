package greyground.desk.window;

import java.nio.file.Path;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** A bench with nothing on it: says the next step, and what lay on it lately. */
final class EmptyBench extends VBox {
    private final DeskFiles files;
    private final VBox recent = new VBox(0);
    private final Button open = new Button("Open");

    EmptyBench(DeskFiles files) {
        super(16);
        this.files = files;
        getStyleClass().add("empty");
        setAlignment(Pos.CENTER);
        setId("empty");
        Label heading = new Label("Drop art here, or open a scan");
        heading.getStyleClass().add("heading");
        Label words = new Label("A scan, photograph or drawing; or a job or film made before.");
        open.setId("open-first");
        open.getStyleClass().add("main");
        open.setTooltip(new Tooltip("Open a picture, a job or a film (Ctrl+O)"));
        open.setOnAction(pressed -> files.askOpen());
        recent.setAlignment(Pos.CENTER);
        recent.setMaxWidth(480);
        getChildren().addAll(heading, words, open, recent);
    }

    void focusFirst() {
        open.requestFocus();
    }

    void refresh() {
        List<Path> present = files.recent();
        recent.getChildren().clear();
        if (!present.isEmpty()) {
            Label title = new Label("Opened lately");
            title.getStyleClass().add("strong");
            title.setMinHeight(Region.USE_PREF_SIZE);
            recent.getChildren().add(title);
        }
        for (Path file : present) {
            Hyperlink link = new Hyperlink(file.getFileName() + "  in  " + folder(file));
            link.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
            link.setMaxWidth(480);
            link.setAlignment(Pos.CENTER);
            link.setAccessibleText("Open " + file);
            link.setTooltip(new Tooltip(file.toString()));
            link.setOnAction(pressed -> files.open(file));
            recent.getChildren().add(link);
        }
    }

    private static String folder(Path file) {
        Path parent = file.getParent();
        return parent == null || parent.getFileName() == null
                ? "/"
                : parent.getFileName().toString();
    }
}
