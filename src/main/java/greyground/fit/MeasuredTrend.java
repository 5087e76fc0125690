package greyground.fit;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * Uneven wiping, inking or light: how the readings drift across the plate once their coverage is accounted for.
 *
 * <p>A plane first, then a plane with curvature; each is held against the fit without it by the F test of nested least squares
 * (textbook, such as Draper and Smith), at 1 %. The drift is zero at the mean of the patches.
 *
 * @param kind what the readings support
 * @param chance probability that readings without any drift would show as much
 * @param acrossPerHundredMillimetres slope of L* in x at the middle of the plate, 0 where there is none
 * @param downPerHundredMillimetres slope of L* in y at the middle
 * @param rangeLightness L* between the lightest and darkest patch place that the drift explains
 */
public record MeasuredTrend(
        Kind kind,
        double chance,
        double acrossPerHundredMillimetres,
        double downPerHundredMillimetres,
        double rangeLightness) {
    /** Shapes of drift. */
    public enum Kind {
        /** None that chance doesn't explain. */
        NONE,
        /** From side to side. */
        SLANTED,
        /** Curved, such as darker in the middle. */
        CURVED
    }

    static final double LEVEL = 0.01;
    private static final double HUNDRED = 100;

    /** Drift found, with the terms it is made of. */
    record Found(MeasuredTrend trend, List<ToDoubleFunction<MeasuredPatch>> terms, List<Double> slopes) {
        /** Drift at a patch's place, in L*, from an origin of its own. */
        double at(MeasuredPatch patch) {
            double sum = 0;
            for (int i = 0; i < slopes.size(); i++) {
                sum += slopes.get(i) * terms.get(i).applyAsDouble(patch);
            }
            return sum;
        }
    }

    /** Slant of the plate, from its middle in units of 100 mm. */
    static List<ToDoubleFunction<MeasuredPatch>> slant(List<MeasuredPatch> patches) {
        double x = middle(patches, MeasuredPatch::xMillimetres);
        double y = middle(patches, MeasuredPatch::yMillimetres);
        return List.of(patch -> (patch.xMillimetres() - x) / HUNDRED, patch -> (patch.yMillimetres() - y) / HUNDRED);
    }

    /** Slant and curvature. */
    static List<ToDoubleFunction<MeasuredPatch>> curve(List<MeasuredPatch> patches) {
        ToDoubleFunction<MeasuredPatch> x = slant(patches).get(0);
        ToDoubleFunction<MeasuredPatch> y = slant(patches).get(1);
        return List.of(
                x,
                y,
                patch -> x.applyAsDouble(patch) * x.applyAsDouble(patch),
                patch -> x.applyAsDouble(patch) * y.applyAsDouble(patch),
                patch -> y.applyAsDouble(patch) * y.applyAsDouble(patch));
    }

    private static double middle(List<MeasuredPatch> patches, ToDoubleFunction<MeasuredPatch> place) {
        return (patches.stream().mapToDouble(place).min().orElse(0)
                        + patches.stream().mapToDouble(place).max().orElse(0))
                / 2;
    }

    static Found of(List<MeasuredPatch> patches, boolean[] kept) {
        MeasuredResiduals flat = MeasuredResiduals.of(patches, kept, List.of());
        MeasuredResiduals slanted = MeasuredResiduals.of(patches, kept, slant(patches));
        MeasuredResiduals curved = MeasuredResiduals.of(patches, kept, curve(patches));
        double slantChance = chance(flat, slanted);
        double bendChance = chance(slanted, curved);
        double curveChance = chance(flat, curved);
        // A dome has no slant, so curvature is also held against the flat plate; then each test has half the level.
        if (bendChance < LEVEL / 2 && curveChance < LEVEL / 2) {
            return found(Kind.CURVED, curveChance, patches, curve(patches), list(curved.slopes()));
        }
        if (slantChance < LEVEL / 2) {
            return found(Kind.SLANTED, slantChance, patches, slant(patches), list(slanted.slopes()));
        }
        double least = Math.min(1, 2 * Math.min(slantChance, bendChance));
        return new Found(new MeasuredTrend(Kind.NONE, least, 0, 0, 0), List.of(), List.of());
    }

    private static List<Double> list(double[] slopes) {
        return Arrays.stream(slopes).boxed().toList();
    }

    private static Found found(
            Kind kind,
            double chance,
            List<MeasuredPatch> patches,
            List<ToDoubleFunction<MeasuredPatch>> terms,
            List<Double> slopes) {
        Found without = new Found(new MeasuredTrend(kind, chance, 0, 0, 0), terms, slopes);
        double least = patches.stream().mapToDouble(without::at).min().orElse(0);
        double most = patches.stream().mapToDouble(without::at).max().orElse(0);
        return new Found(new MeasuredTrend(kind, chance, slopes.get(0), slopes.get(1), most - least), terms, slopes);
    }

    /** Probability that the terms which {@code larger} has more would lower the sum of squares so far by chance; 1 if untold. */
    static double chance(MeasuredResiduals smaller, MeasuredResiduals larger) {
        int more = smaller.degrees() - larger.degrees();
        if (more < 1 || larger.degrees() < 1 || !(larger.sum() > 0)) {
            return 1;
        }
        double ratio = (smaller.sum() - larger.sum()) / more / (larger.sum() / larger.degrees());
        return 1 - new FDistribution(more, larger.degrees()).cumulativeProbability(Math.max(0, ratio));
    }
}
