package greyground.plate;

import greyground.quantity.Refusal;
import greyground.tone.PlateResponse;
import greyground.tone.StraightLines;
import greyground.tone.UsableCoverage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The response that a {@link VirtualPlate} predicts for the job's own film, from plates computed at a few dozen coverages.
 *
 * <p>The first seventeen are evenly spaced; the rest halve, four at a time, whichever steps of lightness are largest and
 * the two steps beside the darkest tone; at last these two are halved twice more. So gaps and the turning point are found closely. Nothing changes once it is
 * built.
 */
public final class VirtualResponse implements PlateResponse {
    /** Fewest coverages that may be computed. */
    public static final int FEWEST_LEVELS = 33;

    /** Counts the ways in which plates have been computed: raise it with any change that moves a tone, for responses are kept under it. */
    public static final int ALGORITHM = 1;

    private static final int FIRST_STEPS = 16;
    private static final int ROUND = 4;
    private static final int CLOSING_ROUNDS = 2;
    private static final double NARROWEST_STEP = 1.0 / 512;

    private final VirtualPlate plate;
    private final FilmPatches patches;
    private final int count;
    private final List<ToneTerms> levels;
    private final StraightLines lines;
    private final FallingBranch branch;

    private VirtualResponse(VirtualPlate plate, FilmPatches patches, int count, List<ToneTerms> levels) {
        this.plate = plate;
        this.patches = patches;
        this.count = count;
        this.levels = List.copyOf(levels);
        this.lines = new StraightLines(
                levels.stream().mapToDouble(ToneTerms::coverage).toArray(),
                levels.stream().mapToDouble(ToneTerms::lightness).toArray());
        this.branch = FallingBranch.widest(levels);
    }

    /** Computes the response at {@link #FEWEST_LEVELS} coverages, on all cores. */
    public static VirtualResponse of(VirtualPlate plate, FilmPatches patches) {
        return of(plate, patches, FEWEST_LEVELS);
    }

    /**
     * Computes the response.
     *
     * @param count coverages to compute, 33 to 1025; up to four more close in on the turning point
     * @throws Refusal if no coverage prints darker than bare paper
     */
    public static VirtualResponse of(VirtualPlate plate, FilmPatches patches, int count) {
        Refusal.checkRange("coverages of the response", count, FEWEST_LEVELS, 1025, "", "33 is usual");
        List<Double> first = IntStream.rangeClosed(0, FIRST_STEPS)
                .mapToObj(i -> (double) i / FIRST_STEPS)
                .toList();
        List<ToneTerms> levels = new ArrayList<>();
        addTo(levels, compute(plate, patches, first));
        while (levels.size() < count) {
            List<Double> more = middles(levels, Math.min(ROUND, count - levels.size()));
            if (more.isEmpty()) {
                break;
            }
            if (!addTo(levels, compute(plate, patches, more))) {
                break;
            }
        }
        for (int round = 0; round < CLOSING_ROUNDS; round++) {
            addTo(levels, compute(plate, patches, besideDarkest(levels)));
        }
        return new VirtualResponse(plate, patches, count, levels);
    }

    /**
     * A response computed before.
     *
     * @param count coverages it was asked for
     * @param levels as {@link #levels} told them, for the same plate and patches
     */
    public static VirtualResponse kept(VirtualPlate plate, FilmPatches patches, int count, List<ToneTerms> levels) {
        return new VirtualResponse(plate, patches, count, levels);
    }

    private static List<ToneTerms> compute(VirtualPlate plate, FilmPatches patches, List<Double> coverages) {
        return coverages.parallelStream()
                .map(coverage -> level(plate, patches, coverage))
                .toList();
    }

    /** One tone; a cut piece has a little more or less black than the whole film, and its lightness belongs to its own. */
    static ToneTerms level(VirtualPlate plate, FilmPatches patches, double coverage) {
        FilmPatch patch = patches.at(coverage);
        boolean cut = patch.isBits() && patch.isTapered();
        return plate.terms(cut ? patch.coverage() : coverage, patch);
    }

