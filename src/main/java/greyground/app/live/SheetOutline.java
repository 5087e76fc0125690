package greyground.app.live;

/**
 * An edge that the printmaker looks for on a film sheet, in millimetres from the sheet's top left corner as it is seen.
 *
 * @param edge which one
 */
public record SheetOutline(Edge edge, double left, double top, double width, double height) {
    boolean has(double across, double down) {
        return across >= left && across < left + width && down >= top && down < top + height;
    }

    /** What may be cut, filed or laid against another film. */
    public enum Edge {
        /** The sheet itself. */
        SHEET,
        /** The copper's own edge. */
        PLATE,
        /** As far as the picture runs. */
        BLEED,
        /** Where the filed edge begins. */
        BEVEL,
        /** One of several films that a large sheet is printed on. */
        TILE
    }
}
