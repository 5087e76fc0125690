package greyground.colour;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import greyground.quantity.Refusal;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Plates over one another, with the inks of {@link ToyInks}; numbers were computed apart from the program. */
class InksInRegisterTest {
    private static final double[] NONE = {0, 0, 0};
    private static final InksInRegister PRINT = new InksInRegister(ToyInks.PAPER, NONE);

    private static List<double[]> shares(double... shares) {
        return IntStream.range(0, shares.length)
                .mapToObj(ink -> ToyInks.alone(ink, shares[ink]))
                .toList();
    }

    private static Lab lab(double[] light) {
        return Lab.of(Xyz.ofLight(light));
    }

    @Test
    void overprintsOfFullTones() {
        assertArrayEquals(new double[] {.50654, .06552, .026208}, PRINT.print(shares(1, 1, 0, 0)), 1e-5);
        assertArrayEquals(new double[] {.07353, .26208, .058032}, PRINT.print(shares(1, 0, 1, 0)), 1e-5);
        assertArrayEquals(new double[] {.0455886, .026208, .0162490}, PRINT.print(shares(1, 1, 1, 0)), 1e-6);
        SmoothSpectrumTest.assertLab(20.0103, 5.9577, 9.7536, lab(PRINT.print(shares(1, 1, 1, 0))));
    }

    @Test
    void halfTones() {
        double[] light = PRINT.print(shares(.5, .4, .3, .2));
        assertArrayEquals(new double[] {.327562, .235576, .157075}, light, 2e-6);
        SmoothSpectrumTest.assertLab(57.2002, 5.8531, 15.5905, lab(light));
        assertArrayEquals(new double[] {.306596, .256778, .371299}, PRINT.print(shares(0, .5, .5, 0)), 2e-6);
        assertArrayEquals(new double[] {.430667, .275540, .313850}, PRINT.print(shares(0, .4, 0, .3)), 1e-5);
    }

    @Test
    void sharesOfDemichel() {
        double[] shares = {.5, .4, .3, .2};
        assertEquals(.168, InksInRegister.share(0, shares), 1e-12);
        assertEquals(.042, InksInRegister.share(8, shares), 1e-12);
        assertEquals(.072, InksInRegister.share(4, shares), 1e-12);
        assertEquals(.112, InksInRegister.share(2, shares), 1e-12);
        assertEquals(.048, InksInRegister.share(6, shares), 1e-12);
        assertEquals(.012, InksInRegister.share(15, shares), 1e-12);
        assertEquals(
                1,
                IntStream.range(0, 16)
                        .mapToDouble(plates -> InksInRegister.share(plates, shares))
                        .sum(),
                1e-12);
    }

    /** Where primaries are products, the sum over the shares of Demichel is the product, whatever the light spread. */
    @Test
    void theSumOfPrimariesIsTheProduct() {
        List<double[]> full = shares(1, 1, 1, 1);
        for (double gain : new double[] {1, 1.7, 3}) {
            InksInRegister summed = PRINT.withOverprints(gain, full, Map.of());
            for (double share : new double[] {0, .1, .5, .9, 1}) {
                List<double[]> alone = shares(share, .4, 1 - share, .2);
                assertArrayEquals(PRINT.print(alone), summed.print(alone), 1e-12);
            }
        }
    }

    @Test
    void theSurfaceIsTheDarkestThereIs() {
        double[] surface = {.0174, .0174, .0174};
        InksInRegister print = new InksInRegister(ToyInks.PAPER, surface);
        assertArrayEquals(new double[] {.052255, .037400, .029678}, print.print(shares(1, 1, 1, 0)), 1e-6);
        assertEquals(23.7496, lab(print.print(shares(1, 1, 1, 0))).lightness(), 0.01);
        assertEquals(14.1868, lab(print.print(shares(1, 1, 1, 1))).lightness(), 0.01);
        assertEquals(0.8151, lab(PRINT.print(shares(1, 1, 1, 1))).lightness(), 0.01);
        double[] half = print.print(shares(.5, .5, .5, 0));
        assertArrayEquals(new double[] {.301091, .232013, .181141}, half, 2e-6);
        assertEquals(0.4847, lab(half).difference(lab(PRINT.print(shares(.5, .5, .5, 0)))), 1e-3);
        assertArrayEquals(ToyInks.full(1), print.print(List.of(ToyInks.full(1))), 1e-15);
    }

