package greyground.desk.model;

/** What the hand does on the picture. */
public enum Hand {
    MOVE,
    PICK_WHITE,
    PICK_BLACK,
    CROP,
    /** Draws a line along what should be level or upright. */
    LEVEL,
    /** Draws strokes over what shall print lighter. */
    BURNISH,
    /** Draws strokes over what shall print darker. */
    DEEPEN,
    /** Draws a rectangle in which the picture ends. */
    RECTANGLE,
    ELLIPSE,
    /** Sets the corners of a shape in which the picture ends. */
    POLYGON;

    /** Whether it draws a way with a brush, one after the other until it is put down. */
    public boolean isBrush() {
        return this == BURNISH || this == DEEPEN;
    }

    /** Whether it draws a box from one corner to the other. */
    public boolean isBox() {
        return this == RECTANGLE || this == ELLIPSE;
    }

    /** Whether it works on the plate rather than on the art. */
    public boolean isOfPlate() {
        return isBrush() || isBox() || this == POLYGON;
    }
}
