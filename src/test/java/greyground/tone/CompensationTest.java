package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import org.junit.jupiter.api.Test;

class CompensationTest {
    private static final PlateResponse PLATE = new LinesResponse(180, 8, 0.03, 0.85);

    /** A plate whose lightness falls in a straight line from 90 to 10, dots below 0.1 lost: the curve is known by hand. */
    private record StraightPlate() implements PlateResponse {
        @Override
        public double lightness(double coverage) {
            return coverage < 0.1 ? 90 : 90 - 80 * coverage;
        }

        @Override
        public UsableCoverage usable() {
            return new UsableCoverage(0.1, 1);
        }

        @Override
        public String name() {
            return "straight";
        }
    }

    @Test
    void aStraightPlateNeedsAStraightCurve() {
        Compensation made = Compensation.of("c", ArtRange.WHOLE, RangeMapping.DEFAULT, new StraightPlate());
        for (int grey = 0; grey < ToneCurve.CODES; grey += 101) {
            double art = Lightness.ofLuminance(grey / 65_535.0);
            double coverage = 1 - art / 100;
            // Lighter wishes than half way from 90 to 82 take paper, the others the lightest dot.
            double expected = coverage >= 0.1 ? coverage : coverage > 0.05 ? 0.1 : 0;
            assertEquals(expected, made.curve().coverage(grey) / 65_535.0, 1e-5, "grey " + grey);
        }
        assertEquals(90, made.paperLightness(), 1e-12);
        assertEquals(82, made.lightestLightness(), 1e-9);
        assertEquals(10, made.darkestLightness(), 1e-9);
    }

    @Test
    void theLightGapIsCounted() {
        Compensation made = Compensation.of("c", ArtRange.WHOLE, RangeMapping.DEFAULT, new StraightPlate());
        // Art L* above 90 and below 100 wishes for 82 to 90; a thousandth of an L* at either end counts as attained.
        int first = (int) Math.ceil(Lightness.toLuminance(90.00125) * 65_535);
        assertEquals(first, made.light().firstGrey(), 1);
        int last = (int) Math.floor(Lightness.toLuminance(99.99875) * 65_535);
        assertEquals(last, made.light().lastGrey(), 1);
        assertTrue(made.dark().lastGrey() < made.dark().firstGrey());
    }

    @Test
    void pixelsAreCountedFromTheHistogram() {
        Compensation made = Compensation.of("c", ArtRange.WHOLE, RangeMapping.DEFAULT, new StraightPlate());
        long[] pixels = new long[ToneCurve.CODES];
        pixels[0] = 5;
        pixels[30_000] = 100;
        pixels[60_000] = 7_000_000_000L;
        pixels[ToneCurve.CODES - 1] = 11;
        assertEquals(7_000_000_000L, made.light().pixels(pixels));
        assertEquals(0, made.dark().pixels(pixels));
        assertThrows(Refusal.class, () -> made.light().pixels(new long[256]));
    }

    @Test
    void aWishDarkerThanThePlateIsCountedAndPrintsAsTheDarkest() {
        PrintRange wished = new PrintRange(90, 2);
        Compensation made = Compensation.of("c", ArtRange.WHOLE, RangeMapping.DEFAULT, wished, new StraightPlate());
        // Wish 2 + 0.88 L reaches 10 at L* 9.0909.
        int last = (int) Math.floor(Lightness.toLuminance(8 / 0.88) * 65_535);
        assertEquals(last, made.dark().lastGrey(), 2);
        assertEquals(0, made.dark().firstGrey());
        assertEquals(ToneCurve.SOLID, made.curve().coverage(0));
        assertEquals(ToneCurve.SOLID, made.curve().coverage(last - 2));
        assertTrue(made.curve().coverage(last + 200) < ToneCurve.SOLID);
        long[] pixels = new long[ToneCurve.CODES];
        pixels[0] = 9;
        assertEquals(9, made.dark().pixels(pixels));
    }

    @Test
    void aWishLighterThanThePaperIsCountedAndPrintsAsPaper() {
        PrintRange wished = new PrintRange(98, 20);
        Compensation made = Compensation.of("c", ArtRange.WHOLE, RangeMapping.DEFAULT, wished, new StraightPlate());
        assertEquals(ToneCurve.CODES - 1, made.light().lastGrey());
        assertEquals(0, made.curve().coverage(ToneCurve.CODES - 1));
    }

    @Test
    void nodesSpanTheArtAndAgreeWithTheCurve() {
        Compensation made = Compensation.of("c", ArtRange.WHOLE, RangeMapping.DEFAULT, PLATE);
        assertEquals(33, made.nodes().size());
        assertEquals(0, made.nodes().get(0).artLightness());
        assertEquals(100, made.nodes().get(32).artLightness());
        assertEquals(0.85, made.nodes().get(0).coverage(), 1e-4);
        assertEquals(0, made.nodes().get(32).coverage());
        assertTrue(made.nodes().get(16).attained());
        assertFalse(made.nodes().get(31).attained());
        assertEquals(
                PLATE.lightness(made.nodes().get(16).coverage()),
                made.nodes().get(16).wishedLightness(),
                0.05);
    }

    @Test
    void artWhiteAndBlackClip() {
        ArtRange art = new ArtRange(0.8, 0.02);
        Compensation made = Compensation.of("c", art, RangeMapping.DEFAULT, PLATE);
        assertEquals(0, made.curve().coverage((int) Math.ceil(0.8 * 65_535)));
        assertEquals(made.curve().coverage(0), made.curve().coverage((int) (0.02 * 65_535)));
    }

    @Test
    void everyMappingMakesACurve() {
        for (String word : new String[] {"lightness", "black-point", "density"}) {
            Compensation made = Compensation.of(word, new ArtRange(0.9, 0), RangeMapping.named(word), PLATE);
            assertEquals(word, made.curve().name());
            assertEquals(0, made.curve().coverage(ToneCurve.CODES - 1));
        }
    }

    @Test
    void refusesAPlateThatDoesNotDarken() {
        PlateResponse flat = new PlateResponse() {
            @Override
            public double lightness(double coverage) {
                return 50;
            }

            @Override
            public UsableCoverage usable() {
                return new UsableCoverage(0, 1);
            }

            @Override
            public String name() {
                return "flat";
            }
        };
        Refusal refusal = assertThrows(Refusal.class, () -> new ResponseInverse(flat));
        assertTrue(refusal.getMessage().contains("\"flat\" darkens by only 0 L*"), refusal.getMessage());
    }

    @Test
    void aToneCurveNeverGivesALighterGreyMore() {
        char[] table = new char[ToneCurve.CODES];
        table[101] = 1;
        assertThrows(Refusal.class, () -> new ToneCurve("bad", table));
        assertThrows(Refusal.class, () -> new ToneCurve("short", new char[256]));
    }
}
