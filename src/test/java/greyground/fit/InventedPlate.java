package greyground.fit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleBiFunction;

/** Measured patches of an invented plate of 100 x 80 mm: a known response, seeded places and noise. */
final class InventedPlate {
    /** Twenty-five levels, finer at both ends. */
    static final double[] COVERAGES = {
        0, 0.01, 0.02, 0.03, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8,
        0.85, 0.9, 0.95, 0.98, 1
    };

    private InventedPlate() {}

    /** Falls from 95 to 22 at 0.85, then turns back up to 70. */
    static double turning(double coverage) {
        double turn = 0.85;
        return coverage <= turn
                ? 22 + 73 * Math.pow(1 - coverage / turn, 1.4)
                : 22 + 48 * Math.pow((coverage - turn) / 0.15, 2);
    }

    /** Readings of {@code repeats} patches of each level, at shuffled places of a lattice. */
    static List<MeasuredPatch> read(
            DoubleUnaryOperator response,
            int repeats,
            double noise,
            long seed,
            ToDoubleBiFunction<Double, Double> drift) {
        Random random = new Random(seed);
        List<double[]> places = new ArrayList<>();
        int columns = 12;
        for (int i = 0; i < COVERAGES.length * repeats; i++) {
            places.add(new double[] {4 + 8 * (i % columns), 4 + 8 * (i / columns)});
        }
        Collections.shuffle(places, random);
        List<MeasuredPatch> patches = new ArrayList<>();
        int at = 0;
        for (double coverage : COVERAGES) {
            for (int repeat = 0; repeat < repeats; repeat++) {
                double[] place = places.get(at++);
                double lightness = response.applyAsDouble(coverage)
                        + noise * random.nextGaussian()
                        + drift.applyAsDouble(place[0], place[1]);
                patches.add(new MeasuredPatch(coverage, Math.max(0, Math.min(100, lightness)), place[0], place[1], 1));
            }
        }
        return patches;
    }

    static List<MeasuredPatch> read(int repeats, double noise, long seed) {
        return read(InventedPlate::turning, repeats, noise, seed, (x, y) -> 0.0);
    }

    static List<MeasuredPatch> changed(List<MeasuredPatch> patches, int at, double by) {
        List<MeasuredPatch> changed = new ArrayList<>(patches);
        MeasuredPatch one = patches.get(at);
        changed.set(
                at,
                new MeasuredPatch(
                        one.coverage(), one.lightness() + by, one.xMillimetres(), one.yMillimetres(), one.weight()));
        return changed;
    }
}
