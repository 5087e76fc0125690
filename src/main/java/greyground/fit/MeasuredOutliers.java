package greyground.fit;

import greyground.tone.Confidence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Which readings disagree with their own repeats more than chance explains: the generalized extreme Studentized deviate test
 * (Rosner 1983, Technometrics 25, 165-172) at 5 %.
 *
 * <p>The reading farthest out is taken away, the rest fitted again, and so on to a tenth of the readings; the last step whose
 * deviate exceeds its critical value counts, and all taken up to it are outliers, so two outliers can't hide each other. Here
 * the deviates are from the mean of a reading's level and not from one common mean: each residual is divided by its own standard
 * deviation as estimated without it, and held against Student's t at 5 % shared among the readings left. For one level this is
 * Rosner's test exactly. A level is never left with fewer than two readings: of two that disagree none can be named.
 */
final class MeasuredOutliers {
    private static final double LEVEL = 0.05;
    private static final int LARGEST_SHARE = 10;

    /**
     * One step.
     *
     * @param patch taken away
     * @param deviate its externally Studentized residual, absolute
     * @param critical value at 5 %
     * @param degrees degrees of freedom of the deviate
     */
    record Step(int patch, double deviate, double critical, int degrees) {}

    private MeasuredOutliers() {}

    /** False for outliers. {@code patches} and {@code terms} as for {@link MeasuredResiduals#of}. */
    static boolean[] kept(List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> terms) {
        List<Step> steps = steps(patches, terms, Math.max(1, patches.size() / LARGEST_SHARE));
        int last = 0;
        for (int i = 0; i < steps.size(); i++) {
            last = steps.get(i).deviate() > steps.get(i).critical() ? i + 1 : last;
        }
        boolean[] kept = new boolean[patches.size()];
        Arrays.fill(kept, true);
        for (Step step : steps.subList(0, last)) {
            kept[step.patch()] = false;
        }
        return kept;
    }

    /** Every step taken, up to {@code most}. */
    static List<Step> steps(List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> terms, int most) {
        boolean[] kept = new boolean[patches.size()];
        Arrays.fill(kept, true);
        List<Step> steps = new ArrayList<>();
        int left = patches.size();
        while (steps.size() < most) {
            MeasuredResiduals fit = MeasuredResiduals.of(patches, kept, terms);
            int degrees = fit.degrees() - 1;
            if (degrees < 1 || !(fit.sum() > 0)) {
                break;
            }
            int farthest = -1;
            double largest = 0;
            for (int i = 0; i < kept.length; i++) {
                if (kept[i] && repeats(patches, kept, i) > 2) {
                    double deviate = deviate(fit, i);
                    if (deviate > largest) {
                        largest = deviate;
                        farthest = i;
                    }
                }
            }
            if (farthest < 0) {
                break;
            }
            steps.add(new Step(farthest, largest, Confidence.quantile(1 - LEVEL / left, degrees), degrees));
            kept[farthest] = false;
            left--;
        }
        return steps;
    }

    /** {@code r sqrt((v - 1) / (v - r^2))}, r the residual over its own standard deviation, v degrees of freedom. */
    private static double deviate(MeasuredResiduals fit, int patch) {
        double variance = fit.sum() / fit.degrees() * Math.max(1e-12, 1 - fit.leverage(patch));
        double residual = fit.residual(patch) * fit.rootWeight(patch);
        double square = residual * residual / variance;
        int degrees = fit.degrees();
        return square < degrees ? Math.sqrt(square * (degrees - 1) / (degrees - square)) : Double.MAX_VALUE;
    }

    private static int repeats(List<MeasuredPatch> patches, boolean[] kept, int patch) {
        int count = 0;
        for (int i = 0; i < kept.length; i++) {
            count += kept[i] && patches.get(i).coverage() == patches.get(patch).coverage() ? 1 : 0;
        }
        return count;
    }
}
