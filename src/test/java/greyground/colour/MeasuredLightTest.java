package greyground.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class MeasuredLightTest {
    private static final double[] PAPER =
            SmoothSpectrum.of(Xyz.ofLight(ToyInks.PAPER)).orElseThrow();
    private static final InkInBands MAGENTA = InkInBands.ofPatch("ink", PAPER, Xyz.ofLight(ToyInks.full(1)), 10, 1.7);

    private static List<Xyz> tones() {
        List<Xyz> tones = new ArrayList<>();
        for (double share : new double[] {0.1, 0.3, 0.5, 0.8, 1}) {
            tones.add(Xyz.ofLight(ToyInks.alone(1, share)));
        }
        return tones;
    }

    private static Xyz printed(MeasuredLight light, double place) {
        double[] spectrum = PAPER.clone();
        for (int band = 0; band < spectrum.length; band++) {
            spectrum[band] *= StrictMath.exp(light.logarithm(band, new double[] {place}));
        }
        return SmoothSpectrum.colour(spectrum);
    }

    /** In whatever order they were measured, and with bare paper between. */
    @Test
    void measuredTonesComeBack() {
        List<Xyz> shuffled = tones();
        Collections.reverse(shuffled);
        MeasuredLight light = MeasuredLight.of(MAGENTA, PAPER, shuffled);
        assertEquals(1, light.strengths().length);
        assertEquals(MAGENTA.strongestPerMicrometre(), light.strengths()[0]);
        for (Xyz tone : tones()) {
            double off = Lab.of(printed(light, light.place(PAPER, tone))).difference(Lab.of(tone));
            assertTrue(off < 1e-3, "off " + off);
        }
        assertEquals(0, Lab.of(printed(light, 0)).difference(Lab.of(SmoothSpectrum.colour(PAPER))), 1e-9);
    }

    @Test
    void everyBandFallsFromPaperPastTheDarkestTone() {
        MeasuredLight light = MeasuredLight.of(MAGENTA, PAPER, tones());
        double[] before = new double[SmoothSpectrum.BANDS];
        for (double place = 0; place > -4; place -= 0.01) {
            for (int band = 0; band < before.length; band++) {
                double now = light.logarithm(band, new double[] {place});
                assertTrue(now <= before[band] + 1e-12, "band " + band + " at " + place);
                before[band] = now;
            }
        }
    }

    /** A colour that no layer has becomes the nearest that one has; what is lighter than paper is paper. */
    @Test
    void anImpossibleColourIsTheNearestThatIsPossible() {
        for (Xyz colour :
                List.of(Xyz.WHITE, new Xyz(0.01, 0.5, 0.01), new Xyz(0.6, 0.1, 0.9), new Xyz(1e-5, 1e-5, 1e-5))) {
            for (double share : MeasuredLight.shares(PAPER, colour)) {
                assertTrue(share > 0 && share <= 1, colour + ": " + share);
            }
        }
    }

    @Test
    void tonesOfBarePaperAreNone() {
        assertThrows(
                Refusal.class,
                () -> MeasuredLight.of(MAGENTA, PAPER, List.of(SmoothSpectrum.colour(PAPER), Xyz.WHITE)));
    }
}
