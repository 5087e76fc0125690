package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.model.Station;
import javafx.scene.Node;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The tools at the picture's left edge: for looking, and below them those of the station. */
final class ToolStrip extends VBox {
    private final Node ofArt;
    private final Node ofPlate;
    private final Node ofFilm;

    ToolStrip(Node looking, Node comparing, Node ofArt, Node ofPlate, Node ofFilm) {
        super(12, looking, comparing, ofArt, ofPlate, ofFilm);
        this.ofPlate = ofPlate;
        this.ofArt = ofArt;
        this.ofFilm = ofFilm;
        getStyleClass().add("tools");
        setMinWidth(Region.USE_PREF_SIZE);
    }

    void choose(Station station) {
        Controls.show(ofArt, station == Station.ART);
        Controls.show(ofPlate, station == Station.FILM || station == Station.PRINT);
        Controls.show(ofFilm, station == Station.FILM);
    }
}
