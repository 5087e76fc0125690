package greyground.tone;

/**
 * A plate of parallel lines, the reference for curves: each edge has moved outwards by a distance, and the grown area prints by Yule
 * and Nielsen 1951 with n = 1.7 (Pearson 1981) between densities 0.06 and 1.6.
 *
 * @param pitchMicrometres from line to line
 * @param shiftMicrometres of each edge, 0 or more
 * @param least coverage that washes out; lighter ones print as paper
 * @param most coverage before open bite, where lands still stand
 */
record LinesResponse(double pitchMicrometres, double shiftMicrometres, double least, double most)
        implements PlateResponse {
    @Override
    public double lightness(double coverage) {
        double grown = Math.min(coverage, most) + 2 * shiftMicrometres / pitchMicrometres;
        double area = coverage <= 0 || coverage < least ? 0 : Math.min(1, grown);
        // Yule and Nielsen 1951, with n = 1.7: D = D0 - n log10(1 - a (1 - 10^(-(Ds - D0)/n))).
        double inked = 1 - Math.pow(10, -(1.6 - 0.06) / 1.7);
        return Lightness.ofDensity(0.06 - 1.7 * Math.log10(1 - area * inked));
    }

    @Override
    public UsableCoverage usable() {
        return new UsableCoverage(least, most);
    }

    @Override
    public String name() {
        return "lines";
    }
}
