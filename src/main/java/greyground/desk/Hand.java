package greyground.desk;

/** What the hand does on the picture. */
enum Hand {
    MOVE,
    PICK_WHITE,
    PICK_BLACK,
    CROP
}
