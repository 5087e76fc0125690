package greyground.plate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Where a plate prints darkest, closely enough to tell how far that moves on another plate.
 *
 * <p>Coverages a point apart about a guess, and more on the side where the print still darkens; through the three darkest goes a parabola, since
 * on a grid the step would be half the answer.
 */
public final class TurnSearch {
    /** Counts the ways in which turns were found: raise it with any change that moves one, for they are kept under it. */
    public static final int ALGORITHM = 1;

    private static final double STEP = 0.01;
    private static final int ASIDE = 4;
    private static final int BESIDE = 1;

    private TurnSearch() {}

    /**
     * The coverage that prints darkest, on all cores.
     *
     * @param about a coverage near it, 0 to 1
     */
    public static double near(VirtualPlate plate, FilmPatches patches, double about) {
        List<ToneTerms> levels = new ArrayList<>();
        int from = -ASIDE;
        int to = ASIDE;
        add(levels, plate, patches, about, from, to);
        while (true) {
            int darkest = darkest(levels);
            double first = about + (from - 1) * STEP;
            double last = about + (to + 1) * STEP;
            if (darkest < BESIDE && first >= 0) {
                add(levels, plate, patches, about, from - ASIDE, from - 1);
                from -= ASIDE;
            } else if (darkest >= levels.size() - BESIDE && last <= 1) {
                add(levels, plate, patches, about, to + 1, to + ASIDE);
                to += ASIDE;
            } else {
                return vertex(
                        levels.stream().mapToDouble(ToneTerms::coverage).toArray(),
                        levels.stream().mapToDouble(ToneTerms::lightness).toArray(),
                        darkest);
            }
        }
    }

    private static void add(
            List<ToneTerms> levels, VirtualPlate plate, FilmPatches patches, double about, int from, int to) {
        levels.addAll(IntStream.rangeClosed(from, to)
                .mapToObj(i -> about + i * STEP)
                .filter(coverage -> coverage >= 0 && coverage <= 1)
                .toList()
                .parallelStream()
                .map(coverage -> VirtualResponse.level(plate, patches, coverage))
                .toList());
        levels.sort(Comparator.comparingDouble(ToneTerms::coverage));
    }

    private static int darkest(List<ToneTerms> levels) {
        int least = 0;
        for (int i = 1; i < levels.size(); i++) {
            least = levels.get(i).lightness() < levels.get(least).lightness() ? i : least;
        }
        return least;
    }

    /** Where the parabola through the least of the values and its neighbours is least; the least itself at either end. */
    static double vertex(double[] at, double[] values, int least) {
        if (least == 0 || least == values.length - 1) {
            return at[least];
        }
        double before = (values[least] - values[least - 1]) / (at[least] - at[least - 1]);
        double after = (values[least + 1] - values[least]) / (at[least + 1] - at[least]);
        double bend = (after - before) / (at[least + 1] - at[least - 1]);
        // Slope of Newton's form at the middle of the first two, and from there to where it is nothing.
        double vertex = (at[least - 1] + at[least]) / 2 - before / (2 * bend);
        return bend > 0 ? Math.max(at[least - 1], Math.min(at[least + 1], vertex)) : at[least];
    }
}
