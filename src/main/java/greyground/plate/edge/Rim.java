package greyground.plate.edge;

/** What lies past the edge of a plane. */
public enum Rim {
    /** Nothing: the plane ends. */
    BOUNDED,
    /** The opposite side: the plane is one tile of an endless repeat. */
    WRAPPED;

    /**
     * The sample that stands for a place of a line: itself, or if it lies past an end that of the repeat, else the last one.
     *
     * @param size samples of the line
     */
    public int place(int at, int size) {
        return this == WRAPPED ? Math.floorMod(at, size) : Math.max(0, Math.min(size - 1, at));
    }
}
