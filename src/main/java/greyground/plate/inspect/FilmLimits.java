package greyground.plate.inspect;

import greyground.plate.Bath;
import greyground.plate.Exposure;
import greyground.plate.Film;
import greyground.plate.PlateConditions;
import greyground.plate.Resist;
import greyground.plate.SprayedGround;
import greyground.plate.edge.Normal;
import greyground.quantity.Refusal;
import java.util.List;

/**
 * How narrow and how wide the parts of a film of hard dots may be, all measured on the film, for one plate.
 *
 * <p>From film to copper an edge moves three times, each time by the same distance wherever the parts are wider than the
 * blur: the printer's spots spread the black by g; the light creeps under it by c, where the sum of the blurred edges of
 * all exposures crosses the hardening dose; the bath reaches u = h/F under the resist. So
 *
 * <ul>
 *   <li>an opening washes out if it is at least {@code s - 2 (g - c)} wide, s the resist's smallest opening;
 *   <li>a land lives if it is at least {@code 2 (g - c) + max(l, 2u + k)} wide, l the resist's smallest land and k the least
 *       width of copper that holds the resist;
 *   <li>the pad, a paraboloid of radius r resting on lands, comes down h at a place if the nearest copper is at least {@code
 *       sqrt(2 r h)} away, half the critical width; on the film the land is nearer by {@code g - c + u}.
 * </ul>
 *
 * <p>The last is exact and not a rule of thumb: a paraboloid with its apex at depth h reaches the plate's face at just that
 * distance, in all directions, and a land that lives is round enough to lose the same width on every side.
 *
 * @param edgeShiftMicrometres g - c: how far an opening's edge lies outside the film's black, below 0 if inside
 * @param undercutMicrometres u, 0 on an unetched plate
 * @param depthMicrometres h; of the film itself on an unetched plate
 * @param leastOpeningMicrometres black narrower than this stays shut
 * @param leastLandMicrometres clear narrower than this is lost
 * @param criticalWidthMicrometres of bare copper, above which the pad wipes it out: {@code sqrt(8 r h)}
 * @param groundGaps share of a sprayed ground's bare copper where no grain lies within half the critical width, so that the
 *     pad reaches the floor; 1 without a ground
 */
