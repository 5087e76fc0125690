package greyground.fit;

import greyground.tone.Confidence;
import java.util.ArrayList;
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
    record Step(MeasuredPatch patch, double deviate, double critical, int degrees) {}

    private MeasuredOutliers() {}

    /** The readings without outliers. {@code patches} and {@code terms} as for {@link MeasuredResiduals#of}. */
    static List<MeasuredPatch> kept(List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> terms) {
        List<Step> steps = steps(patches, terms, Math.max(1, patches.size() / LARGEST_SHARE));
        int last = 0;
        for (int i = 0; i < steps.size(); i++) {
            last = steps.get(i).deviate() > steps.get(i).critical() ? i + 1 : last;
        }
        List<MeasuredPatch> kept = new ArrayList<>(patches);
        steps.subList(0, last).forEach(step -> kept.remove(step.patch()));
        return kept;
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
