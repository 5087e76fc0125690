package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToneWishTest {
    /** Worked by hand from the cited equation, in fractions: b .6 and .4. */
    @ParameterizedTest
    @CsvSource({
        "0.1, 0.1, 0.142857",
        "0.1, 0.25, 0.333333",
        "0.1, 0.5, 0.6",
        "0.1, 0.75, 0.818182",
        "0.1, 0.9, 0.931034",
        "-0.1, 0.1, 0.068966",
        "-0.1, 0.25, 0.181818",
        "-0.1, 0.9, 0.857143"
    })
    void theMiddleMovesAsSchlickHasIt(double by, double from, double to) {
        assertEquals(to, ToneWish.lighter(from, by), 1e-6);
        assertEquals(from, ToneWish.lighter(ToneWish.lighter(from, by), -by), 1e-12, "and back");
    }

    @ParameterizedTest
    @CsvSource({
        "1.25, 0.1, 0.083333",
        "1.25, 0.25, 0.222222",
        "1.25, 0.75, 0.777778",
        "2, 0.1, 0.055556",
        "2, 0.9, 0.944444",
        "0.8, 0.1, 0.119048",
        "0.8, 0.25, 0.277778"
    })
    void contrastTurnsAboutTheMiddle(double contrast, double from, double to) {
        assertEquals(to, ToneWish.harder(from, contrast), 1e-6);
        assertEquals(from, ToneWish.harder(ToneWish.harder(from, contrast), 1 / contrast), 1e-12, "and back");
    }

    /** Slopes .8 1 1.2 1 .8 after Fritsch and Carlson, cubic pieces worked by hand. */
    @ParameterizedTest
    @CsvSource({"10, 7.52", "37.5, 34.375", "60, 62.48", "90, 92.48", "0, 0", "50, 50", "100, 100"})
    void pointsAreJoinedByAMonotoneCubic(double from, double to) {
        ToneWish wish = wish(0, 0, 25, 20, 50, 50, 75, 80);
        assertEquals(to, 100 * wish.curve().applyAsDouble(from / 100), 1e-9);
    }

    private static ToneWish wish(double middle, double hardness, double... points) {
        List<ToneWish.Point> pairs = new java.util.ArrayList<>();
        for (int i = 0; i < points.length; i += 2) {
            pairs.add(new ToneWish.Point(points[i], points[i + 1]));
        }
        return new ToneWish(pairs, middle, hardness);
    }

    /** Whatever is wished, no lighter tone gets darker than a darker one, and black and white stay. */
    @Test
    void noWishTurnsTonesRound() {
        Random random = new Random(8);
        for (int i = 0; i < 300; i++) {
            double[] from = random.doubles(3, 0.5, 99.5).sorted().toArray();
            double[] to = random.doubles(3, 0, 100).sorted().toArray();
            DoubleUnaryOperator wish = wish(
                            random.nextDouble(-15, 15),
                            random.nextDouble(-1, 1),
                            from[0],
                            to[0],
                            from[1],
                            to[1],
                            from[2],
                            to[2])
                    .within(new ArtRange(0.85, 0.02));
            double before = -1;
            for (int grey = 0; grey <= 1000; grey++) {
                double here = wish.applyAsDouble(grey / 1000.0);
                assertTrue(here >= before - 1e-12, "case " + i + " at " + grey);
                before = here;
            }
            assertEquals(0.02, wish.applyAsDouble(0.01), 1e-9);
            assertEquals(0.85, wish.applyAsDouble(0.9), 1e-9);
        }
    }

    /** Greys of even lightness on a print from 15 to 94: 15 % below it, 6 % above. */
    @Test
    void whatLiesOutsideThePrintIsCounted() {
        long[] greys = new long[ToneCurve.CODES];
        for (int i = 0; i < 10_000; i++) {
            greys[(int) Math.round(Lightness.toLuminance((i + 0.5) / 100) * (ToneCurve.CODES - 1))]++;
        }
        PrintRange print = new PrintRange(94, 15);
        ToneWish.Outside before = ToneWish.AS_THEY_ARE.outside(greys, ArtRange.WHOLE, print);
        assertEquals(0.15, before.darker(), 0.001);
        assertEquals(0.06, before.lighter(), 0.001);
        ToneWish.Outside after = wish(0, 0, 10, 15, 97, 94).outside(greys, ArtRange.WHOLE, print);
        assertEquals(0.10, after.darker(), 0.001);
        assertEquals(0.03, after.lighter(), 0.001);
    }

    @Test
    void wrongPointsSayWhatIsWrongAndWhatIsRight() {
        for (double[] points : new double[][] {{60, 64, 30, 38}, {30, 38, 30, 40}, {30, 60, 60, 40}}) {
            String said = assertThrows(Refusal.class, () -> wish(0, 0, points)).getMessage();
            assertTrue(said.contains("from dark to light") && said.contains("30:38,60:64"), said);
        }
        assertThrows(Refusal.class, () -> wish(0, 0, 30, 138));
        assertThrows(Refusal.class, () -> wish(16, 0));
        assertThrows(Refusal.class, () -> wish(0, 1.1));
    }
}
