package greyground.plate.inspect;

import java.util.List;

/**
 * What an inspection of a film found. Places are millimetres from the top left of the plate's outline, as one looks at the film
 * the way its rows run. Lists hold the worst first, at most {@link #LONGEST_LIST}; the totals count everything.
 *
 * @param limits they were judged by
 * @param openBites worst first: widest, then largest
 * @param openBiteCount of all sites
 * @param openBiteSquareMillimetres of all sites
 * @param lostLands worst first: most land lost, by patches of 2 mm
 * @param lostLandCount separate lands, and necks and points of lands, that vanish
 * @param lostLandSquareMillimetres clear film that leaves no land, rounded corners included
 * @param clearSquareMillimetres clear film on the plate
 * @param shutOpenings worst first: most black shut, by patches of 2 mm
 * @param shutOpeningCount separate openings, and narrow parts of openings, that stay shut
 * @param shutSquareMillimetres black film that stays shut, rounded corners included
 * @param blackSquareMillimetres black film on the plate
 */
public record FilmFindings(
        FilmLimits limits,
        List<OpenBite> openBites,
        long openBiteCount,
        double openBiteSquareMillimetres,
        List<LostLand> lostLands,
        long lostLandCount,
        double lostLandSquareMillimetres,
        double clearSquareMillimetres,
        List<ShutOpening> shutOpenings,
        long shutOpeningCount,
        double shutSquareMillimetres,
        double blackSquareMillimetres) {
    /** Findings of one kind that are listed with their places; more than anybody will visit. */
    public static final int LONGEST_LIST = 200;

    public FilmFindings {
        openBites = List.copyOf(openBites);
        lostLands = List.copyOf(lostLands);
        shutOpenings = List.copyOf(shutOpenings);
    }

    /** Share of clear film that leaves no land, 0 to 1; 0 where nothing is clear. */
    public double lostLandShare() {
        return clearSquareMillimetres == 0 ? 0 : lostLandSquareMillimetres / clearSquareMillimetres;
    }

    /** Share of black film that stays shut, 0 to 1; 0 where nothing is black. */
    public double shutShare() {
        return blackSquareMillimetres == 0 ? 0 : shutSquareMillimetres / blackSquareMillimetres;
    }

    /** One thing found at a place. */
    public sealed interface Finding {
        /** From the plate's left edge. */
        double acrossMillimetres();

        /** From the plate's top edge. */
        double downMillimetres();

        /** How much of the plate it concerns. */
        double areaSquareMillimetres();
    }

    /**
     * Bare copper so wide that the pad wipes it out.
     *
     * @param acrossMillimetres of the middle of its widest part
     * @param downMillimetres of the same
     * @param widthMillimetres of the widest disc of bare copper, undercut included; never below the critical width
     * @param criticalWidthMillimetres above which the pad reaches the floor
     * @param areaSquareMillimetres of all discs of the critical width that lie in it, as seen on the film
     * @param lostLandSquareMillimetres how much of that area is clear film whose land vanishes
     */
    public record OpenBite(
            double acrossMillimetres,
            double downMillimetres,
            double widthMillimetres,
            double criticalWidthMillimetres,
            double areaSquareMillimetres,
            double lostLandSquareMillimetres)
            implements Finding {}

    /**
     * Lands that vanish, in a patch of plate 2 mm square.
     *
     * @param acrossMillimetres of the largest of them
     * @param downMillimetres of the same
     * @param areaSquareMillimetres of all of them
     * @param count of them
     */
    public record LostLand(double acrossMillimetres, double downMillimetres, double areaSquareMillimetres, long count)
            implements Finding {}

    /**
     * Openings that don't wash out, in a patch of plate 2 mm square.
     *
     * @param acrossMillimetres of the largest of them
     * @param downMillimetres of the same
     * @param areaSquareMillimetres of all of them
     * @param count of them
     */
    public record ShutOpening(
            double acrossMillimetres, double downMillimetres, double areaSquareMillimetres, long count)
            implements Finding {}
}
