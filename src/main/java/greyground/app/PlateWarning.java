package greyground.app;

/**
 * Something on the film that the plate will not keep, and where.
 *
 * @param kind one word for programs: open-bite, lost-land, shut-opening
 * @param words what it is and how large, for people
 * @param acrossMillimetres from the plate's left edge, as the print reads
 * @param downMillimetres from the plate's top edge
 * @param sizeMillimetres its width, or the side of the patch that it stands for
 * @param areaSquareMillimetres how much of the plate it concerns
 */
public record PlateWarning(
        String kind,
        String words,
        double acrossMillimetres,
        double downMillimetres,
        double sizeMillimetres,
        double areaSquareMillimetres) {}
