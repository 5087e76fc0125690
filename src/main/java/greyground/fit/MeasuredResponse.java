package greyground.fit;

import greyground.plate.PrintableRange;
import greyground.quantity.Refusal;
import greyground.tone.Confidence;
import greyground.tone.MonotoneCubic;
import greyground.tone.PlateResponse;
import greyground.tone.StraightLines;
import greyground.tone.UsableCoverage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The response of a plate that was printed and measured.
 *
 * <p>In order: readings that their own repeats contradict are left out ({@link MeasuredOutliers}); a drift across the plate is
 * taken out where the readings prove one ({@link MeasuredTrend}); repeats become levels; levels become a falling curve
 * ({@link MeasuredBranch}): isotonic fit, then the monotone cubic of Fritsch and Butland. Bands are told and not taken out.
 * The order of the patches and a common factor in their weights change nothing. Nothing changes once it is built.
 */
public final class MeasuredResponse implements PlateResponse {
    /** Fewest coverages of a response. */
    public static final int FEWEST_LEVELS = 5;

    /** Spread of one reading when no level was read twice; assumed, common for a flatbed scan of textured paper. */
    private static final double UNKNOWN_SPREAD = 0.7;

    // Assumed: levels on either side that lend their spread to one without repeats, and its degrees of freedom.
    private static final int NEIGHBOURS = 2;
    private static final int ASSUMED_DEGREES = 30;

    private final String name;
    private final List<MeasuredLevel> levels;
    private final MeasuredBranch branch;
    private final StraightLines halfWidths;
    private final List<MeasuredPatch> outliers;
    private final MeasuredTrend trend;
    private final Optional<MeasuredBands> bands;
    private final boolean repeated;

    private MeasuredResponse(
            String name,
            List<MeasuredLevel> levels,
            List<MeasuredPatch> outliers,
            MeasuredTrend trend,
            Optional<MeasuredBands> bands,
            boolean repeated) {
        this.name = name;
        this.levels = List.copyOf(levels);
        this.branch = MeasuredBranch.widest(levels);
        this.halfWidths = new StraightLines(
                levels.stream().mapToDouble(MeasuredLevel::coverage).toArray(),
                levels.stream().mapToDouble(MeasuredResponse::halfWidth).toArray());
        this.outliers = List.copyOf(outliers);
        this.trend = trend;
        this.bands = bands;
        this.repeated = repeated;
    }

    /**
     * Fits a response.
     *
     * @param name for legends, such as "test plate of 2026-03-04"
     * @param patches in any order; five coverages or more, bare paper (coverage 0) among them, repeats as often as there are
     */
    public static MeasuredResponse of(String name, List<MeasuredPatch> patches) {
        List<MeasuredPatch> sorted = new ArrayList<>(patches);
        sorted.sort(Comparator.comparingDouble(MeasuredPatch::coverage)
                .thenComparingDouble(MeasuredPatch::xMillimetres)
                .thenComparingDouble(MeasuredPatch::yMillimetres)
                .thenComparingDouble(MeasuredPatch::lightness)
                .thenComparingDouble(MeasuredPatch::weight));
        long coverages =
                sorted.stream().mapToDouble(MeasuredPatch::coverage).distinct().count();
        if (coverages < FEWEST_LEVELS || sorted.get(0).coverage() != 0) {
            throw Refusal.use("a test plate has " + coverages + " coverages from "
                    + (sorted.isEmpty()
                            ? "nothing"
                            : Refusal.plain(sorted.get(0).coverage()))
                    + "; it needs at least 5 and bare paper (0) among them: measure more patches");
        }
        boolean[] kept = keptWithTrend(sorted);
        MeasuredTrend.Found drift = MeasuredTrend.of(sorted, kept);
        MeasuredResiduals fit = MeasuredResiduals.of(sorted, kept, drift.terms());
        Optional<MeasuredBands> bands = MeasuredBands.of(sorted, kept, drift.terms());
        List<MeasuredPatch> outliers = new ArrayList<>();
        for (int i = 0; i < kept.length; i++) {
            if (!kept[i]) {
                outliers.add(sorted.get(i));
            }
        }
        boolean repeated = fit.degrees() > 0;
        return new MeasuredResponse(name, levels(sorted, kept, drift, fit), outliers, drift.trend(), bands, repeated);
    }

    /**
     * A response measured before, from its levels as {@link #levels} told them; its drift, bands and outliers are past.
     *
     * @param name for legends
     * @param levels in order of coverage, from 0
     */
    public static MeasuredResponse kept(String name, List<MeasuredLevel> levels) {
        MeasuredTrend none = new MeasuredTrend(MeasuredTrend.Kind.NONE, 1, 0, 0, 0);
        return new MeasuredResponse(name, levels, List.of(), none, Optional.empty(), true);
    }

    /** Outliers are sought beside the drift that the rest prove, since a drift widens the spread that hides them. */
    private static boolean[] keptWithTrend(List<MeasuredPatch> sorted) {
        boolean[] all = new boolean[sorted.size()];
        Arrays.fill(all, true);
        boolean[] kept =
                MeasuredOutliers.kept(sorted, MeasuredTrend.of(sorted, all).terms());
        return MeasuredOutliers.kept(sorted, MeasuredTrend.of(sorted, kept).terms());
    }

