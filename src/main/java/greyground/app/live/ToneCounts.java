package greyground.app.live;

import greyground.app.sight.Stage;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.DoubleStream;
import java.util.stream.LongStream;

/**
 * How many of the art's pixels have which tone at a station.
 *
 * @param shares of the pixels of the art's fragment, adding up to 1, in steps from the first tone to the last
 * @param first what the first step is called, such as "L* 0"
 * @param last what the last step is called
 */
public record ToneCounts(List<Double> shares, String first, String last) {
    /** Steps of every histogram: one L*, or one percent. */
    public static final int STEPS = 101;

    /**
     * Counts them.
     *
     * @param greys pixels by grey code
     * @param stage empty for the art itself
     * @param tones the way of each grey code
     * @param deepest most ink that any tone has, in micrometres
     */
    static ToneCounts of(long[] greys, Optional<Stage> stage, IntFunction<ToneAt> tones, double deepest) {
        double[] steps = new double[STEPS];
        double all = (double) LongStream.of(greys).sum();
        for (int grey = 0; grey < greys.length; grey++) {
            if (greys[grey] > 0) {
                double share = share(tones.apply(grey), stage, deepest);
                steps[(int) Math.round((STEPS - 1) * Math.max(0, Math.min(1, share)))] += greys[grey] / all;
            }
        }
        List<Double> shares = DoubleStream.of(steps).boxed().toList();
        return stage.isEmpty() || stage.get() == Stage.PRINT
                ? new ToneCounts(shares, "L* 0", "L* 100")
                : stage.get() == Stage.COPPER
                        ? new ToneCounts(shares, "no ink", String.format(Locale.ROOT, "%.1f \u00b5m of ink", deepest))
                        : new ToneCounts(shares, "clear film", "solid black");
    }

    private static double share(ToneAt tone, Optional<Stage> stage, double deepest) {
        return stage.isEmpty()
                ? tone.artLightness() / 100
                : stage.get() == Stage.PRINT
                        ? tone.printLightness() / 100
                        : stage.get() == Stage.COPPER ? tone.inkMicrometres() / deepest : tone.coverage();
    }
}
