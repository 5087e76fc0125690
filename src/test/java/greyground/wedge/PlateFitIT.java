package greyground.wedge;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.NoiseGrain;
import greyground.plate.PlateConditions;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/**
 * The fit of the virtual plate's numbers to plates of hidden numbers. The hidden plate is printed with another piece of grain than
 * the fit computes on, so the model is never exactly right.
 */
class PlateFitIT {
    private static final double[] COVERAGES = {0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.88, 0.94, 1};
    private static final int CASES = 16;
    private static final double PIXEL = 18;
    private static final Set<FitParameter> SIX = EnumSet.of(
            FitParameter.EDGE_SHIFT,
            FitParameter.ETCH_FACTOR,
            FitParameter.PAD_RADIUS,
            FitParameter.INK_STRENGTH,
            FitParameter.INK_SATURATION,
            FitParameter.OPTICAL_GAIN);

    private static PlateFit fit(PlateConditions hidden, double[] coverages, Set<FitParameter> asked, long seed) {
        double[] lightness = FitModel.virtualPlate(new NoiseGrain(1440, 180, 2.6, 100 + seed), coverages, PIXEL)
                .lightness(hidden);
        List<MeasuredLevel> levels = HiddenShop.read(coverages, lightness, 0.5, new Random(seed));
        FitModel model = FitModel.virtualPlate(new NoiseGrain(1440, 180, 1.6, 1), coverages, PIXEL);
        return PlateFit.of(HiddenShop.BELIEVED, model, levels, List.of(), asked);
    }

    @Test
    void intervalsHoldTheHiddenNumbersOrTheNumberIsLeftOpen() {
        Map<FitParameter, int[]> tally = new EnumMap<>(FitParameter.class);
        LongStream.rangeClosed(1, CASES).forEach(seed -> {
            PlateConditions hidden = HiddenShop.hidden(SIX, new Random(7000 + seed));
            for (FittedFigure figure : fit(hidden, COVERAGES, SIX, seed).figures()) {
                int[] counts = tally.computeIfAbsent(figure.parameter(), key -> new int[2]);
                if (figure instanceof FittedFigure.Determined found) {
                    double truth = found.parameter().of(hidden);
                    counts[0]++;
                    counts[1] += truth >= found.low() && truth <= found.high() ? 1 : 0;
                }
                if (Boolean.getBoolean("told")) {
                    System.out.println(seed + " true " + figure.parameter().of(hidden) + ": " + figure.words());
                }
            }
        });
        StringBuilder words = new StringBuilder();
        int determined = 0;
        int inside = 0;
        for (Map.Entry<FitParameter, int[]> one : tally.entrySet()) {
            words.append(one.getKey()).append(' ').append(one.getValue()[1]).append(" of ");
            words.append(one.getValue()[0]).append("; ");
            determined += one.getValue()[0];
            inside += one.getValue()[1];
        }
        if (Boolean.getBoolean("told")) {
            System.out.println(words);
        }
        assertTrue(determined >= 2 * CASES, words.toString());
        assertTrue(inside >= 0.9 * determined, words.toString());
    }

    /** Up to half coverage no gap is wide enough for the pad to dip in. */
    @Test
    void withoutBareCopperTheWipingRadiusIsLeftOpen() {
        double[] light = {0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4};
        PlateFit fit = fit(HiddenShop.BELIEVED, light, EnumSet.of(FitParameter.EDGE_SHIFT, FitParameter.PAD_RADIUS), 1);
        assertInstanceOf(
                FittedFigure.Undetermined.class,
                fit.figure(FitParameter.PAD_RADIUS).orElseThrow());
    }
}
