package greyground.colour;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Smooth spectra of the invented inks of {@link ToyInks}; numbers were computed apart from the program. */
class SmoothSpectrumTest {
    private static final double[] PAPER = spectrum(ToyInks.PAPER);

    private static double[] spectrum(double... light) {
        return SmoothSpectrum.of(Xyz.ofLight(light)).orElseThrow();
    }

    private static double[] over(double... light) {
        return SmoothSpectrum.over(PAPER, Xyz.ofLight(light)).orElseThrow();
    }

    private static double at(double[] spectrum, int nanometres) {
        return spectrum[(nanometres - 390) / 10];
    }

    private static void assertBands(double[] spectrum, double... at390And450And550And650And730) {
        int[] places = {390, 450, 550, 650, 730};
        for (int i = 0; i < places.length; i++) {
            assertEquals(at390And450And550And650And730[i], at(spectrum, places[i]), 2e-5, places[i] + " nm");
        }
    }

    private static double steps(double[] shares) {
        double sum = 0;
        for (int band = 1; band < shares.length; band++) {
            double step = StrictMath.log(shares[band] / (1 - shares[band]))
                    - StrictMath.log(shares[band - 1] / (1 - shares[band - 1]));
            sum += step * step;
        }
        return sum;
    }

    @Test
    void weightsOfTheBands() {
        double[][] weights = SmoothSpectrum.weights();
        assertEquals(.0391857, at(weights[0], 550), 1e-6);
        assertEquals(.0929873, at(weights[1], 550), 1e-6);
        assertEquals(.000676914, at(weights[2], 550), 1e-8);
    }

    @Test
    void spectraAreTheSmoothest() {
        assertEquals(.783762, at(PAPER, 450), 2e-5);
        assertEquals(.842007, at(PAPER, 550), 2e-5);
        assertEquals(.856206, at(PAPER, 650), 2e-5);
        assertBands(over(ToyInks.full(0)), .139081, .170371, .814820, .906317, .907025);
        assertBands(over(ToyInks.full(1)), .355841, .289812, .103950, .666278, .675514);
        assertBands(over(ToyInks.full(2)), .592482, .589605, .379537, .150907, .148984);
        assertEquals(1.097135, steps(over(ToyInks.full(0))), 1e-4);
        assertEquals(1.333687, steps(over(ToyInks.full(1))), 1e-4);
        assertEquals(.312093, steps(over(ToyInks.full(2))), 1e-4);
    }

    /** A single ink comes back as it was given. */
    @Test
    void theColourOfASpectrumIsTheOneGiven() {
        for (int ink = 0; ink < 4; ink++) {
            double[] shares = over(ToyInks.full(ink));
            double[] light = new double[PAPER.length];
            for (int band = 0; band < light.length; band++) {
                light[band] = PAPER[band] * shares[band];
            }
            assertArrayEquals(ToyInks.full(ink), SmoothSpectrum.colour(light).light(), 1e-10);
        }
    }

    @Test
    void overprints() {
        assertLab(52.9344, -28.4685, 26.4559, printed(0, 2));
        assertLab(26.8265, 25.1874, -25.3408, printed(1, 2));
        assertLab(23.3106, 14.3239, 10.8572, printed(0, 1, 2));
    }

    private static Lab printed(int... inks) {
        List<double[]> alone = java.util.Arrays.stream(inks)
                .mapToObj(ink -> InkInBands.ofPatch("ink", PAPER, Xyz.ofLight(ToyInks.full(ink)), 10, 1.7)
                        .onPaper(PAPER, 10))
                .toList();
        return Lab.of(SmoothSpectrum.colour(new InksInRegister(PAPER, new double[PAPER.length]).print(alone)));
    }

    static void assertLab(double lightness, double a, double b, Lab lab) {
        assertEquals(lightness, lab.lightness(), 0.01);
        assertEquals(a, lab.a(), 0.01);
        assertEquals(b, lab.b(), 0.01);
    }

    @Test
    void coloursThatNoReflectanceHasAreToldApart() {
        assertTrue(SmoothSpectrum.of(Xyz.ofLight(1.2, 1, 1)).isEmpty());
        assertTrue(SmoothSpectrum.over(PAPER, Xyz.ofLight(.95, .9, .9)).isEmpty());
        assertTrue(SmoothSpectrum.of(new Xyz(0, .5, 0)).isEmpty());
        assertTrue(SmoothSpectrum.of(new Lab(90, 0, -90).xyz()).isEmpty());
        assertTrue(SmoothSpectrum.of(new Xyz(Double.NaN, 1, 1)).isEmpty());
    }
}
