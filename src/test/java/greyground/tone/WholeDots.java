package greyground.tone;

import greyground.quantity.Refusal;

/**
 * Clustered grain: one site per spacing squared. Light tones put whole dots of the least size on some of the sites; once each
 * site has its dot, the dots grow. Dark tones are the same with lands: they shrink to their least size, then go one by one.
 *
 * <p>The sites are taken as a square lattice (assumed: a green-noise grain is nearly evenly spaced), so growth before dots
 * meet is exact and after it approximate.
 *
 * @param spacingMicrometres root of the area per site, 20 to 2000
 * @param leastDotMicrometres diameter of the smallest dot, at most 0.79 of the spacing so that half coverage fills all sites
 * @param leastLandMicrometres diameter of the smallest land, at most 0.79 of the spacing
 */
public record WholeDots(double spacingMicrometres, double leastDotMicrometres, double leastLandMicrometres)
        implements DotGrowth {
    public WholeDots {
        Refusal.checkRange("grain spacing", spacingMicrometres, 20, 2000, "um", "120 to 260 um suits most plates");
        double most = 0.79 * spacingMicrometres;
        Refusal.checkRange("least dot", leastDotMicrometres, 1, most, "um", "choose a coarser grain or a smaller dot");
        Refusal.checkRange(
                "least land", leastLandMicrometres, 1, most, "um", "choose a coarser grain or a smaller land");
    }

    @Override
    public double grown(double coverage, double edgeShiftMicrometres) {
        return Discs.bridged(
                coverage,
                a -> dots(a, leastDotMicrometres, edgeShiftMicrometres),
                a -> 1 - dots(1 - a, leastLandMicrometres, -edgeShiftMicrometres));
    }

    private double dots(double coverage, double leastDiameter, double shift) {
        double allSites = DotGrowth.coverageOfDot(leastDiameter, spacingMicrometres);
        if (coverage < allSites) {
            return coverage / allSites * Discs.share(leastDiameter / 2 + shift, spacingMicrometres);
        }
        return Discs.share(Discs.radius(coverage, spacingMicrometres) + shift, spacingMicrometres);
    }

    @Override
    public String name() {
        return "grain, spacing " + Refusal.plain(spacingMicrometres) + " um";
    }
}
