package greyground.simulation;

import java.util.List;

/** Quantiles of many errors. */
record Spread(double median, double ninetyFive, double worst, double mean, int count) {
    /** Of absolute values; the mean keeps its sign. */
    static Spread of(List<Double> errors) {
        double[] sizes = errors.stream().mapToDouble(Math::abs).sorted().toArray();
        if (sizes.length == 0) {
            return new Spread(Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0);
        }
        double mean = errors.stream().mapToDouble(one -> one).average().orElse(Double.NaN);
        return new Spread(
                sizes[sizes.length / 2],
                sizes[(int) Math.min(sizes.length - 1, Math.floor(0.95 * sizes.length))],
                sizes[sizes.length - 1],
                mean,
                sizes.length);
    }
}
