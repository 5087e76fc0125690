package greyground.desk;

import greyground.app.LivePicture;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.image.ImageView;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The five stations, each a small live picture; one is chosen. */
final class StationRail extends VBox {
    static final int PICTURE_WIDTH = 112;
    static final int PICTURE_HEIGHT = 76;

    private final Map<Station, ToggleButton> buttons = new EnumMap<>(Station.class);
    private final Map<Station, ImageView> pictures = new EnumMap<>(Station.class);
    private final ToggleGroup group = new ToggleGroup();

    StationRail(Consumer<Station> chosen) {
        getStyleClass().add("rail");
        for (Station station : Station.values()) {
            ImageView picture = new ImageView();
            StackPane frame = new StackPane(picture);
            frame.setMinSize(PICTURE_WIDTH, PICTURE_HEIGHT);
            frame.setMaxSize(PICTURE_WIDTH, PICTURE_HEIGHT);
            frame.setAlignment(Pos.CENTER);
            frame.getStyleClass().add("frame");
            ToggleButton button = new ToggleButton(station.number() + "  " + station.label(), frame);
            button.setContentDisplay(ContentDisplay.TOP);
            button.getStyleClass().setAll("station");
            button.setId("station-" + station.name().toLowerCase(java.util.Locale.ROOT));
            button.setAccessibleText("Station " + station.number() + " of 5, " + station.label());
            button.setAccessibleHelp(station.words());
            button.setToggleGroup(group);
            button.setMaxWidth(Double.MAX_VALUE);
            button.setOnAction(pressed -> {
                button.setSelected(true);
                chosen.accept(station);
            });
            buttons.put(station, button);
            pictures.put(station, picture);
            getChildren().add(button);
        }
    }

    void choose(Station station) {
        group.selectToggle(buttons.get(station));
    }

    void focusChosen() {
        if (group.getSelectedToggle() instanceof ToggleButton chosen) {
            chosen.requestFocus();
        }
    }

    void show(Station station, LivePicture picture, Light light, double outputScale) {
        ImageView view = pictures.get(station);
        if (view != null) {
            view.setImage(Shown.image(picture, light));
            view.setFitWidth(picture.width() / outputScale);
            view.setPreserveRatio(true);
        }
    }

    void clear() {
        pictures.values().forEach(view -> view.setImage(null));
    }
}
