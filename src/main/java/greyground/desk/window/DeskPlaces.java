package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.model.Place;
import greyground.desk.model.Station;
import greyground.desk.page.LaidPage;
import greyground.desk.picture.PictureView;
import javafx.scene.Node;
import org.jspecify.annotations.Nullable;

/** What fills the window's middle: which place is seen, with what beside it, and where the keyboard is. */
final class DeskPlaces {
    private final DeskWindow desk;
    private Place place = Place.STATION;

    /** At the stations, or at the empty bench. */
    DeskPlaces(DeskWindow desk) {
        this.desk = desk;
    }

    Place place() {
        return place;
    }

    /** The picture that fills the middle: a station's, or the whole sheet's. */
    PictureView picture() {
        return place == Place.SHEET ? desk.sheet.picture() : desk.picture;
    }

    private boolean isPresent() {
        return desk.model.state().isPresent();
    }

    /** Whether one can go there: without a picture there are no stations, and no plan unless a clock of one has begun. */
    boolean isOpen(Place wanted) {
        return isPresent()
                || wanted.needsNoPicture()
                || wanted == Place.STATION
                || (wanted == Place.PLAN && !desk.clocks.begun().isEmpty());
    }

    /** Fills the middle with the station of this name; the keyboard stays where it is. */
    void show(Station station) {
        place = Place.STATION;
        refresh();
        desk.rail.choose(station);
    }

    /** Fills the middle with a place other than the stations, and gives it the keyboard. */
    void show(Place wanted) {
        place = wanted;
        refresh();
        if (place == Place.SHEET) {
            // The sheet belongs to its station, which stays chosen on the rail.
            desk.rail.choose(Station.FILM);
            desk.sheet.refresh();
        } else {
            desk.rail.choose(place);
        }
        focusMiddle();
    }

    /** Lays a page over what is seen. */
    void lay(LaidPage page) {
        desk.pages.open(page);
        arrange();
        desk.pages.focus();
    }

    /** Takes the page that is laid over what is seen away. */
    void putAway() {
        refresh();
        focusMiddle();
    }

    /** Takes any page away and shows what is at its place. */
    void refresh() {
        desk.pages.close();
        arrange();
    }

    /** Shows what is at its place and nothing beneath it, so that keys go to what is seen. */
    void arrange() {
        boolean free = !desk.pages.isOpen() && !desk.arrival.isVisible();
        boolean testing = place == Place.TEST_PLATE;
        desk.picture.setVisible(free && isPresent() && place == Place.STATION);
        boolean planned = place == Place.PLAN && isOpen(place);
        desk.plan.setVisible(free && planned);
        desk.sheet.show(free && place == Place.SHEET);
        desk.workshop.setVisible(free && place == Place.WORKSHOP);
        desk.workshop.refresh();
        Controls.show(desk.testPlate.side(), testing);
        desk.testPlate.middle().setVisible(free && testing);
        desk.empty.setVisible(free && !isPresent() && !planned && !place.needsNoPicture());
        arrangeFolds();
        desk.zoom.refresh();
    }

    /** Shows beside and below the picture what is not folded; a test plate's panel stays. */
    void arrangeFolds() {
        boolean plate = isPresent()
                && !desk.pages.isOpen()
                && !desk.arrival.isVisible()
                && (place == Place.STATION || place == Place.SHEET);
        Controls.show(
                desk.settings,
                isPresent()
                        && !desk.arrival.isVisible()
                        && (place == Place.STATION || place == Place.SHEET)
                        && desk.folds.settings());
        boolean tones = plate && place == Place.STATION && desk.folds.tones();
        if (tones != desk.tones.isVisible()) {
            Controls.show(desk.tones, tones);
            desk.tones.ask();
        }
        Controls.show(desk.tools, plate);
        Controls.show(desk.warnings.count(), plate);
        if (!plate) {
            desk.warnings.open(false);
            desk.frame.tellTone("");
        }
    }

    /** Goes on from where the keyboard is to the next part of the window: stations, picture, settings, warnings. */
    void nextPart(@Nullable Node focused) {
        if (Controls.within(focused, desk.rail) && desk.empty.isVisible()) {
            desk.empty.focusFirst();
        } else if (Controls.within(focused, desk.rail)) {
            focusMiddle();
        } else if (Controls.within(focused, desk.testPlate.middle())) {
            desk.testPlate.side().focusFirst();
        } else if (Controls.within(focused, desk.plan)
                || Controls.within(focused, desk.sheet)
                || Controls.within(focused, desk.workshop)
                || Controls.within(focused, desk.loupeBench)) {
            afterTheMiddle();
        } else if (Controls.within(focused, desk.settings)
                && desk.warnings.count().isVisible()) {
            desk.warnings.count().requestFocus();
        } else {
            desk.rail.focusChosen();
        }
    }

    /** The settings, where they are not folded; else the warnings, where there are any. */
    private void afterTheMiddle() {
        if (desk.settings.isVisible()) {
            desk.settings.focusFirst();
        } else if (desk.warnings.count().isVisible()) {
            desk.warnings.count().requestFocus();
        } else {
            desk.rail.focusChosen();
        }
    }

    void focusMiddle() {
        if (desk.pages.isOpen()) {
            desk.pages.focus();
            return;
        }
        if (desk.empty.isVisible()) {
            desk.empty.focusFirst();
            return;
        }
        switch (place) {
            case STATION -> desk.picture.requestFocus();
            case PLAN -> desk.plan.focusFirst();
            case SHEET -> desk.sheet.picture().requestFocus();
            case TEST_PLATE -> desk.testPlate.focusMiddle();
            case WORKSHOP -> desk.workshop.focusFirst();
        }
    }
}
