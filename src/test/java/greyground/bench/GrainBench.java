package greyground.bench;

import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import java.util.Arrays;
import java.util.Locale;

/**
 * Times the making of a grain's tile, as a new process finds it and then the median of five: {@code java -cp TEST-CLASS-PATH
 * greyground.bench.GrainBench 180} for a spacing of 180 um, {@code ... GrainBench 0} for round dots of 60 lines/cm; both at 1440 dpi.
 */
public final class GrainBench {
    private GrainBench() {}

    public static void main(String[] arguments) {
        double spacing = Double.parseDouble(arguments[0]);
        Grain grain = spacing > 0
                ? new Grain.Stochastic(spacing, 1)
                : new Grain.Halftone(new Ruling(60), 45, Grain.DotShape.ROUND);
        double first = milliseconds(grain);
        double[] again = new double[5];
        for (int i = 0; i < again.length; i++) {
            again[i] = milliseconds(grain);
        }
        Arrays.sort(again);
        System.out.printf(Locale.ROOT, "%s: %.0f ms first, %.0f ms again%n", grain.name(), first, again[2]);
    }

    private static double milliseconds(Grain grain) {
        long start = System.nanoTime();
        ThresholdTile tile = ThresholdTile.of(grain, new Resolution(1440));
        double spent = (System.nanoTime() - start) / 1e6;
        if (tile.width() == 0) {
            throw new IllegalStateException("no tile was made");
        }
        return spent;
    }
}