    private static List<MeasuredLevel> levels(
            List<MeasuredPatch> sorted, boolean[] kept, MeasuredTrend.Found drift, MeasuredResiduals fit) {
        double middle = 0;
        int count = 0;
        for (int i = 0; i < kept.length; i++) {
            middle += kept[i] ? drift.at(sorted.get(i)) : 0;
            count += kept[i] ? 1 : 0;
        }
        middle /= count;
        // Of each level: coverage, mean, effective repeats, sum of squares, degrees of freedom.
        List<double[]> raw = new ArrayList<>();
        int from = 0;
        while (from < kept.length) {
            int to = from;
            double weight = 0;
            double squares = 0;
            double mean = 0;
            double spread = 0;
            int repeats = 0;
            while (to < kept.length
                    && sorted.get(to).coverage() == sorted.get(from).coverage()) {
                if (kept[to]) {
                    double each = sorted.get(to).weight();
                    weight += each;
                    squares += each * each;
                    mean += each * (sorted.get(to).lightness() - drift.at(sorted.get(to)) + middle);
                    double scaled = fit.residual(to) * fit.rootWeight(to);
                    spread += scaled * scaled;
                    repeats++;
                }
                to++;
            }
            raw.add(new double[] {
                sorted.get(from).coverage(), mean / weight, weight * weight / squares, spread, repeats - 1
            });
            from = to;
        }
        List<MeasuredLevel> levels = new ArrayList<>();
        for (int i = 0; i < raw.size(); i++) {
            double[] one = raw.get(i);
            double spread = 0;
            int degrees = 0;
            for (int k = Math.max(0, i - NEIGHBOURS); k <= Math.min(raw.size() - 1, i + NEIGHBOURS); k++) {
                spread += raw.get(k)[3];
                degrees += (int) raw.get(k)[4];
            }
            double variance = degrees > 1
                    ? spread / degrees
                    : fit.degrees() > 0 ? fit.sum() / fit.degrees() : UNKNOWN_SPREAD * UNKNOWN_SPREAD;
            int used = degrees > 1 ? degrees : fit.degrees() > 0 ? fit.degrees() : ASSUMED_DEGREES;
            levels.add(new MeasuredLevel(one[0], one[1], one[2], Math.sqrt(variance), used));
        }
        return levels;
    }

    /**
     * {@inheritDoc}
     *
     * <p>On the usable interval the fitted curve; before it bare paper; past it the levels themselves, straight between them,
     * and past the last of them its lightness.
     */
    @Override
    public double lightness(double coverage) {
        Refusal.checkRange("film coverage", coverage, 0, 1, "", "0 is clear film and 1 solid black");
        if (coverage >= branch.least() && coverage <= branch.most()) {
            return branch.curve().value(coverage);
        }
        return coverage < branch.least() ? branch.bareLightness() : beyond(coverage);
    }

    private double beyond(double coverage) {
        double before = branch.most();
        double lightness = branch.curve().pointValue(branch.curve().size() - 1);
        for (MeasuredLevel level : levels) {
            if (level.coverage() > branch.most()) {
                if (level.coverage() >= coverage) {
                    double share = (coverage - before) / (level.coverage() - before);
                    return lightness + share * (level.lightness() - lightness);
                }
                before = level.coverage();
                lightness = level.lightness();
            }
        }
        return lightness;
    }

    @Override
    public UsableCoverage usable() {
        return new UsableCoverage(branch.least(), branch.most());
    }

    @Override
    public String name() {
        return name;
    }

    /**
     * Half-width of the 95 % confidence band, pointwise: t s / sqrt(n) at each level, straight between levels. It covers the
     * readings' scatter, not an error that all readings share, such as a scanner's.
     */
    public double halfWidth(double coverage) {
        Refusal.checkRange("film coverage", coverage, 0, 1, "", "0 is clear film and 1 solid black");
        return halfWidths.value(coverage);
    }

    private static double halfWidth(MeasuredLevel level) {
        return Confidence.quantile(0.95, level.degrees()) * level.standardError();
    }

    /** The tones it was seen to print. */
    public PrintableRange printableRange() {
        MonotoneCubic curve = branch.curve();
        return new PrintableRange(branch.bareLightness(), curve.pointValue(0), curve.pointValue(curve.size() - 1));
    }

    /** Where the print is darkest. */
    public MeasuredTurn turn() {
        return branch.turn();
    }

    /** Every coverage measured, in order. */
    public List<MeasuredLevel> levels() {
        return levels;
    }

    /** Patches that their repeats contradict, left out of everything. */
    public List<MeasuredPatch> outliers() {
        return outliers;
    }

    /** Drift across the plate, taken out of the levels where there is any. */
    public MeasuredTrend trend() {
        return trend;
    }

    /** Stripes, where there are any; the levels still hold them. */
    public Optional<MeasuredBands> bands() {
        return bands;
    }

    /** Whether any level was read twice; if not, the band rests on an assumed spread of 0.7 L*. */
    public boolean repeated() {
        return repeated;
    }

    /** Share of the usable levels that the longest pool took; above 0.2 the measurement is in doubt (common practice). */
    public double pooledShare() {
        return branch.pooledShare();
    }
}
