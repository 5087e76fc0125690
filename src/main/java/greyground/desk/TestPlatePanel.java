package greyground.desk;

import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** What is chosen and told of a test plate. */
final class TestPlatePanel extends VBox {
    TestPlatePanel() {
        super(8);
        getStyleClass().add("settings");
        setAccessibleText("Test plate");
        Label title = new Label(Place.TEST_PLATE.label());
        title.getStyleClass().add("heading");
        getChildren().add(title);
    }

    void focusFirst() {
        requestFocus();
    }
}
