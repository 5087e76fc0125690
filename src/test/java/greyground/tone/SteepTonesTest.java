package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class SteepTonesTest {
    private static PlateResponse plate(double least, double most, DoubleUnaryOperator lightness) {
        return new PlateResponse() {
            @Override
            public double lightness(double coverage) {
                return lightness.applyAsDouble(coverage);
            }

            @Override
            public UsableCoverage usable() {
                return new UsableCoverage(least, most);
            }

            @Override
            public String name() {
                return "by hand";
            }
        };
    }

    /** L* 95 at paper to 91 at 10 %, to 67 at 12.3 %, to 20 at solid: the fall of a coarse opening, 24 L* in 2.3 points, 10.4 to a hundredth. */
    private static final PlateResponse COARSE =
            plate(0, 1, new StraightLines(new double[] {0, 0.1, 0.123, 1}, new double[] {95, 91, 67, 20})::value);

    @Test
    void aCliffIsAGapThoughEveryToneHasACoverage() {
        SteepTones gap = SteepTones.of(COARSE).orElseThrow();
        assertEquals(10.43, gap.most(), 0.01);
        // A hundredth that reaches half way into the cliff jumps over five units already.
        assertEquals(91, gap.lightest(), 0.5);
        assertEquals(67, gap.darkest(), 0.5);
        assertEquals(0.10, gap.leastCoverage(), SteepTones.FILM_STEP);
        assertEquals(0.123, gap.mostCoverage(), SteepTones.FILM_STEP);
        assertTrue(gap.holds(80));
        assertFalse(gap.holds(92));
        assertFalse(gap.holds(60));
    }

    @Test
    void itsTonesAreNotCalledAttained() {
        Compensation made = Compensation.of("cliff", ArtRange.WHOLE, RangeMapping.DEFAULT, COARSE);
        for (Compensation.Node node : made.nodes()) {
            boolean inGap = made.steep().orElseThrow().holds(node.wishedLightness());
            assertEquals(!inGap, node.attained(), "wished L* " + node.wishedLightness());
        }
        assertTrue(made.unsure().lastGrey() > made.unsure().firstGrey());
    }

    /** 75 units over the whole film are 0.75 to a hundredth. */
    @Test
    void anEvenFallHasNone() {
        assertTrue(SteepTones.of(plate(0, 1, coverage -> 95 - 75 * coverage)).isEmpty());
    }

    @Test
    void atFiveUnitsToAHundredthItBegins() {
        assertTrue(SteepTones.of(plate(0.2, 0.3, coverage -> 95 - 499 * (coverage - 0.2)))
                .isEmpty());
        assertTrue(SteepTones.of(plate(0.2, 0.3, coverage -> 95 - 501 * (coverage - 0.2)))
                .isPresent());
    }

    @Test
    void fewerTonesThanAStepHaveNone() {
        assertTrue(SteepTones.of(plate(0.2, 0.205, coverage -> 95 - 9000 * (coverage - 0.2)))
                .isEmpty());
    }
}
