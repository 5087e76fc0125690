package greyground.fit;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;

/**
 * Uneven wiping, inking or light: how the readings drift across the plate once their coverage is accounted for.
 *
 * <p>A plane first, then a plane with curvature; each is held against the fit without it by the F test of nested least squares
 * (textbook, such as Draper and Smith), at 1 %. The drift is zero at the mean of the patches.
 *
 * @param kind what the readings support
 * @param acrossPerHundredMillimetres slope of L* in x at the middle of the plate, 0 where there is none
 * @param downPerHundredMillimetres slope of L* in y at the middle
 * @param rangeLightness L* between the lightest and darkest patch place that the drift explains
 */
public record MeasuredTrend(
        Kind kind, double acrossPerHundredMillimetres, double downPerHundredMillimetres, double rangeLightness) {
    static final MeasuredTrend NONE = new MeasuredTrend(Kind.NONE, 0, 0, 0);

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
    record Found(MeasuredTrend trend, List<ToDoubleFunction<MeasuredPatch>> terms, RealVector slopes) {
        /** Drift at a patch's place, in L*, from an origin of its own. */
        double at(MeasuredPatch patch) {
            double sum = 0;
            for (int i = 0; i < terms.size(); i++) {
                sum += slopes.getEntry(i) * terms.get(i).applyAsDouble(patch);
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
        DoubleSummaryStatistics places = patches.stream().mapToDouble(place).summaryStatistics();
        return (places.getMin() + places.getMax()) / 2;
    }

    static Found of(List<MeasuredPatch> patches) {
        MeasuredResiduals flat = MeasuredResiduals.of(patches, List.of());
        MeasuredResiduals slanted = MeasuredResiduals.of(patches, slant(patches));
        MeasuredResiduals curved = MeasuredResiduals.of(patches, curve(patches));
        double slantChance = chance(flat, slanted);
        double bendChance = chance(slanted, curved);
        double curveChance = chance(flat, curved);
        // A dome has no slant, so curvature is also held against the flat plate; then each test has half the level.
        if (bendChance < LEVEL / 2 && curveChance < LEVEL / 2) {
            return found(Kind.CURVED, patches, curve(patches), curved.slopes());
        }
        if (slantChance < LEVEL / 2) {
            return found(Kind.SLANTED, patches, slant(patches), slanted.slopes());
        }
        return new Found(MeasuredTrend.NONE, List.of(), new ArrayRealVector(0));
    }

    private static Found found(
            Kind kind, List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> terms, RealVector slopes) {
        Found without = new Found(MeasuredTrend.NONE, terms, slopes);
        DoubleSummaryStatistics drift =
                patches.stream().mapToDouble(without::at).summaryStatistics();
        double range = drift.getMax() - drift.getMin();
        return new Found(new MeasuredTrend(kind, slopes.getEntry(0), slopes.getEntry(1), range), terms, slopes);
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
