package greyground.tone;

import greyground.quantity.Refusal;
import java.util.Arrays;

/**
 * The film coverage that prints a wanted lightness, on a plate's usable interval alone.
 *
 * <p>What can be printed is bare paper, and everything from the lightest tone that holds to the darkest before open bite.
 * The gap between paper and that lightest tone, and all that is darker than the turning point, has no coverage; such a wish
 * gets the nearest attainable tone, and {@link #attainable} says so. Nothing is extrapolated.
 *
 * <p>The response is read at {@value #NODES} coverages, closer at both ends where edges make it steep, and inverted by
 * Fritsch and Butland's {@link MonotoneCubic} through the exchanged axes. A response that wavers is first fitted isotonically.
 */
public final class ResponseInverse {
    /** Coverages at which a response is read. */
    public static final int NODES = 257;

    /** Lightness closer than this is the same, a thousandth of what an eye could tell. */
    private static final double SAME_LIGHTNESS = 1e-3;

    // Never changed after construction, so any thread may read.
    private final double paper;
    private final double lightest;
    private final double darkest;
    private final double least;
    private final double most;
    private final MonotoneCubic coverageOfLightness;

    /**
     * Reads and inverts a response.
     *
     * @throws Refusal if the plate never darkens over its usable coverages
     */
    public ResponseInverse(PlateResponse response) {
        UsableCoverage usable = response.usable();
        // Coverage 0 is bare paper, a tone of its own; the lightest dot has at least one film sample.
        least = Math.max(usable.least(), 1.0 / ToneCurve.SOLID);
        most = usable.most();
        double[] coverage = new double[NODES];
        double[] lightness = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            double along = (1 - StrictMath.cos(Math.PI * i / (NODES - 1))) / 2;
            coverage[i] = i == NODES - 1 ? most : least + (most - least) * along;
            lightness[i] = response.lightness(coverage[i]);
        }
        double[] weights = new double[NODES];
        Arrays.fill(weights, 1);
        double[] falling = IsotonicFit.falling(lightness, weights).fitted();
        paper = Math.max(response.lightness(0), falling[0]);
        lightest = falling[0];
        darkest = falling[NODES - 1];
        coverageOfLightness = exchanged(response, coverage, falling);
    }

    private static MonotoneCubic exchanged(PlateResponse response, double[] coverage, double[] falling) {
        double[] x = new double[NODES];
        double[] y = new double[NODES];
        int kept = 0;
        // From dark to light; on a flat stretch the least coverage stands for all, so the later of equals wins.
        for (int i = NODES - 1; i >= 0; i--) {
            if (kept > 0 && falling[i] - x[kept - 1] < 1e-9) {
                y[kept - 1] = coverage[i];
                continue;
            }
            x[kept] = falling[i];
            y[kept] = coverage[i];
            kept++;
        }
        if (kept < 2 || x[kept - 1] - x[0] < 0.5) {
            throw Refusal.use("the plate response \"" + response.name() + "\" darkens by only "
                    + Refusal.plain(kept < 2 ? 0 : x[kept - 1] - x[0])
                    + " L* over its usable coverages; it must darken by at least 0.5: check ink and paper density");
        }
        return MonotoneCubic.fritschButland(Arrays.copyOf(x, kept), Arrays.copyOf(y, kept));
    }

    /** L* of bare paper. */
    public double paperLightness() {
        return paper;
    }

    /** L* of the lightest tone that holds, darker than paper or equal to it. */
    public double lightestLightness() {
        return lightest;
    }

    /** L* of the darkest tone, at the turning point. */
    public double darkestLightness() {
        return darkest;
    }

    /** Whether a lightness can be printed, to a thousandth of an L*. */
    public boolean attainable(double lightness) {
        return !inLightGap(lightness) && !tooLight(lightness) && !tooDark(lightness);
    }

    /** Whether a wish falls between bare paper and the lightest tone that holds. */
    public boolean inLightGap(double lightness) {
        return lightness > lightest + SAME_LIGHTNESS && lightness < paper - SAME_LIGHTNESS;
    }

    /** Whether a wish is lighter than the paper. */
    public boolean tooLight(double lightness) {
        return lightness > paper + SAME_LIGHTNESS;
    }

    /** Whether a wish is darker than the plate's turning point. */
    public boolean tooDark(double lightness) {
        return lightness < darkest - SAME_LIGHTNESS;
    }

    /** The coverage whose lightness is nearest to the wish: 0 for paper, else within the usable interval. */
    public double coverage(double lightness) {
        if (lightness > lightest) {
            return paper - lightness <= lightness - lightest ? 0 : least;
        }
        return lightness <= darkest ? most : coverageOfLightness.value(lightness);
    }

    /**
     * The same in film samples, 0 to {@link ToneCurve#SOLID}, rounded without leaving the usable interval: half a sample below
     * the least coverage would print as paper.
     */
    public int samples(double lightness) {
        double coverage = coverage(lightness);
        if (coverage == 0) {
            return 0;
        }
        int lowest = (int) Math.ceil(least * ToneCurve.SOLID);
        int highest = (int) Math.floor(most * ToneCurve.SOLID);
        return Math.max(lowest, Math.min(highest, (int) Math.round(coverage * ToneCurve.SOLID)));
    }
}
