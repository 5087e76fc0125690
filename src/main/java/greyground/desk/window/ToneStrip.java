package greyground.desk.window;

import greyground.desk.picture.DiagramView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;

/** What is known of tones, in one strip below the picture. */
final class ToneStrip extends HBox {
    private static final double HEIGHT = 192;

    ToneStrip(DiagramView diagram) {
        getStyleClass().add("tones");
        diagram.tall(HEIGHT);
        setMinHeight(HEIGHT);
        setMaxHeight(HEIGHT);
        HBox.setHgrow(diagram, Priority.ALWAYS);
        getChildren().add(diagram);
    }
}
