package greyground.plate;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.TreeMap;

/**
 * Where a plate prints darkest, closely enough to tell how far that moves on another plate.
 *
 * <p>Coverages a point apart about a guess, and more on the side where the print still darkens, of which those are left out that lie between two
 * clearly paler ones; through the three darkest goes a parabola, since on a grid the step would be half the answer.
 */
public final class TurnSearch {
    /** Counts the ways in which turns were found: raise it with any change that moves one, for they are kept under it. */
    public static final int ALGORITHM = 1;

    private static final double STEP = 0.01;
    private static final int ASIDE = 4;

    /** By more than this in L*, no tone lies below both that are beside it: some twice what the grain's own unevenness does (measured). */
    private static final double CLEARLY = 0.05;

    private final VirtualPlate plate;
    private final FilmPatches patches;
    private final double about;
    private final NavigableMap<Integer, ToneTerms> levels = new TreeMap<>();

    private TurnSearch(VirtualPlate plate, FilmPatches patches, double about) {
        this.plate = plate;
        this.patches = patches;
        this.about = about;
    }

    /**
     * The coverage that prints darkest, on all cores.
     *
     * @param about a coverage near it, 0 to 1
     */
    public static double near(VirtualPlate plate, FilmPatches patches, double about) {
        return new TurnSearch(plate, patches, about).turn();
    }

    private double turn() {
        int from = -ASIDE;
        int to = ASIDE;
        compute(List.of(from, 0, to));
        while (true) {
            for (List<Integer> between = between(); !between.isEmpty(); between = between()) {
                compute(between);
            }
            int darkest = darkest();
            if (darkest == levels.firstKey() && exists(from - 1)) {
                compute(List.of(from - ASIDE));
                from -= ASIDE;
            } else if (darkest == levels.lastKey() && exists(to + 1)) {
                compute(List.of(to + ASIDE));
                to += ASIDE;
            } else {
                List<ToneTerms> sorted = levels.values().stream()
                        .sorted(Comparator.comparingDouble(ToneTerms::coverage))
                        .toList();
                return vertex(
                        sorted.stream().mapToDouble(ToneTerms::coverage).toArray(),
                        sorted.stream().mapToDouble(ToneTerms::lightness).toArray(),
                        sorted.indexOf(levels.get(darkest)));
            }
        }
    }

    /** Computes steps from the guess; one past an end of all coverages stands for the last before it. */
    private void compute(List<Integer> steps) {
        steps.stream().map(this::nearest).filter(step -> !levels.containsKey(step)).distinct().toList().parallelStream()
                .map(step -> Map.entry(step, VirtualResponse.level(plate, patches, coverage(step))))
                .toList()
                .forEach(level -> levels.put(level.getKey(), level.getValue()));
    }

    private int nearest(int step) {
        int nearest = step;
        while (!exists(nearest)) {
            nearest -= Integer.signum(nearest);
        }
        return nearest;
    }

    private boolean exists(int step) {
        return coverage(step) >= 0 && coverage(step) <= 1;
    }

    private double coverage(int step) {
        return about + step * STEP;
    }

    /** Steps half way between two that are not both clearly paler than the darkest. */
    private List<Integer> between() {
        double paler = lightness(darkest()) + CLEARLY;
        List<Integer> between = new ArrayList<>();
        for (int left : levels.headMap(levels.lastKey()).keySet()) {
            int right = levels.higherKey(left);
            if (right - left > 1 && Math.min(lightness(left), lightness(right)) <= paler) {
                between.add((left + right) / 2);
            }
        }
        return between;
    }

    private int darkest() {
        return Collections.min(levels.keySet(), Comparator.comparingDouble(this::lightness));
    }

    private double lightness(int step) {
        return Objects.requireNonNull(levels.get(step)).lightness();
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
