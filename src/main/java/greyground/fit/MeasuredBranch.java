package greyground.fit;

import greyground.quantity.Refusal;
import greyground.tone.Confidence;
import greyground.tone.IsotonicFit;
import greyground.tone.MonotoneCubic;
import java.util.ArrayList;
import java.util.List;

/**
 * The part of a measured response on which lightness falls strictly: the rule of the virtual plate's falling branch, with the
 * readings' own errors.
 *
 * <p>A branch ends at its darkest level so far as soon as a later level is lighter than that by more than the 95 % half-width of
 * their difference and a fifth of a unit of L*, less than the eye sees; of several branches the one with the widest range is
 * used. Lesser rises are pooled by {@link IsotonicFit}, each level weighted by repeats over variance, and a pool stands as one
 * knot at its mean coverage, so that no flat stretch is left. At the light end, levels that can't be told from bare paper become
 * one knot at the last of them; a jump down from it of more than 3 L* between levels closer than 1/64 is a gap. Between clear film and the
 * first tint no tint was seen to print as bare paper, so a jump there is no gap: the curve goes on to clear film.
 *
 * @param curve lightness over coverage, strictly falling
 * @param bareLightness L* of bare paper
 * @param pooledShare share of the levels that the longest pool took
 * @param turn where the print is darkest
 */
record MeasuredBranch(MonotoneCubic curve, double bareLightness, double pooledShare, MeasuredTurn turn) {
    // Assumed, as for the virtual plate's branch; a test plate has fewer levels, so its gap may be wider.
    private static final double REAL_RISE = 0.2;
    private static final double BARE = 0.25;
    private static final double GAP = 3;
    private static final double GAP_WIDTH = 1.0 / 64;
    private static final double LEAST_RANGE = 1;

    /** Below this a level's error is taken as this, so that a level without any spread doesn't outweigh all others. */
    private static final double LEAST_ERROR = 0.02;

    /** The lightest tone stands this far below paper, so that white keeps the film clear. */
    private static final double BELOW_BARE = 0.01;

    /** Finds the branch. {@code levels} are in order of coverage. */
    static MeasuredBranch widest(List<MeasuredLevel> levels) {
        int[] best = {0, 0};
        int from = 0;
        int darkest = 0;
        for (int i = 1; i <= levels.size(); i++) {
            boolean ends = i == levels.size() || rises(levels.get(darkest), levels.get(i));
            if (ends) {
                if (range(levels, from, darkest) > range(levels, best[0], best[1])) {
                    best = new int[] {from, darkest};
                }
                from = i;
                darkest = i;
            } else if (levels.get(i).lightness() < levels.get(darkest).lightness()) {
                darkest = i;
            }
        }
        double range = range(levels, best[0], best[1]);
        if (range < LEAST_RANGE) {
            throw Refusal.use("no patch of the test plate prints more than " + Refusal.plain(Math.max(0, range))
                    + " L* darker than a lighter patch; at least 1 is needed: check that it is the right print");
        }
        return of(levels, best[0], best[1]);
    }

    private static double range(List<MeasuredLevel> levels, int from, int to) {
        return levels.get(from).lightness() - levels.get(to).lightness();
    }

    private static boolean rises(MeasuredLevel from, MeasuredLevel to) {
        return to.lightness() - from.lightness() > Math.max(REAL_RISE, halfWidth(from, to));
    }

    /** Of the difference of two levels at 95 %. */
    private static double halfWidth(MeasuredLevel one, MeasuredLevel other) {
        int degrees = Math.max(1, Math.min(one.degrees(), other.degrees()));
        return Confidence.quantile(0.95, degrees) * StrictMath.hypot(one.standardError(), other.standardError());
    }

    private static MeasuredBranch of(List<MeasuredLevel> levels, int from, int darkest) {
        List<MeasuredLevel> run = levels.subList(from, darkest + 1);
        int first = 0;
        while (first + 1 < run.size() - 1 && isBare(run.get(0), run.get(first + 1))) {
            first++;
        }
        double bare = mean(run.subList(0, first + 1));
        List<MeasuredLevel> used = new ArrayList<>();
        MeasuredLevel last = run.get(first);
        MeasuredLevel next = run.get(first + 1);
        boolean jump = last.coverage() > 0
                && bare - next.lightness() > GAP
                && next.coverage() - last.coverage() <= GAP_WIDTH + 1e-9;
        if (!jump || first + 2 >= run.size()) {
            double lightness = last.coverage() > 0 ? bare - BELOW_BARE : bare;
            used.add(new MeasuredLevel(
                    last.coverage(),
                    lightness,
                    (first + 1) * last.repeats(),
                    last.standardDeviation(),
                    last.degrees()));
        }
        used.addAll(run.subList(first + 1, run.size()));
        double[] readings = used.stream().mapToDouble(MeasuredLevel::lightness).toArray();
        double[] weights = used.stream().mapToDouble(MeasuredBranch::weight).toArray();
        IsotonicFit fit = IsotonicFit.falling(readings, weights);
        MonotoneCubic curve = curve(used, fit.fitted(), weights);
        double paper = curve.place(0) > 0 ? Math.max(bare, curve.pointValue(0) + BELOW_BARE) : curve.pointValue(0);
        return new MeasuredBranch(curve, paper, fit.longestPooledShare(), turn(levels, from + run.size() - 1));
    }

    private static boolean isBare(MeasuredLevel paper, MeasuredLevel level) {
        return level.lightness() >= paper.lightness() - Math.max(BARE, halfWidth(paper, level));
    }

    private static double mean(List<MeasuredLevel> levels) {
        double sum = 0;
        double weight = 0;
        for (MeasuredLevel level : levels) {
            sum += level.lightness() * weight(level);
            weight += weight(level);
        }
        return sum / weight;
    }

    private static double weight(MeasuredLevel level) {
        double error = Math.max(LEAST_ERROR, level.standardError());
        return 1 / (error * error);
    }

    private static MonotoneCubic curve(List<MeasuredLevel> levels, double[] fitted, double[] weights) {
        List<double[]> knots = new ArrayList<>();
        int from = 0;
        while (from < fitted.length) {
            int to = from;
            double weight = 0;
            double place = 0;
            while (to < fitted.length && fitted[to] == fitted[from]) {
                weight += weights[to];
                place += weights[to] * levels.get(to).coverage();
                to++;
            }
            knots.add(new double[] {place / weight, fitted[from]});
            from = to;
        }
        if (knots.size() < 2) {
            throw Refusal.use("the test plate's patches give " + knots.size()
                    + " tone; at least 2 that differ are needed: measure more patches");
        }
        return MonotoneCubic.fritschButland(
                knots.stream().mapToDouble(knot -> knot[0]).toArray(),
                knots.stream().mapToDouble(knot -> knot[1]).toArray());
    }

    /** The darkest level and every level beside it, without a break, that can't be told from it. */
    private static MeasuredTurn turn(List<MeasuredLevel> levels, int darkest) {
        int low = darkest;
        int high = darkest;
        while (low > 0 && !rises(levels.get(darkest), levels.get(low))) {
            low--;
        }
        while (high < levels.size() - 1 && !rises(levels.get(darkest), levels.get(high))) {
            high++;
        }
        boolean seen = rises(levels.get(darkest), levels.get(high));
        return new MeasuredTurn(
                seen,
                levels.get(darkest).coverage(),
                levels.get(low).coverage(),
                levels.get(high).coverage());
    }

    double least() {
        return curve.place(0);
    }

    double most() {
        return curve.place(curve.size() - 1);
    }

    double darkestLightness() {
        return curve.pointValue(curve.size() - 1);
    }
}
