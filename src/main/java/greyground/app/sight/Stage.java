package greyground.app.sight;

import greyground.picture.Colouring;
import greyground.picture.CopperRelief;
import greyground.picture.Picture;
import greyground.plate.PlateConditions;
import greyground.plate.PlateMap;
import greyground.plate.PlateView;

/** Where a plate can be looked at, in the order it is made. */
public enum Stage {
    /** The positive on a light table. */
    FILM("film"),
    /** Resist, or sprayed ground, on the copper. */
    RESIST("resist"),
    /** The bitten plate, lit from the top left. */
    COPPER("copper"),
    /** The inked paper. */
    PRINT("print");

    private final String word;

    Stage(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /**
     * What is looked at.
     *
     * @param turned whether the picture will be mirrored afterwards
     */
    public PlateView view(boolean turned) {
        return switch (this) {
            case FILM -> PlateView.filmLight();
            case RESIST -> PlateView.covered();
            case COPPER -> turned ? CopperRelief.toMirror() : CopperRelief.asPrinted();
            case PRINT -> PlateView.printRoot();
        };
    }

    public Picture coloured(PlateMap map, PlateConditions conditions) {
        return switch (this) {
            case FILM -> Colouring.film(map);
            case RESIST -> Colouring.resist(map);
            case COPPER -> Colouring.copper(map);
            case PRINT -> Colouring.print(map, conditions.paper());
        };
    }
}
