package greyground.plan;

import greyground.plate.ToneTerms;
import greyground.quantity.Refusal;
import greyground.tone.StraightLines;
import java.util.List;
import java.util.Map;

/**
 * What the bath takes of a plate, told by two shares of what it would take of the same plate bitten bare all over: what lies bare as
 * the plate goes in, and what is gone at one depth, undercut included.
 *
 * @param bareShare of the plate, after developing and any sprayed ground, 0 to 1
 * @param takenShare mean depth over the whole plate, over the depth of what is bare, 0 to 1
 * @param depthMicrometres at which that share is taken, above 0
 */
public record CopperLoss(double bareShare, double takenShare, double depthMicrometres) {
    /** A plate that never meets the bath. */
    public static final CopperLoss NONE = new CopperLoss(0, 0, 1);

    /** Copper, g/cm3 at 20 C (CRC Handbook of Chemistry and Physics, from memory). */
    private static final double GRAMS_PER_CUBIC_CENTIMETRE = 8.96;

    public CopperLoss {
        Refusal.checkRange("plate's bare copper", bareShare, 0, 1, "", "give a share of the plate");
        Refusal.checkRange("copper taken of the plate", takenShare, 0, 1, "", "give a share of plate x depth");
        Refusal.checkRange("depth bitten", depthMicrometres, 0.01, 100_000, "µm", "20 to 50 µm is a deep aquatint");
    }

    /** Walls straight down, as where nobody has said how far they are undercut. */
    static CopperLoss straightDown(double bareShare) {
        return new CopperLoss(bareShare, bareShare, 1);
    }

    /**
     * Adds up what the virtual plate computed of every tone.
     *
     * @param levels tones of a plate bitten to {@code depthMicrometres}, by rising coverage
     * @param plateByCoverage share of the plate that has each film coverage; what is missing to 1 is clear film
     */
    public static CopperLoss of(List<ToneTerms> levels, double depthMicrometres, Map<Double, Double> plateByCoverage) {
        double[] coverages = levels.stream().mapToDouble(ToneTerms::coverage).toArray();
        StraightLines open = new StraightLines(
                coverages, levels.stream().mapToDouble(ToneTerms::openShare).toArray());
        StraightLines deep = new StraightLines(
                coverages,
                levels.stream().mapToDouble(ToneTerms::meanDepthMicrometres).toArray());
        double clear = 1;
        double bare = 0;
        double mean = 0;
        for (Map.Entry<Double, Double> part : plateByCoverage.entrySet()) {
            clear -= part.getValue();
            bare += part.getValue() * open.value(part.getKey());
            mean += part.getValue() * deep.value(part.getKey());
        }
        bare += Math.max(0, clear) * open.value(0);
        mean += Math.max(0, clear) * deep.value(0);
        return new CopperLoss(Math.min(1, bare), Math.min(1, mean / depthMicrometres), depthMicrometres);
    }

    /**
     * Share taken at another depth. What goes under the edges grows with the square of the depth (quarter ellipses of one shape) until
     * edges meet, so that beside the bare share it grows with the depth; never more than all.
     */
    public double takenAt(double depth) {
        return Math.min(1, bareShare + (takenShare - bareShare) * depth / depthMicrometres);
    }

    /** Depth at which so much is gone as {@code meanMicrometres} over the whole plate, or infinity where nothing lies bare. */
    public double depthFor(double meanMicrometres) {
        double under = (takenShare - bareShare) / depthMicrometres;
        if (bareShare <= 0 && under <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        // bare h + under h^2 = mean, in the form that also holds where under is 0.
        double root = Math.sqrt(Math.max(0, bareShare * bareShare + 4 * under * meanMicrometres));
        double depth = 2 * meanMicrometres / (bareShare + root);
        return bareShare + under * depth >= 1 ? meanMicrometres : depth;
    }

    /** Grams that a mean depth over a whole plate weighs: area x depth x 8.96 g/cm3. */
    public static double grams(double plateSquareCentimetres, double meanMicrometres) {
        return plateSquareCentimetres * meanMicrometres * 1e-4 * GRAMS_PER_CUBIC_CENTIMETRE;
    }

    /** Mean depth over a whole plate that so many grams stand for. */
    public static double meanMicrometres(double plateSquareCentimetres, double grams) {
        return grams / grams(plateSquareCentimetres, 1);
    }
}
