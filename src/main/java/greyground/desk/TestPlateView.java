package greyground.desk;

import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The test plate: what fills the middle, and its own panel beside it. */
final class TestPlateView {
    private final VBox middle = new VBox(16);
    private final TestPlatePanel side = new TestPlatePanel();

    TestPlateView() {
        middle.setAlignment(Pos.CENTER);
        middle.getStyleClass().add("empty");
        middle.setFocusTraversable(true);
        middle.setAccessibleText("Test plate");
        Label heading = new Label("Learn the shop's own tones");
        heading.getStyleClass().add("heading");
        middle.getChildren().add(heading);
    }

    Region middle() {
        return middle;
    }

    TestPlatePanel side() {
        return side;
    }

    void show(boolean wanted) {
        middle.setVisible(wanted);
        side.setVisible(wanted);
    }
}
