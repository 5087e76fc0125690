package greyground.desk.model;

import greyground.app.check.PlateWarning;

/** How much a warning weighs: it stops the film, it costs tones or a plate, or a number could be measured. */
public enum Weight {
    STOPS,
    COSTS,
    COULD_BE_MEASURED;

    public static Weight of(PlateWarning warning) {
        return switch (warning.kind()) {
            case "small-sheet" -> STOPS;
            case "assumed" -> COULD_BE_MEASURED;
            default -> COSTS;
        };
    }
}
