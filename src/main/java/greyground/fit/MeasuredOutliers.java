package greyground.fit;

import greyground.tone.Confidence;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Which readings disagree with their own repeats more than chance explains: the generalized extreme Studentized deviate test
 * (Rosner 1983, Technometrics 25, 165-172) at 5 %.
 *
 * <p>The reading farthest out is taken away, the rest fitted again, and so on to a tenth of the readings; the last step whose
 * deviate exceeds its critical value counts, and all taken up to it are outliers, so two outliers can't hide each other. Here
 * the deviates are from the mean of a reading's level and not from one common mean: each residual is divided by its own standard
 * deviation as estimated without it, and held against Student's t at 5 % shared among the readings left. For one level this is
 * Rosner's test exactly. A level is never left with fewer than two readings: of two that disagree none can be named.
 *
 * <p>Where tones are steep, as where lands give way, readings spread more in earnest. So a reading is named only if it also stands out
 * where residuals are measured by the spread of its own level and its two neighbours on either side, where that is above the plate's. Both are medians of absolute residuals over
 * 0.6745, which an outlier hardly moves (Hampel 1974, from memory), each residual over {@code sqrt(1 - leverage)}. No level is held to
 * less than what {@value #WANDERING} of coverage at its middle does on its steeper side.
 */
final class MeasuredOutliers {
    private static final double LEVEL = 0.05;
    private static final int LARGEST_SHARE = 10;
    private static final int NEIGHBOURS = 2;

    /** Coverage of a middle tone that edges wandering from field to field make or take (assumed: 0.3 um on dots 180 um apart). */
    private static final double WANDERING = 0.005;

    /** Median of the size of a normal deviate. */
    private static final double NORMAL_MEDIAN = 0.6745;

    /**
     * One step.
     *
     * @param patch taken away
     * @param deviate its externally Studentized residual, absolute
     * @param critical value at 5 %
     * @param degrees degrees of freedom of the deviate
     */
    record Step(MeasuredPatch patch, double deviate, double critical, int degrees) {}

    private MeasuredOutliers() {}

    /** The readings without outliers. {@code patches} and {@code terms} as for {@link MeasuredResiduals#of}. */
    static List<MeasuredPatch> kept(List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> terms) {
        List<MeasuredPatch> even = evened(patches, terms);
        Set<Integer> near = outliers(even, terms);
        Set<Integer> outliers = outliers(patches, terms);
        outliers.retainAll(near);
        return IntStream.range(0, patches.size())
                .filter(i -> !outliers.contains(i))
                .mapToObj(patches::get)
                .toList();
    }

    /** Places in the list of those that the test names. */
    private static Set<Integer> outliers(List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> terms) {
        List<Step> steps = steps(patches, terms, Math.max(1, patches.size() / LARGEST_SHARE));
        int last = 0;
        for (int i = 0; i < steps.size(); i++) {
            last = steps.get(i).deviate() > steps.get(i).critical() ? i + 1 : last;
        }
        Set<MeasuredPatch> named = Collections.newSetFromMap(new IdentityHashMap<>());
        steps.subList(0, last).forEach(step -> named.add(step.patch()));
        return IntStream.range(0, patches.size())
                .filter(i -> named.contains(patches.get(i)))
                .boxed()
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** The same readings with less weight where their neighbourhood spreads more than the plate does. */
    static List<MeasuredPatch> evened(List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> terms) {
        MeasuredResiduals fit = MeasuredResiduals.of(patches, terms);
        double[] levels =
                patches.stream().mapToDouble(MeasuredPatch::coverage).distinct().toArray();
        double plate = spread(patches, fit, 0, 1);
        List<MeasuredPatch> even = new ArrayList<>();
        int level = 0;
        for (MeasuredPatch patch : patches) {
            level = patch.coverage() == levels[level] ? level : level + 1;
            double near = spread(
                    patches,
                    fit,
                    levels[Math.max(0, level - NEIGHBOURS)],
                    levels[Math.min(levels.length - 1, level + NEIGHBOURS)]);
            double steep = steepness(patches, levels, level)
                    * WANDERING
                    * 2
                    * Math.sqrt(patch.coverage() * (1 - patch.coverage()));
            double times = plate > 0 ? Math.max(1, Math.max(near, steep) / plate) : 1;
            even.add(new MeasuredPatch(
                    patch.coverage(),
                    patch.lightness(),
                    patch.xMillimetres(),
                    patch.yMillimetres(),
                    patch.weight() / (times * times)));
        }
        return even;
    }

    /** L* for a share of coverage to a level's neighbours, the greater, by medians. */
    private static double steepness(List<MeasuredPatch> patches, double[] levels, int level) {
        double steepest = 0;
        double here = median(patches, levels[level]);
        for (int other : new int[] {level - 1, level + 1}) {
            if (other >= 0 && other < levels.length) {
                double rise = Math.abs(median(patches, levels[other]) - here);
                steepest = Math.max(steepest, rise / Math.abs(levels[other] - levels[level]));
            }
        }
        return steepest;
    }

    private static double median(List<MeasuredPatch> patches, double coverage) {
        return median(patches.stream()
                .filter(patch -> patch.coverage() == coverage)
                .mapToDouble(MeasuredPatch::lightness)
                .sorted()
                .toArray());
    }

    private static double median(double[] sorted) {
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    /** Of readings between two coverages about their levels' means, resistant; 0 where no level has two. */
    private static double spread(List<MeasuredPatch> patches, MeasuredResiduals fit, double from, double to) {
        double[] sizes = IntStream.range(0, patches.size())
                .filter(i -> patches.get(i).coverage() >= from && patches.get(i).coverage() <= to)
                .filter(i -> fit.leverage().getEntry(i) < 1 - 1e-9)
                .mapToDouble(i -> Math.abs(fit.scaled().getEntry(i))
                        / Math.sqrt(1 - fit.leverage().getEntry(i)))
                .sorted()
                .toArray();
        return sizes.length == 0 ? 0 : median(sizes) / NORMAL_MEDIAN;
    }

    /** Every step taken, up to {@code most}. */
    static List<Step> steps(List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> terms, int most) {
        List<MeasuredPatch> left = new ArrayList<>(patches);
        List<Step> steps = new ArrayList<>();
        while (steps.size() < most) {
            MeasuredResiduals fit = MeasuredResiduals.of(left, terms);
            int degrees = fit.degrees() - 1;
            if (degrees < 1 || !(fit.sum() > 0)) {
                break;
            }
            int farthest = -1;
            double largest = 0;
            for (int i = 0; i < left.size(); i++) {
                double deviate = repeats(left, left.get(i).coverage()) > 2 ? deviate(fit, i) : 0;
                if (deviate > largest) {
                    largest = deviate;
                    farthest = i;
                }
            }
            if (farthest < 0) {
                break;
            }
            double critical = Confidence.quantile(1 - LEVEL / left.size(), degrees);
            steps.add(new Step(left.remove(farthest), largest, critical, degrees));
        }
        return steps;
    }

    /** {@code r sqrt((v - 1) / (v - r^2))}, r the residual over its own standard deviation, v degrees of freedom. */
    private static double deviate(MeasuredResiduals fit, int patch) {
        int degrees = fit.degrees();
        double variance =
                fit.sum() / degrees * Math.max(1e-12, 1 - fit.leverage().getEntry(patch));
        double residual = fit.scaled().getEntry(patch);
        double square = residual * residual / variance;
        return square < degrees ? Math.sqrt(square * (degrees - 1) / (degrees - square)) : Double.MAX_VALUE;
    }

    private static long repeats(List<MeasuredPatch> patches, double coverage) {
        return patches.stream().filter(patch -> patch.coverage() == coverage).count();
    }
}
