package greyground.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.linear.RealVector;

/**
 * Stripes that come back at even distances along the plate, as from a film printer's feed, lamp tubes or the press.
 *
 * <p>A least-squares periodogram for uneven spacing (Lomb 1976; Scargle 1982; with free mean, Zechmeister and Kuerster 2009):
 * at each period a sine and cosine of the place join the levels and the drift, and the F ratio of what they explain tells the
 * chance of one period; that of the best of M independent periods is {@code 1 - (1 - p)^M}. M counts periods a quarter cycle
 * over the plate apart, on both axes, which overstates it and so errs on the side of no bands.
 *
 * @param axis along which lightness waves
 * @param periodMillimetres distance from stripe to stripe
 * @param amplitudeLightness half the L* from lightest to darkest
 * @param chance that readings without bands would show as much anywhere
 */
public record MeasuredBands(Axis axis, double periodMillimetres, double amplitudeLightness, double chance) {
    /** Directions on the plate, as the film shows it. */
    public enum Axis {
        /** Stripes stand upright, one beside the other. */
        ACROSS,
        /** Stripes lie, one below the other. */
        DOWN
    }

    // Assumed: frequencies tried for each that the plate's length tells apart, and patches that share a place.
    private static final int STEPS_PER_CYCLE = 4;
    private static final double SAME_PLACE_MILLIMETRES = 0.5;

    /** Power at one frequency: share of the sum of squares that a wave takes, 0 to 1. */
    record Power(Axis axis, double cyclesPerMillimetre, double share, double amplitude, double chance) {}

    /** Bands that chance doesn't explain at 1 %. */
    static Optional<MeasuredBands> of(List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> drift) {
        List<Power> powers = new ArrayList<>();
        for (Axis axis : Axis.values()) {
            powers.addAll(powers(patches, drift, axis, frequencies(patches, axis)));
        }
        return powers.stream()
                .min(Comparator.comparingDouble(Power::chance))
                .map(best -> new MeasuredBands(
                        best.axis(),
                        1 / best.cyclesPerMillimetre(),
                        best.amplitude(),
                        -StrictMath.expm1(powers.size() * StrictMath.log1p(-Math.min(best.chance(), 1 - 1e-12)))))
                .filter(bands -> bands.chance() < MeasuredTrend.LEVEL);
    }

    static List<Power> powers(
            List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> drift, Axis axis, double[] frequencies) {
        MeasuredResiduals without = MeasuredResiduals.of(patches, drift);
        List<Power> powers = new ArrayList<>();
        for (double frequency : frequencies) {
            List<ToDoubleFunction<MeasuredPatch>> terms = new ArrayList<>(drift);
            terms.add(patch -> StrictMath.cos(2 * Math.PI * frequency * place(patch, axis)));
            terms.add(patch -> StrictMath.sin(2 * Math.PI * frequency * place(patch, axis)));
            MeasuredResiduals with = MeasuredResiduals.of(patches, terms);
            if (without.degrees() - with.degrees() < 2 || with.degrees() < 1 || !(without.sum() > 0)) {
                continue;
            }
            double ratio = (without.sum() - with.sum()) / 2 / (Math.max(1e-300, with.sum()) / with.degrees());
            double chance = 1 - new FDistribution(2, with.degrees()).cumulativeProbability(Math.max(0, ratio));
            RealVector wave = with.slopes().getSubVector(drift.size(), 2);
            powers.add(new Power(axis, frequency, 1 - with.sum() / without.sum(), wave.getNorm(), chance));
        }
        return powers;
    }

    /** From one cycle over the patches to one over twice their least distance. */
    private static double[] frequencies(List<MeasuredPatch> patches, Axis axis) {
        double[] places = patches.stream()
                .mapToDouble(patch -> place(patch, axis))
                .sorted()
                .toArray();
        double extent = places[places.length - 1] - places[0];
        double least = extent;
        for (int i = 1; i < places.length; i++) {
            double step = places[i] - places[i - 1];
            least = step > SAME_PLACE_MILLIMETRES ? Math.min(least, step) : least;
        }
        if (!(extent > 2 * least) || least <= 0) {
            return new double[0];
        }
        int count = Math.min(400, (int) Math.floor((extent / (2 * least) - 1) * STEPS_PER_CYCLE) + 1);
        double[] frequencies = new double[count];
        for (int i = 0; i < count; i++) {
            frequencies[i] = (1 + (double) i / STEPS_PER_CYCLE) / extent;
        }
        return frequencies;
    }

    private static double place(MeasuredPatch patch, Axis axis) {
        return axis == Axis.ACROSS ? patch.xMillimetres() : patch.yMillimetres();
    }
}