    /** Magenta first, cyan taken on to 0.8 of its density: Preucil 1953 as quoted by Chung and Hsu. */
    @Test
    void aMeasuredOverprintTakesTheProductsPlace() {
        double[] paper = ToyInks.PAPER;
        double[] taken = new double[3];
        for (int band = 0; band < 3; band++) {
            taken[band] = ToyInks.full(1)[band] * StrictMath.pow(ToyInks.full(2)[band] / paper[band], 0.8);
        }
        assertArrayEquals(new double[] {.077676, .040358, .148993}, taken, 1e-6);
        InksInRegister print =
                PRINT.withOverprints(ToyInks.GAIN, List.of(ToyInks.full(1), ToyInks.full(2)), Map.of(3, taken));
        assertArrayEquals(
                new double[] {.309240, .211589, .333031},
                print.print(List.of(ToyInks.alone(1, .6), ToyInks.alone(2, .5))),
                2e-6);
        assertArrayEquals(taken, print.print(List.of(ToyInks.full(1), ToyInks.full(2))), 1e-12);
        for (double share : new double[] {0, .3, 1}) {
            assertArrayEquals(
                    ToyInks.alone(1, share), print.print(List.of(ToyInks.alone(1, share), ToyInks.alone(2, 0))), 1e-12);
        }
    }

    private static InksInRegister wet(int... order) {
        List<double[]> full = IntStream.of(order).mapToObj(ToyInks::full).toList();
        return PRINT.withOverprints(ToyInks.GAIN, full, Map.of(), new Acceptance(0.8, Map.of()));
    }

    /** Wet magenta takes on 0.8 of cyan's density, or wet cyan of magenta's: the order shows. */
    @Test
    void wetInkTakesOnAShareAndTheOrderShows() {
        double[] cyanLast = wet(1, 2).print(List.of(ToyInks.full(1), ToyInks.full(2)));
        double[] magentaLast = wet(2, 1).print(List.of(ToyInks.full(2), ToyInks.full(1)));
        assertArrayEquals(new double[] {.077676, .040358, .148993}, cyanLast, 1e-6);
        assertArrayEquals(new double[] {.052802, .053252, .174668}, magentaLast, 1e-6);
        SmoothSpectrumTest.assertLab(28.1796, 18.8718, -26.4284, lab(cyanLast));
        SmoothSpectrumTest.assertLab(29.5411, 10.8030, -29.6771, lab(magentaLast));
        assertEquals(7.2788, lab(cyanLast).difference(lab(magentaLast)), 1e-3);
        double[] tones = wet(1, 2).print(List.of(ToyInks.alone(1, .6), ToyInks.alone(2, .5)));
        assertArrayEquals(new double[] {.309240, .211589, .333031}, tones, 2e-6);
        SmoothSpectrumTest.assertLab(56.1554, 13.6466, -12.1552, lab(tones));
        assertArrayEquals(
                ToyInks.alone(2, .5), wet(1, 2).print(List.of(ToyInks.alone(1, 0), ToyInks.alone(2, .5))), 1e-12);
    }

