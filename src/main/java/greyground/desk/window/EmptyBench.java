package greyground.desk.window;

import greyground.desk.look.Controls;
import java.nio.file.Path;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.VBox;

/** A bench with nothing on it: says the next step, and what lay on it lately. */
final class EmptyBench extends VBox {
    private final DeskFiles files;
    private final VBox recent = new VBox(0);
    private final Button open;

    EmptyBench(DeskFiles files) {
        super(16);
        this.files = files;
        getStyleClass().add("empty");
        setAlignment(Pos.CENTER);
        setId("empty");
        open = Controls.mainButton("Open", "open-first", "Open a picture, a job or a film (Ctrl+O)", files::askOpen);
        recent.setAlignment(Pos.CENTER);
        recent.setMaxWidth(480);
        getChildren()
                .addAll(
                        Controls.label("Drop art here, or open a scan", "heading"),
                        Controls.label("A scan, photograph or drawing; or a job or film made before."),
                        open,
                        recent);
    }

    void focusFirst() {
        open.requestFocus();
    }

    void refresh() {
        List<Path> present = files.recent();
        recent.getChildren().clear();
        if (!present.isEmpty()) {
            recent.getChildren().add(Controls.wrapped("Recent", "strong"));
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