    /** Adds those whose coverage is new, in order; a coarse screen has no dots in between. */
    private static boolean addTo(List<ToneTerms> levels, List<ToneTerms> more) {
        boolean added = false;
        for (ToneTerms one : more) {
            if (levels.stream().noneMatch(level -> level.coverage() == one.coverage())) {
                added |= levels.add(one);
            }
        }
        levels.sort(Comparator.comparingDouble(ToneTerms::coverage));
        return added;
    }

    private static List<Double> middles(List<ToneTerms> levels, int count) {
        int darkest = darkest(levels);
        // Halving a step halves its claim; beside the darkest tone a sixteenth counts as eight units.
        return IntStream.range(0, levels.size() - 1)
                .boxed()
                .filter(i -> width(levels, i) > NARROWEST_STEP)
                .sorted(Comparator.comparingDouble(i -> -claim(levels, i, darkest)))
                .limit(count)
                .map(i -> (levels.get(i).coverage() + levels.get(i + 1).coverage()) / 2)
                .toList();
    }

    /** Middles of the steps on either side of the darkest level, which close in on the turning point. */
    private static List<Double> besideDarkest(List<ToneTerms> levels) {
        int darkest = darkest(levels);
        return IntStream.of(darkest - 1, darkest)
                .filter(i -> i >= 0 && i + 1 < levels.size() && width(levels, i) > NARROWEST_STEP)
                .mapToObj(i -> (levels.get(i).coverage() + levels.get(i + 1).coverage()) / 2)
                .toList();
    }

    private static int darkest(List<ToneTerms> levels) {
        return IntStream.range(0, levels.size())
                .boxed()
                .min(Comparator.comparingDouble(i -> levels.get(i).lightness()))
                .orElseThrow();
    }

    private static double claim(List<ToneTerms> levels, int i, int darkest) {
        double step = Math.abs(levels.get(i).lightness() - levels.get(i + 1).lightness());
        boolean beside = i == darkest || i + 1 == darkest;
        return beside ? Math.max(step, 128 * width(levels, i)) : step;
    }

    private static double width(List<ToneTerms> levels, int i) {
        return levels.get(i + 1).coverage() - levels.get(i).coverage();
    }

    /**
     * {@inheritDoc}
     *
     * <p>On the usable interval it is the smoothed branch, straight between levels; elsewhere the levels themselves.
     */
    @Override
    public double lightness(double coverage) {
        Refusal.checkRange("film coverage", coverage, 0, 1, "", "0 is clear film and 1 solid black");
        if (coverage >= branch.least() && coverage <= branch.most()) {
            return branch.lightness(coverage);
        }
        return lines.value(coverage);
    }

    @Override
    public UsableCoverage usable() {
        return new UsableCoverage(branch.least(), branch.most());
    }

    @Override
    public String name() {
        return "virtual plate, " + plate.conditions().wellsName();
    }

    /** Coverage past which more black prints paler, a*; 1 where none does. */
    public double turningPoint() {
        return branch.most();
    }

    /** The tones it can print. */
    public PrintableRange printableRange() {
        return new PrintableRange(
                levels.get(0).lightness(), branch.lightness(branch.least()), branch.lightness(branch.most()));
    }

    /** The most that smoothing moved any level, in L*. */
    public double smoothedBy() {
        return branch.smoothedBy();
    }

    /** Every coverage computed, in order, each explained. */
    public List<ToneTerms> levels() {
        return levels;
    }

    /** Explains any one tone, computed afresh. */
    public ToneTerms explain(double coverage) {
        return plate.terms(coverage, patches.at(coverage));
    }

    /** Names everything that decides this response, for keeping it: equal digests mean equal responses. */
    public String digest() {
        return digest(plate, patches, count);
    }

    /** The digest of a response not yet computed. */
    public static String digest(VirtualPlate plate, FilmPatches patches, int count) {
        return plate.digest(patches.name() + "\n" + count);
    }
}