public record FilmLimits(
        double edgeShiftMicrometres,
        double undercutMicrometres,
        double depthMicrometres,
        double leastOpeningMicrometres,
        double leastLandMicrometres,
        double criticalWidthMicrometres,
        double groundGaps) {
    /** A ground with a larger share of gaps does not hold the pad (assumed). */
    public static final double GROUND_GAPS_ALLOWED = 0.001;

    /** A normal edge is nowhere this many standard deviations wide. */
    private static final double FAR = 8;

    /**
     * The limits of a film in some conditions.
     *
     * @param sheet which of the plate's films; another one is taken as black there, where lands are in most danger
     * @throws Refusal if the exposure hardens everything or nothing
     */
    public static FilmLimits of(PlateConditions conditions, Exposure.Sheet sheet) {
        Resist resist = conditions.resist();
        double shift = edgeShift(conditions, sheet);
        double depth = resist.thicknessMicrometres();
        double undercut = 0;
        double live = resist.smallestLandMicrometres();
        if (conditions.wells() instanceof Bath bath) {
            depth = bath.depthMicrometres();
            undercut = bath.undercutMicrometres();
            live = Math.max(live, 2 * undercut + resist.leastHoldMicrometres());
        }
        double critical = conditions.wipe().criticalWidthMicrometres(depth);
        return new FilmLimits(
                shift,
                undercut,
                depth,
                Math.max(0, resist.smallestOpeningMicrometres() - 2 * shift),
                Math.max(0, 2 * shift + live),
                critical,
                gaps(conditions, undercut, critical));
    }

    /** The positive's limits. */
    public static FilmLimits of(PlateConditions conditions) {
        return of(conditions, Exposure.Sheet.POSITIVE);
    }

    /**
     * The limits of a pad that must not come down all of the depth but only a share of it: its sag over a width w is {@code w^2
     * / 8r}, so the critical width becomes {@code sqrt(8 r h share)}.
     *
     * @param share of the depth, above 0, at most 1
     */
    public FilmLimits forDepthShare(double share) {
        Refusal.checkRange("share of the depth", share, 1e-3, 1, "", "1 is the floor");
        return new FilmLimits(
                edgeShiftMicrometres,
                undercutMicrometres,
                depthMicrometres,
                leastOpeningMicrometres,
                leastLandMicrometres,
                criticalWidthMicrometres * Math.sqrt(share),
                groundGaps);
    }

    /** Whether a sprayed ground holds the pad wherever the film is black, so that no black can be too wide. */
    public boolean groundHolds() {
        return groundGaps <= GROUND_GAPS_ALLOWED;
    }

    /** Width of a clearing on the film, free of lands that live, that the pad just wipes out; 0 or more. */
    public double widestBlackMicrometres() {
        return Math.max(0, criticalWidthMicrometres - 2 * (edgeShiftMicrometres + undercutMicrometres));
    }

    /**
     * Probability that no grain comes within R of a place: none of lambda to the area has its middle within R and a grain's
     * radius, {@code exp(-lambda pi (R + rho)^2)}, the Boolean model. Straight chords between grains would mislead here: the
     * pad must find room on all sides. Each grain loses u all round, as if it stood alone (overlapping ones lose less, so
     * this is on the safe side); one left narrower than the resist's least hold holds nothing.
     */
    private static double gaps(PlateConditions conditions, double undercut, double critical) {
        SprayedGround ground = conditions.ground();
        if (ground == null) {
            return 1;
        }
        double left = ground.grainMicrometres() - 2 * undercut;
        if (left <= conditions.resist().leastHoldMicrometres()) {
            return 1;
        }
        double reach = (critical + left) / 2;
        return StrictMath.exp(-ground.grainsPerSquareMicrometre() * Math.PI * reach * reach);
    }

    private static double edgeShift(PlateConditions conditions, Exposure.Sheet sheet) {
        List<Exposure> exposures = conditions.exposures();
        double widest = 0;
        for (Exposure exposure : exposures) {
            widest = Math.max(widest, exposure.blurMicrometres());
        }
        double threshold = conditions.resist().throughCureDoseRatio();
        double clear = dose(exposures, sheet, FAR * widest + 1);
        double black = dose(exposures, sheet, -FAR * widest - 1);
        if (clear < threshold) {
            throw Refusal.failure("the exposure gives " + Refusal.plain(clear / threshold)
                    + " of the hardening dose behind clear film; it must be more than 1: expose longer");
        }
        if (black >= threshold) {
            throw Refusal.failure("the exposure gives " + Refusal.plain(black / threshold)
                    + " of the hardening dose behind black film; it must be less than 1: print a denser black or expose"
                    + " for less");
        }
        double low = -FAR * widest - 1;
        double high = FAR * widest + 1;
        for (int turn = 0; turn < 60; turn++) {
            double middle = (low + high) / 2;
            if (dose(exposures, sheet, middle) < threshold) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double growth = exposures.stream()
                .filter(exposure -> exposure.sheet() == sheet)
                .mapToDouble(exposure -> exposure.film().spotGrowthMicrometres())
                .findFirst()
                .orElseThrow(() -> Refusal.use("no exposure goes through this film; give one"));
        // Doses with no blur at all cross on the edge itself.
        return growth + (widest == 0 ? 0 : (low + high) / 2);
    }

    /** Dose at a distance from a straight edge, above 0 on the clear side. */
    private static double dose(List<Exposure> exposures, Exposure.Sheet sheet, double distance) {
        double sum = 0;
        for (Exposure exposure : exposures) {
            double clear = Film.transmission(exposure.film().clearDensity());
            double black = Film.transmission(exposure.film().blackDensity());
            double share =
                    exposure.sheet() == sheet ? Normal.below(distance / Math.max(1e-9, exposure.blurMicrometres())) : 0;
            sum += exposure.doseRatio() * (black + share * (clear - black));
        }
        return sum;
    }
}
