package greyground.colour;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.tone.Lightness;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BandsBetweenTest {
    private static final double DENSEST = 1.7;
    private static final double GAIN = 1.7;

    private static double through(double[] films, double strength) {
        return Arrays.stream(films)
                .map(film -> StrictMath.pow(10, DENSEST * StrictMath.expm1(-strength * film) / GAIN))
                .average()
                .orElseThrow();
    }

    /** Films of all shapes, in every band as light as that band's own strength prints it. */
    @Test
    void everyBandIsAsIfItWereComputed() {
        double[] paper = new double[SmoothSpectrum.BANDS];
        Arrays.fill(paper, 0.87);
        Random random = new Random(7);
        for (Lab colour :
                new Lab[] {new Lab(85, -3, 62), new Lab(51, 48, -3), new Lab(52, -8, -32), new Lab(30, 3, 5)}) {
            InkInBands ink = InkInBands.ofPatch("ink", paper, colour.xyz(), 10, DENSEST);
            BandsBetween bands = BandsBetween.of(ink, 0);
            for (double share : new double[] {0.1, 0.6, 1}) {
                for (double thickness : new double[] {1, 4, 10, 25}) {
                    double[] films = new double[2000];
                    for (int i = 0; i < films.length; i++) {
                        films[i] = random.nextDouble() < share
                                ? -thickness * StrictMath.log(1 - random.nextDouble()) * random.nextDouble() * 2
                                : 0;
                    }
                    double[] logarithms = Arrays.stream(bands.strengths())
                            .map(strength -> StrictMath.log(through(films, strength)))
                            .toArray();
                    for (int band = 0; band < paper.length; band++) {
                        double own = GAIN * StrictMath.log(through(films, ink.strengthPerMicrometre(band)));
                        assertEquals(
                                Lightness.ofLuminance(StrictMath.exp(own)),
                                Lightness.ofLuminance(StrictMath.exp(GAIN * bands.logarithm(band, logarithms))),
                                0.1);
                    }
                }
            }
        }
    }

    @Test
    void aGreyInkIsSeenOnce() {
        BandsBetween bands = BandsBetween.of(InkInBands.grey(1.7, 0.15), 0.01);
        assertArrayEquals(new double[] {0.15}, bands.strengths(), 1e-15);
        assertEquals(-0.4, bands.logarithm(7, new double[] {-0.4}), 1e-15);
    }
}
