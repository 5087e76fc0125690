package greyground.desk.window;

import greyground.desk.model.Place;
import greyground.desk.model.Station;
import greyground.desk.picture.PictureView;
import greyground.desk.picture.SheetView;
import greyground.desk.picture.StationRail;
import greyground.desk.plan.KeysView;
import greyground.desk.plan.PlanView;
import greyground.desk.setting.SettingsPane;
import java.util.function.BooleanSupplier;
import javafx.scene.Node;
import javafx.scene.Parent;
import org.jspecify.annotations.Nullable;

/** What fills the window's middle: which place is seen, with what beside it, and where the keyboard is. */
final class DeskPlaces {
    private final Parts parts;
    private final BooleanSupplier present;
    private Place place = Place.STATION;

    /** What is seen or hidden as one goes from place to place. */
    record Parts(
            StationRail rail,
            PictureView picture,
            LoupeBench loupeBench,
            PlanView plan,
            SheetView sheet,
            TestPlateView testPlate,
            EmptyBench empty,
            KeysView keys,
            SettingsPane settings,
            WarningsView warnings) {}

    /**
     * At the stations, or at the empty bench.
     *
     * @param present whether a picture lies on the bench
     */
    DeskPlaces(Parts parts, BooleanSupplier present) {
        this.parts = parts;
        this.present = present;
    }

    Place place() {
        return place;
    }

    /** The picture that fills the middle: a station's, or the whole sheet's. */
    PictureView picture() {
        return place == Place.SHEET ? parts.sheet.picture() : parts.picture;
    }

    /** Whether one can go there: without a picture there are no stations and no plan. */
    boolean isOpen(Place wanted) {
        return wanted == Place.TEST_PLATE || present.getAsBoolean();
    }

    /** Fills the middle with the station of this name; the keyboard stays where it is. */
    void show(Station station) {
        place = Place.STATION;
        refresh();
        parts.rail.choose(station);
    }

    /** Fills the middle with a place other than the stations, and gives it the keyboard. */
    void show(Place wanted) {
        place = wanted;
        refresh();
        if (place == Place.SHEET) {
            // The sheet belongs to its station, which stays chosen on the rail.
            parts.rail.choose(Station.FILM);
            parts.sheet.refresh();
        } else {
            parts.rail.choose(place);
        }
        focusMiddle();
    }

    /** Lays the list of keys over what is seen, or takes it away. */
    void showKeys(boolean wanted) {
        parts.keys.show(wanted);
        arrange();
        if (!wanted && parts.empty.isVisible()) {
            parts.empty.focusFirst();
        } else if (!wanted) {
            focusMiddle();
        }
    }

    boolean areKeysShown() {
        return parts.keys.isVisible();
    }

    /** Takes the list of keys away and shows what is at its place. */
    void refresh() {
        parts.keys.show(false);
        arrange();
    }

    /** Shows what is at its place and nothing beneath it, so that keys go to what is seen. */
    private void arrange() {
        boolean free = !parts.keys.isVisible();
        boolean testing = place == Place.TEST_PLATE;
        parts.picture.setVisible(free && present.getAsBoolean() && place == Place.STATION);
        parts.plan.setVisible(free && place == Place.PLAN);
        parts.sheet.show(free && place == Place.SHEET);
        parts.testPlate.show(testing);
        parts.testPlate.middle().setVisible(free && testing);
        parts.settings.setVisible(!testing);
        parts.empty.setVisible(free && !present.getAsBoolean() && !testing);
        // Warnings are of the plate on the bench.
        parts.warnings.setVisible(!testing);
        parts.warnings.setManaged(!testing);
    }

    /** Goes on from where the keyboard is to the next part of the window: stations, picture, settings, warnings. */
    void nextPart(@Nullable Node focused) {
        if (within(focused, parts.rail) && parts.empty.isVisible()) {
            parts.empty.focusFirst();
        } else if (within(focused, parts.rail)) {
            focusMiddle();
        } else if (within(focused, parts.testPlate.middle())) {
            parts.testPlate.side().focusFirst();
        } else if (within(focused, parts.plan) || within(focused, parts.sheet) || within(focused, parts.loupeBench)) {
            parts.settings.focusFirst();
        } else if (within(focused, parts.settings)) {
            parts.warnings.focusFirst();
        } else {
            parts.rail.focusChosen();
        }
    }

    private void focusMiddle() {
        switch (place) {
            case STATION -> parts.picture.requestFocus();
            case PLAN -> parts.plan.focusFirst();
            case SHEET -> parts.sheet.picture().requestFocus();
            case TEST_PLATE -> parts.testPlate.focusMiddle();
        }
    }

    private static boolean within(@Nullable Node node, Parent part) {
        for (Node each = node; each != null; each = each.getParent()) {
            if (each == part) {
                return true;
            }
        }
        return false;
    }
}
