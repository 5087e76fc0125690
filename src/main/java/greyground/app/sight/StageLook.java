package greyground.app.sight;

import greyground.picture.Colouring;
import greyground.picture.CopperRelief;
import greyground.picture.Picture;
import greyground.plate.PlateConditions;
import greyground.plate.PlateMap;
import greyground.plate.PlateView;

/** What is looked at on a plate at each stage, and the colours that it is shown in. */
public final class StageLook {
    private StageLook() {}

    /**
     * What is looked at.
     *
     * @param turned whether the picture will be mirrored afterwards
     */
    public static PlateView view(Stage stage, boolean turned) {
        return switch (stage) {
            case FILM -> PlateView.filmLight();
            case RESIST -> PlateView.covered();
            case COPPER -> turned ? CopperRelief.toMirror() : CopperRelief.asPrinted();
            case PRINT -> PlateView.printRoot();
        };
    }

    /** The numbers of {@link #view} in their colours. */
    public static Picture coloured(Stage stage, PlateMap map, PlateConditions conditions) {
        return switch (stage) {
            case FILM -> Colouring.film(map);
            case RESIST -> Colouring.resist(map);
            case COPPER -> Colouring.copper(map);
            case PRINT -> Colouring.print(map, conditions.paper());
        };
    }
}
