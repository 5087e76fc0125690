package greyground.plate;

/**
 * The whole chain in closed form for round dots that stay apart, as a reference for the engine. Everything is plane
 * geometry but the fill, which is that of a trench as wide as the dot.
 */
final class RoundDotChain {
    private final double pitch;
    private final double creep;
    private final Bath bath;
    private final Wipe wipe;
    private final Ink ink;
    private final Paper paper;
    private final double smallestOpening;

    RoundDotChain(double pitch, double creep, Bath bath, Wipe wipe, Ink ink, Paper paper, double smallestOpening) {
        this.pitch = pitch;
        this.creep = creep;
        this.bath = bath;
        this.wipe = wipe;
        this.ink = ink;
        this.paper = paper;
        this.smallestOpening = smallestOpening;
    }

    record Terms(
            double filmRadius,
            double openRadius,
            double wellRadius,
            double fill,
            double printedShare,
            double inkFilm,
            double solidDensity,
            double density) {}

    Terms at(double coverage) {
        double film = pitch * Math.sqrt(coverage / Math.PI);
        double open = film - creep;
        if (2 * open < smallestOpening) {
            return new Terms(film, open, 0, 0, 0, 0, paper.density(), paper.density());
        }
        double h = bath.depthMicrometres();
        double u = bath.undercutMicrometres();
        double well = open + u;
        double fill = wipe.trenchFill(2 * well, h);
        double volume = Math.PI * open * open * h + 2 * Math.PI * (open * Math.PI * h * u / 4 + h * u * u / 3);
        double printed = well + ink.spreadMicrometres();
        double share = Math.PI * printed * printed / (pitch * pitch);
        double y = ink.transferFraction() * fill * volume / (share * pitch * pitch);
        double mean = (1 - share) * paper.root(0) + share * paper.root(ink.density(y));
        return new Terms(
                film,
                open,
                well,
                fill,
                share,
                y,
                paper.density() + ink.density(y),
                -Math.log10(paper.reflectance(mean)));
    }
}
