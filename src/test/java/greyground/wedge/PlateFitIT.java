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
 * The fit of the virtual plate's numbers to plates of hidden numbers. Every other hidden plate is printed with another piece of
 * grain than the fit computes on, so that the model is not exactly right. Pixels of 18 um are too wide for true tones, yet both
 * sides have them, and laws need no fine lightness.
 */
class PlateFitIT {
    private static final double[] COVERAGES = {0.05, 0.1, 0.2, 0.3, 0.45, 0.6, 0.75, 0.9};
    private static final int CASES = 10;
    private static final double PIXEL = 18;
    private static final double[] BARS = {0.05, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2, 3};
    private static final Set<FitParameter> THREE =
            EnumSet.of(FitParameter.PAD_RADIUS, FitParameter.INK_SATURATION, FitParameter.OPTICAL_GAIN);

    /** The bars on either side of the critical width, sqrt(8 r h), as an eye would tell them on the print. */
    private static FitReading gauge(PlateConditions hidden) {
        double critical = hidden.wipe().criticalWidthMicrometres(HiddenShop.DEPTH_MICROMETRES) / 1000;
        int widest = 0;
        while (widest < BARS.length - 2 && BARS[widest + 1] < critical) {
            widest++;
        }
        MeasuredDepth depth = new MeasuredDepth(HiddenShop.DEPTH_MICROMETRES, 1);
        return FitReading.barGauge(BARS[widest], BARS[widest + 1], depth);
    }

    private static PlateFit fit(
            PlateConditions hidden, double[] coverages, Set<FitParameter> asked, List<FitReading> readings, long seed) {
        double[] lightness = FitModel.virtualPlate(new NoiseGrain(1440, 180, 1.2, 1 + seed % 2), coverages, PIXEL)
                .lightness(hidden);
        List<MeasuredLevel> levels = HiddenShop.read(coverages, lightness, 0.5, new Random(seed));
        FitModel model = FitModel.virtualPlate(new NoiseGrain(1440, 180, 1.2, 1), coverages, PIXEL);
        return PlateFit.of(HiddenShop.BELIEVED, model, levels, readings, asked);
    }

    @Test
    void intervalsHoldTheHiddenNumbersOrTheNumberIsLeftOpen() {
        Map<FitParameter, int[]> tally = new EnumMap<>(FitParameter.class);
        LongStream.rangeClosed(1, CASES).forEach(seed -> {
            PlateConditions hidden = HiddenShop.hidden(THREE, new Random(7919 * seed));
            for (FittedFigure figure :
                    fit(hidden, COVERAGES, THREE, List.of(gauge(hidden)), seed).figures()) {
                int[] counts = tally.computeIfAbsent(figure.parameter(), key -> new int[2]);
                if (figure instanceof FittedFigure.Determined found) {
                    double truth = found.parameter().of(hidden);
                    counts[0]++;
                    counts[1] += truth >= found.low() && truth <= found.high() ? 1 : 0;
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
        assertTrue(determined >= 2 * CASES, words.toString());
        assertTrue(inside >= 0.9 * determined, words.toString());
    }

    /** Up to half coverage no gap is wide enough for the pad to dip in. */
    @Test
    void withoutBareCopperTheWipingRadiusIsLeftOpen() {
        double[] light = {0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4};
        PlateFit fit = fit(
                HiddenShop.BELIEVED,
                light,
                EnumSet.of(FitParameter.OPTICAL_GAIN, FitParameter.PAD_RADIUS),
                List.of(),
                1);
        assertInstanceOf(
                FittedFigure.Undetermined.class,
                fit.figure(FitParameter.PAD_RADIUS).orElseThrow());
    }
}
