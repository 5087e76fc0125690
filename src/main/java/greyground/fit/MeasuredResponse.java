package greyground.fit;

import greyground.plate.PrintableRange;
import greyground.quantity.Refusal;
import greyground.tone.Confidence;
import greyground.tone.PlateResponse;
import greyground.tone.StraightLines;
import greyground.tone.UsableCoverage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.DoubleStream;

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
    private final StraightLines past;
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
        List<MeasuredLevel> later = levels.stream()
                .filter(level -> level.coverage() > branch.most())
                .toList();
        this.past = new StraightLines(
                DoubleStream.concat(
                                DoubleStream.of(branch.most()), later.stream().mapToDouble(MeasuredLevel::coverage))
                        .toArray(),
                DoubleStream.concat(
                                DoubleStream.of(branch.darkestLightness()),
                                later.stream().mapToDouble(MeasuredLevel::lightness))
                        .toArray());
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
        // Outliers are sought beside the drift that the rest prove, since a drift widens the spread that hides them.
        List<MeasuredPatch> once =
                MeasuredOutliers.kept(sorted, MeasuredTrend.of(sorted).terms());
        List<MeasuredPatch> kept =
                MeasuredOutliers.kept(sorted, MeasuredTrend.of(once).terms());
        MeasuredTrend.Found drift = MeasuredTrend.of(kept);
        MeasuredResiduals fit = MeasuredResiduals.of(kept, drift.terms());
        List<MeasuredPatch> outliers = new ArrayList<>(sorted);
        kept.forEach(outliers::remove);
        return new MeasuredResponse(
                name,
                levels(kept, drift, fit),
                outliers,
                drift.trend(),
                MeasuredBands.of(kept, drift.terms()),
                fit.degrees() > 0);
    }

    /**
     * A response measured before, from its levels as {@link #levels} told them; its drift, bands and outliers are past.
     *
     * @param name for legends
     * @param levels in order of coverage, from 0
     */
    public static MeasuredResponse kept(String name, List<MeasuredLevel> levels) {
        return new MeasuredResponse(name, levels, List.of(), MeasuredTrend.NONE, Optional.empty(), true);
    }

    /** The repeats of one coverage: mean, effective number, sum of squares and its degrees of freedom. */
    private record Repeats(double coverage, double mean, double number, double squares, int degrees) {}

    private static List<MeasuredLevel> levels(
            List<MeasuredPatch> kept, MeasuredTrend.Found drift, MeasuredResiduals fit) {
        double middle = kept.stream().mapToDouble(drift::at).sum() / kept.size();
        TreeMap<Double, List<Integer>> places = new TreeMap<>();
        for (int i = 0; i < kept.size(); i++) {
            places.computeIfAbsent(kept.get(i).coverage(), none -> new ArrayList<>())
                    .add(i);
        }
        List<Repeats> all = new ArrayList<>();
        places.forEach((coverage, same) -> {
            double weight = 0;
            double weights = 0;
            double mean = 0;
            double squares = 0;
            for (int i : same) {
                MeasuredPatch patch = kept.get(i);
                weight += patch.weight();
                weights += patch.weight() * patch.weight();
                mean += patch.weight() * (patch.lightness() - drift.at(patch) + middle);
                squares += fit.scaled().getEntry(i) * fit.scaled().getEntry(i);
            }
            all.add(new Repeats(coverage, mean / weight, weight * weight / weights, squares, same.size() - 1));
        });
        List<MeasuredLevel> levels = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            List<Repeats> near = all.subList(Math.max(0, i - NEIGHBOURS), Math.min(all.size(), i + NEIGHBOURS + 1));
            int own = near.stream().mapToInt(Repeats::degrees).sum();
            int used = own > 1 ? own : fit.degrees() > 0 ? fit.degrees() : ASSUMED_DEGREES;
            double variance = own > 1
                    ? near.stream().mapToDouble(Repeats::squares).sum() / own
                    : fit.degrees() > 0 ? fit.sum() / fit.degrees() : UNKNOWN_SPREAD * UNKNOWN_SPREAD;
            Repeats one = all.get(i);
            levels.add(new MeasuredLevel(one.coverage(), one.mean(), one.number(), Math.sqrt(variance), used));
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
        return coverage < branch.least() ? branch.bareLightness() : past.value(coverage);
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
        return new PrintableRange(branch.bareLightness(), branch.curve().pointValue(0), branch.darkestLightness());
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
