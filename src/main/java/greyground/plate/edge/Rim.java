package greyground.plate.edge;

/** What lies past the edge of a plane. */
public enum Rim {
    /** Nothing: the plane ends. */
    BOUNDED,
    /** The opposite side: the plane is one tile of an endless repeat. */
    WRAPPED
}
