package greyground.app.live;

/** From where a film sheet is looked at. */
public enum SheetSide {
    /** As it comes out of the printer, ink towards the eye. */
    AS_PRINTED,
    /** As it lies on the plate, from where the lamp will be. */
    ON_THE_PLATE
}
