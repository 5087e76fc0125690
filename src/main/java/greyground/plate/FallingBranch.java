package greyground.plate;

import greyground.quantity.Refusal;
import greyground.tone.StraightLines;
import java.util.ArrayList;
import java.util.List;

/**
 * The part of a response on which lightness falls strictly, so that it has an inverse.
 *
 * <p>A rise from one level to the next counts as real when it exceeds twice the standard error of their difference (about
 * one chance in forty for a normal error) and a fifth of a unit of L*, less than the eye sees; there the branch ends. Any
 * lesser rise is sampling noise and is pooled to the mean of its levels by the pool-adjacent-violators rule (Ayer and
 * others 1955), and the pool stands as one knot at its mean coverage, so no flat stretch is left. Of several branches the
 * one with the widest range of lightness is used.
 */
final class FallingBranch {
    private static final double REAL_RISE = 0.2;
    private static final double STANDARD_ERRORS = 2;
    // Assumed: a level this near bare plate is bare, and a jump of so much, in so little coverage, is one that no film
    // divides.
    private static final double BARE = 0.25;
    private static final double GAP = 3;
    private static final double GAP_WIDTH = 1.0 / 128;

    private final double[] coverages;
    private final double[] lightnesses;
    private final StraightLines lines;
    private final double smoothedBy;

    private FallingBranch(double[] coverages, double[] lightnesses, double smoothedBy) {
        this.coverages = coverages;
        this.lightnesses = lightnesses;
        this.lines = new StraightLines(coverages, lightnesses);
        this.smoothedBy = smoothedBy;
    }

    /**
     * Finds the branch.
     *
     * @param levels two or more, in order of coverage
     */
    static FallingBranch widest(List<ToneTerms> levels) {
        FallingBranch best = null;
        double bestRange = 0;
        int from = 0;
        for (int i = 0; i < levels.size(); i++) {
            boolean ends = i == levels.size() - 1 || rises(levels.get(i), levels.get(i + 1));
            if (ends) {
                FallingBranch branch = pooled(trimmed(levels.subList(from, i + 1)));
                if (branch.lightnesses.length > 1 && branch.range() > bestRange) {
                    best = branch;
                    bestRange = branch.range();
                }
                from = i + 1;
            }
        }
        if (best == null || bestRange < 1) {
            throw Refusal.use("no film coverage prints more than " + Refusal.plain(bestRange)
                    + " L* darker than another; at least 1 is needed: check exposure, resist and bite");
        }
        return best;
    }

    private static boolean rises(ToneTerms from, ToneTerms to) {
        double noise = STANDARD_ERRORS * StrictMath.hypot(from.lightnessError(), to.lightnessError());
        return to.lightness() - from.lightness() > Math.max(REAL_RISE, noise);
    }

    /** Leaves out levels that print as bare plate, and a jump down from it that no coverage divides. */
    private static List<ToneTerms> trimmed(List<ToneTerms> run) {
        double bare = run.get(0).lightness();
        int first = 0;
        int darkest = 0;
        for (int i = 0; i < run.size(); i++) {
            if (run.get(i).lightness() >= bare - BARE && first == i - 1) {
                first = i;
            }
            if (run.get(i).lightness() < run.get(darkest).lightness()) {
                darkest = i;
            }
        }
        if (first + 1 < run.size()) {
            ToneTerms last = run.get(first);
            ToneTerms next = run.get(first + 1);
            boolean jump = last.lightness() - next.lightness() > GAP && next.coverage() - last.coverage() <= GAP_WIDTH;
            first += jump ? 1 : 0;
        }
        return run.subList(Math.min(first, darkest), darkest + 1);
    }

    private static FallingBranch pooled(List<ToneTerms> run) {
        List<double[]> pools = new ArrayList<>();
        for (ToneTerms level : run) {
            double[] pool = {level.coverage(), level.lightness(), 1};
            while (!pools.isEmpty() && pools.get(pools.size() - 1)[1] <= pool[1]) {
                double[] before = pools.remove(pools.size() - 1);
                double count = before[2] + pool[2];
                pool[0] = (before[0] * before[2] + pool[0] * pool[2]) / count;
                pool[1] = (before[1] * before[2] + pool[1] * pool[2]) / count;
                pool[2] = count;
            }
            pools.add(pool);
        }
        double[] coverages = pools.stream().mapToDouble(pool -> pool[0]).toArray();
        double[] lightnesses = pools.stream().mapToDouble(pool -> pool[1]).toArray();
        double moved = 0;
        int at = 0;
        for (double[] pool : pools) {
            for (int k = 0; k < pool[2]; k++, at++) {
                moved = Math.max(moved, Math.abs(run.get(at).lightness() - pool[1]));
            }
        }
        return new FallingBranch(coverages, lightnesses, moved);
    }

    private double range() {
        return lightnesses[0] - lightnesses[lightnesses.length - 1];
    }

    /** Least coverage of the branch. */
    double least() {
        return coverages[0];
    }

    /** Greatest coverage of the branch. */
    double most() {
        return coverages[coverages.length - 1];
    }

    /** The most that pooling moved a level. */
    double smoothedBy() {
        return smoothedBy;
    }

    /** Lightness on the branch, straight between knots. */
    double lightness(double coverage) {
        return lines.value(coverage);
    }
}