    /** What is told of a pair goes before what is told of all, what was measured before both, and the uppermost of several decides. */
    @Test
    void aPairsAcceptanceAndAMeasuredOverprint() {
        List<double[]> full = List.of(ToyInks.full(0), ToyInks.full(1), ToyInks.full(2));
        Acceptance told = new Acceptance(0.9, Map.of(0b110, 0.5));
        double[] yellowMagentaCyan =
                PRINT.withOverprints(ToyInks.GAIN, full, Map.of(), told).print(full);
        for (int band = 0; band < 3; band++) {
            double paper = ToyInks.PAPER[band];
            double wished = paper
                    * full.get(0)[band]
                    / paper
                    * StrictMath.pow(full.get(1)[band] / paper, 0.9)
                    * StrictMath.pow(full.get(2)[band] / paper, 0.5);
            assertEquals(wished, yellowMagentaCyan[band], 1e-12);
        }
        double[] measured = {.1, .2, .1};
        InksInRegister known = PRINT.withOverprints(ToyInks.GAIN, full, Map.of(0b110, measured), told);
        assertArrayEquals(measured, known.print(List.of(ToyInks.PAPER, ToyInks.full(1), ToyInks.full(2))), 1e-12);
    }

    @Test
    void aShareThatNoInkTakesOnIsRefused() {
        for (double share : new double[] {0, 1.01, Double.NaN}) {
            assertThrows(Refusal.class, () -> new Acceptance(share, Map.of()));
            assertThrows(Refusal.class, () -> new Acceptance(1, Map.of(3, share)));
        }
    }

    @Test
    void theOrderOfPlatesChangesNothing() {
        List<double[]> alone = shares(.5, .4, .3, .2);
        List<double[]> back = List.of(alone.get(3), alone.get(2), alone.get(1), alone.get(0));
        assertArrayEquals(PRINT.print(alone), PRINT.print(back), 1e-15);
    }

    @Test
    void anInkByOnePatch() {
        double[] paper = SmoothSpectrum.of(Xyz.ofLight(ToyInks.PAPER)).orElseThrow();
        InkInBands ink = InkInBands.ofPatch("ink", paper, Xyz.ofLight(ToyInks.full(1)), 10, 1.7);
        double[] shares =
                SmoothSpectrum.over(paper, Xyz.ofLight(ToyInks.full(1))).orElseThrow();
        for (int band = 0; band < shares.length; band++) {
            assertEquals(-StrictMath.log10(shares[band]), ink.density(band, 10), 1e-12);
            assertEquals(0, ink.density(band, 0));
        }
        assertEquals(
                DoubleStream.of(shares)
                        .map(one -> -StrictMath.log1p(StrictMath.log10(one) / 1.7) / 10)
                        .max()
                        .orElseThrow(),
                ink.strongestPerMicrometre(),
                1e-12);
        assertThrows(Refusal.class, () -> InkInBands.ofPatch("ink", paper, Xyz.ofLight(ToyInks.full(3)), 10, 1.2));
        assertThrows(Refusal.class, () -> InkInBands.ofPatch("ink", paper, Xyz.ofLight(.95, .9, .9), 10, 1.7));
        assertThrows(Refusal.class, () -> InkInBands.ofPatch("ink", paper, Xyz.ofLight(ToyInks.full(1)), 0, 1.7));
    }

    @Test
    void twoPlatesOfOneHue() {
        ToneSplit split = new ToneSplit(.45, 1.30);
        double[][] rows = {{.4375, .302992, .134508}, {.875, .419623, .455377}, {1.3125, .447949, .864551}};
        for (double[] row : rows) {
            assertEquals(row[1], split.pale(row[0]), 1e-6);
            assertEquals(row[2], split.dark(row[0]), 1e-6);
        }
        assertEquals(0, split.pale(0));
        assertEquals(.45, split.pale(1.75), 1e-12);
        assertEquals(1.30, split.dark(1.75), 1e-12);
        for (double density = 0; density < 1.74; density += 0.01) {
            assertEquals(true, split.pale(density + .01) > split.pale(density));
            assertEquals(true, split.dark(density + .01) > split.dark(density));
        }
    }
}
