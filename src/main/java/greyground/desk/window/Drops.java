package greyground.desk.window;

import greyground.desk.look.Controls;
import java.nio.file.Path;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.input.TransferMode;

/** Files that are dropped onto the window. */
final class Drops {
    private Drops() {}

    /** The first file of what is dropped there goes to {@code taker}; what would take it shows so. */
    static void accept(Node node, Consumer<Path> taker) {
        node.setOnDragOver(drag -> {
            if (drag.getDragboard().hasFiles()) {
                drag.acceptTransferModes(TransferMode.COPY);
                Controls.look(node, "dropping", true);
            }
            drag.consume();
        });
        node.setOnDragExited(drag -> Controls.look(node, "dropping", false));
        node.setOnDragDropped(drag -> {
            boolean took = drag.getDragboard().hasFiles()
                    && !drag.getDragboard().getFiles().isEmpty();
            if (took) {
                taker.accept(drag.getDragboard().getFiles().get(0).toPath());
            }
            drag.setDropCompleted(took);
            drag.consume();
        });
    }
}
