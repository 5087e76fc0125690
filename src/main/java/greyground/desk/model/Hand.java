package greyground.desk.model;

/** What the hand does on the picture. */
public enum Hand {
    MOVE,
    PICK_WHITE,
    PICK_BLACK,
    CROP,
    /** Draws a line along what should be level or upright. */
    LEVEL
}
