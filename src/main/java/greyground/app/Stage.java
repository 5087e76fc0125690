package greyground.app;

/** Where a plate can be looked at, in the order it is made. */
public enum Stage {
    /** The positive on a light table. */
    FILM,
    /** Resist, or sprayed ground, on the copper. */
    RESIST,
    /** The bitten plate, lit from the top left. */
    COPPER,
    /** The inked paper. */
    PRINT
}
