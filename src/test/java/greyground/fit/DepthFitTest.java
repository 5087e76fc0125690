package greyground.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DepthFitTest {
    private static final double[] COVERAGES = {0, 0.05, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8};

    /** An invented plate whose wells hold ink in proportion to depth and whose blacks turn pale again past 60 um. */
    private static double printed(double depth, double coverage) {
        double held = depth * coverage / (1 + StrictMath.exp((depth - 60) * coverage / 6));
        return 95 - 80 * (1 - StrictMath.exp(-held / 9));
    }

    private static final DepthFit.Predicted PLATE = new DepthFit.Predicted() {
        @Override
        public double[] depths() {
            double[] depths = new double[15];
            for (int i = 0; i < depths.length; i++) {
                depths[i] = 2 * StrictMath.pow(1.35, i);
            }
            return depths;
        }

        @Override
        public double lightness(int depth, double coverage) {
            return printed(depths()[depth], coverage);
        }
    };

    private static List<DepthFit.Reading> read(double depth, double noise, Random random) {
        List<DepthFit.Reading> readings = new ArrayList<>();
        for (double coverage : COVERAGES) {
            double lightness = printed(depth, coverage) + noise * random.nextGaussian();
            readings.add(new DepthFit.Reading(coverage, Math.max(0, Math.min(100, lightness)), DepthFit.READING_ERROR));
        }
        return readings;
    }

    @Test
    void readingsWithoutErrorGiveTheDepthBack() {
        for (double depth = 4; depth < 50; depth *= 1.3) {
            DepthFit fit = DepthFit.of(read(depth, 0, new Random(1)), PLATE);
            assertEquals(depth, fit.depthMicrometres(), 0.02 * depth);
            assertTrue(fit.misfit() < 0.4, fit.toString());
        }
    }

    /** Of 95 % intervals, 40 hold the truth 33 times or more but for one time in a thousand. */
    @Test
    void statedErrorsHoldTheTruth() {
        int held = 0;
        for (int seed = 0; seed < 40; seed++) {
            double depth = 6 + seed;
            DepthFit fit = DepthFit.of(read(depth, DepthFit.READING_ERROR, new Random(seed)), PLATE);
            held += Math.abs(fit.depthMicrometres() - depth) <= 1.96 * fit.standardError() ? 1 : 0;
        }
        assertTrue(held >= 33, "held " + held + " of 40");
    }

    @Test
    void aProofOfAnotherPlateIsLessSure() {
        List<DepthFit.Reading> odd = new ArrayList<>();
        for (DepthFit.Reading reading : read(20, 0, new Random(1))) {
            odd.add(new DepthFit.Reading(reading.coverage(), reading.lightness() - 12 * reading.coverage(), 1));
        }
        DepthFit plain = DepthFit.of(read(20, 0, new Random(1)), PLATE);
        DepthFit fit = DepthFit.of(odd, PLATE);
        assertTrue(fit.standardError() > plain.standardError());
        assertTrue(fit.misfit() > plain.misfit());
    }

    @Test
    void whatNoDepthExplainsIsRefused() {
        List<DepthFit.Reading> paper = List.of(new DepthFit.Reading(0, 95, 1), new DepthFit.Reading(0.5, 40, 1));
        assertThrows(Refusal.class, () -> DepthFit.of(paper, PLATE));
        List<DepthFit.Reading> clean = List.of(
                new DepthFit.Reading(0.1, 95, 1), new DepthFit.Reading(0.5, 95, 1), new DepthFit.Reading(0.8, 95, 1));
        Refusal refusal = assertThrows(Refusal.class, () -> DepthFit.of(clean, PLATE));
        assertTrue(String.valueOf(refusal.getMessage()).contains("µm or beyond"), refusal.getMessage());
    }
}
