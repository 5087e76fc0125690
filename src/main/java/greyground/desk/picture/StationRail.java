package greyground.desk.picture;

import greyground.app.sight.LivePicture;
import greyground.desk.look.Controls;
import greyground.desk.look.Freshness;
import greyground.desk.look.RoomLight;
import greyground.desk.model.Place;
import greyground.desk.model.Station;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The five stations, each a small live picture, and below a line the window's other places; one is chosen. */
public final class StationRail extends VBox {
    public static final int PICTURE_WIDTH = 64;
    public static final int PICTURE_HEIGHT = 44;
    private static final int LEAST_HEIGHT = 32;

    private final Map<Station, ToggleButton> buttons = new EnumMap<>(Station.class);
    private final Map<Station, ImageView> pictures = new EnumMap<>(Station.class);
    private final Map<Station, Freshness> freshness = new EnumMap<>(Station.class);
    private final Map<Station, LivePicture> shown = new EnumMap<>(Station.class);
    private final Map<Place, ToggleButton> places = new EnumMap<>(Place.class);
    private final ToggleGroup group = new ToggleGroup();
    private final Label assumed = Controls.label("", "quiet");
    private int pictureHeight = PICTURE_HEIGHT;

    public StationRail(Consumer<Station> chosen, Consumer<Place> gone) {
        getStyleClass().add("rail");
        for (Station station : Station.values()) {
            ImageView picture = new ImageView();
            picture.setPreserveRatio(true);
            StackPane frame = new StackPane(picture);
            frame.getStyleClass().add("frame");
            ToggleButton button = new ToggleButton(station.number() + "  " + station.label(), frame);
            button.setContentDisplay(ContentDisplay.TOP);
            button.setId("station-" + station.name().toLowerCase(Locale.ROOT));
            button.setAccessibleText("Station " + station.number() + " of 5, " + station.label());
            button.setAccessibleHelp(station.words());
            add(button, () -> chosen.accept(station));
            buttons.put(station, button);
            pictures.put(station, picture);
            freshness.put(station, new Freshness(picture::setOpacity));
        }
        Region rule = new Region();
        rule.getStyleClass().add("rail-rule");
        getChildren().add(rule);
        for (Place place : new Place[] {Place.PLAN, Place.TEST_PLATE, Place.WORKSHOP}) {
            String hint = place.words() + " (" + place.key() + ")";
            ToggleButton button = Controls.named(new ToggleButton(place.label()), place.id(), place.label(), hint);
            add(button, () -> gone.accept(place));
            places.put(place, button);
        }
        assumed.setId("assumed");
        Controls.show(assumed, false);
        ToggleButton workshop = places.get(Place.WORKSHOP);
        if (workshop != null) {
            Label name = Controls.label(workshop.getText());
            workshop.setText("");
            workshop.setGraphic(new VBox(name, assumed));
        }
        sizePictures();
    }

    private void add(ToggleButton button, Runnable chosen) {
        button.getStyleClass().setAll("station");
        button.setToggleGroup(group);
        button.setMaxWidth(Double.MAX_VALUE);
        button.setMinHeight(Region.USE_PREF_SIZE);
        button.setOnAction(pressed -> {
            button.setSelected(true);
            chosen.run();
        });
        getChildren().add(button);
    }

    /** In a low window the pictures give way, so that no place falls off the rail's foot. */
    @Override
    protected void layoutChildren() {
        double words = prefHeight(-1) - (double) pictures.size() * pictureHeight;
        int room = (int) Math.floor((getHeight() - words) / pictures.size());
        int wanted = Math.max(LEAST_HEIGHT, Math.min(PICTURE_HEIGHT, room));
        if (wanted != pictureHeight) {
            pictureHeight = wanted;
            sizePictures();
        }
        super.layoutChildren();
    }

    @Override
    protected double computeMinHeight(double width) {
        return super.computeMinHeight(width) - (double) pictures.size() * (pictureHeight - LEAST_HEIGHT);
    }

    private void sizePictures() {
        double width = Math.rint((double) pictureHeight * PICTURE_WIDTH / PICTURE_HEIGHT);
        for (ImageView picture : pictures.values()) {
            picture.setFitWidth(width);
            picture.setFitHeight(pictureHeight);
            if (picture.getParent() instanceof StackPane frame) {
                frame.setMinSize(width, pictureHeight);
                frame.setMaxSize(width, pictureHeight);
            }
        }
    }

    /** Whether a picture lies on the bench: without one there are no stations and no plan. */
    public void setPresent(boolean present) {
        buttons.values().forEach(button -> button.setDisable(!present));
        places.forEach((place, button) -> button.setDisable(!present && !place.needsNoPicture()));
        if (group.getSelectedToggle() instanceof ToggleButton chosen && chosen.isDisable()) {
            // Tab comes to the chosen one of a group alone.
            group.selectToggle(null);
        }
    }

    /** Says below the workshop's name how many of its numbers are only assumed. */
    public void tellAssumed(long numbers) {
        ToggleButton workshop = places.get(Place.WORKSHOP);
        if (workshop != null) {
            assumed.setText(numbers + " assumed");
            Controls.show(assumed, numbers > 0);
            workshop.setAccessibleText(
                    Place.WORKSHOP.label() + (numbers > 0 ? ", " + numbers + " numbers only assumed" : ""));
        }
    }

    public void choose(Place place) {
        group.selectToggle(places.get(place));
    }

    public void choose(Station station) {
        group.selectToggle(buttons.get(station));
    }

    public void focusChosen() {
        if (group.getSelectedToggle() instanceof ToggleButton chosen) {
            chosen.requestFocus();
        } else {
            places.values().stream()
                    .filter(place -> !place.isDisabled())
                    .findFirst()
                    .ifPresent(ToggleButton::requestFocus);
        }
    }

    public void show(Station station, LivePicture picture, RoomLight light) {
        ImageView view = pictures.get(station);
        Freshness seen = freshness.get(station);
        if (view != null && seen != null) {
            shown.put(station, picture);
            view.setImage(light.image(picture));
            seen.fresh();
        }
    }

    /** At once in another light: no lit pixel waits for a new picture. */
    public void look(RoomLight light) {
        pictures.forEach((station, view) -> {
            LivePicture picture = shown.get(station);
            view.setImage(picture == null ? null : light.image(picture));
        });
    }

    /** Something has changed: what is seen is of before. */
    public void stale() {
        freshness.values().forEach(Freshness::stale);
    }

    public void clear() {
        shown.clear();
        pictures.values().forEach(view -> view.setImage(null));
        freshness.values().forEach(Freshness::fresh);
    }
}
