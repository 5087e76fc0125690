package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RangeMappingTest {
    /** Ink of density 1.60 on paper of 0.06. */
    private static final PrintRange PRINT = new PrintRange(Lightness.ofDensity(0.06), Lightness.ofDensity(1.60));

    /** Arithmetic from CIE 15:2004 L*. */
    @Test
    void evenLightnessKeepsVisualSpacing() {
        double wish = lightness(new RangeMapping.LightnessLinear(), 50);
        assertEquals(56.3757, wish, 1e-4);
        assertEquals(0.242887, Lightness.toLuminance(wish), 1e-6);
        assertEquals(0.614595, Lightness.toDensity(wish), 1e-6);
        assertEquals(37.174, lightness(new RangeMapping.LightnessLinear(), 25), 1e-3);
        assertEquals(1.01628, Lightness.toDensity(lightness(new RangeMapping.LightnessLinear(), 25)), 1e-5);
        assertEquals(75.5774, lightness(new RangeMapping.LightnessLinear(), 75), 1e-4);
        assertEquals(0.308009, Lightness.toDensity(lightness(new RangeMapping.LightnessLinear(), 75)), 1e-6);
    }

    private static double lightness(RangeMapping mapping, double artLightness) {
        return mapping.onto(ArtRange.WHOLE, PRINT).applyAsDouble(Lightness.toLuminance(artLightness));
    }

    /** ISO 18619:2015, 4.2.6-4.2.7 (formula from memory): white stays, black 0.0035 becomes 0.0251189. */
    @Test
    void blackPointCompensationFigures() {
        ArtRange art = new ArtRange(1, 0.0035);
        PrintRange print = new PrintRange(100, Lightness.ofLuminance(0.0251189));
        RangeMapping mapping = new RangeMapping.BlackPointCompensated();
        double wish = mapping.onto(art, print).applyAsDouble(0.18);
        assertEquals(0.19779, Lightness.toLuminance(wish), 1e-5);
        assertEquals(51.586, wish, 1e-3);
        assertEquals(0.0251189, Lightness.toLuminance(mapping.onto(art, print).applyAsDouble(0.0035)), 1e-9);
        assertEquals(1, Lightness.toLuminance(mapping.onto(art, print).applyAsDouble(1)), 1e-12);
    }

    /** D' = D_white + (D_black' - D_white)(D / D_black): halfway in density stays halfway. */
    @Test
    void evenDensityHalvesWhereDensityHalves() {
        ArtRange art = new ArtRange(1, 0.01);
        double wish = new RangeMapping.DensityLinear().onto(art, PRINT).applyAsDouble(0.1);
        assertEquals((0.06 + 1.60) / 2, Lightness.toDensity(wish), 1e-9);
    }

    static Stream<RangeMapping> everyMapping() {
        return Stream.of(
                new RangeMapping.LightnessLinear(),
                new RangeMapping.BlackPointCompensated(),
                new RangeMapping.DensityLinear());
    }

    @ParameterizedTest
    @MethodSource("everyMapping")
    void whiteGoesToPaperBlackToTheDarkestAndNothingTurns(RangeMapping mapping) {
        Random random = new Random(18619);
        for (int trial = 0; trial < 60; trial++) {
            double white = 0.3 + 0.7 * random.nextDouble();
            ArtRange art = new ArtRange(white, trial % 3 == 0 ? 0 : white * 0.6 * random.nextDouble());
            PrintRange print =
                    new PrintRange(85 + 15 * random.nextDouble(), trial % 5 == 0 ? 0 : 40 * random.nextDouble());
            assertEquals(print.paperLightness(), mapping.onto(art, print).applyAsDouble(1), 1e-9);
            assertEquals(print.paperLightness(), mapping.onto(art, print).applyAsDouble(art.white()), 1e-9);
            assertEquals(print.darkestLightness(), mapping.onto(art, print).applyAsDouble(art.black()), 1e-5);
            assertEquals(print.darkestLightness(), mapping.onto(art, print).applyAsDouble(0), 1e-5);
            double before = -1;
            for (int i = 0; i <= 1000; i++) {
                double wish = mapping.onto(art, print).applyAsDouble(i / 1000.0);
                assertTrue(wish >= before - 1e-9, "trial " + trial + " at " + i);
                assertTrue(wish >= print.darkestLightness() - 1e-9 && wish <= print.paperLightness() + 1e-9);
                before = wish;
            }
        }
    }

    @Test
    void refusesRangesWithoutTone() {
        assertThrows(Refusal.class, () -> new ArtRange(0.5, 0.5));
        assertThrows(Refusal.class, () -> new ArtRange(0.2, 0.7));
        assertThrows(Refusal.class, () -> new PrintRange(20, 90));
        assertThrows(Refusal.class, () -> RangeMapping.named("gamma"));
    }
}
