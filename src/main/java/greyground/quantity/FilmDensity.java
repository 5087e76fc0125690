package greyground.quantity;

/**
 * The two densities of a film positive at the wavelengths that harden the resist.
 *
 * @param clear of bare film, base and fog, 0 to 1
 * @param black of solid black, above {@code clear}, at most 6
 */
public record FilmDensity(double clear, double black) {
    /** Clear base of imagesetter film; it should not exceed 0.05 (instrument maker's guide to graphic-arts densitometry). */
    public static final double IMAGESETTER_CLEAR = 0.03;

    public FilmDensity {
        Refusal.checkRange("clear film density", clear, 0, 1, "D", "clear film is 0.03 to 0.2");
        Refusal.checkRange("black film density", black, 0, 6, "D", "measure it in the ultraviolet; 2 to 4 is usual");
        if (black <= clear) {
            throw Refusal.use("black film density is " + Refusal.plain(black) + " D, not above the clear film's "
                    + Refusal.plain(clear) + " D: swap them or measure again");
        }
    }

    /** How much the black holds back beyond the clear film. */
    public double window() {
        return black - clear;
    }

    /**
     * Density of a tint, or of a solid with pinholes, as an area average: T = a 10^-black + (1 - a) 10^-clear. A solid's
     * average hides its pinholes: one per cent of them turns D 3 into D 2.
     *
     * @param coverage share that is black, 0 to 1
     */
    public Density tint(double coverage) {
        Refusal.checkRange("film coverage", coverage, 0, 1, "", "give the black share of the area");
        return Density.ofTransmittance(
                coverage * StrictMath.pow(10, -black) + (1 - coverage) * StrictMath.pow(10, -clear));
    }
}
