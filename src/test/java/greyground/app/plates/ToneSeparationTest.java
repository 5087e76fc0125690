package greyground.app.plates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.tone.Lightness;
import greyground.tone.PrintRange;
import java.util.List;
import org.junit.jupiter.api.Test;

class ToneSeparationTest {
    private static final double PAPER = Math.pow(10, -0.06);
    private static final double SURFACE = PAPER * Math.pow(10, -1.7);

    private static double lightness(double density) {
        return Lightness.ofLuminance(SURFACE + (PAPER - SURFACE) * Math.pow(10, -density));
    }

    private static ToneSeparation of(double pale, double dark, double tone) {
        return new ToneSeparation(
                PAPER,
                SURFACE,
                List.of(
                        new PrintRange(lightness(tone), lightness(pale + tone)),
                        new PrintRange(lightness(tone), lightness(dark + tone))));
    }

    /** Over one another the two print the tone that was wished: the light above the surface is the product. */
    @Test
    void togetherThePlatesPrintTheWish() {
        ToneSeparation two = of(.45, 1.30, .01);
        PrintRange range = two.together();
        double before = 1000;
        double darkBefore = 1000;
        for (double wished = range.paperLightness(); wished > range.darkestLightness(); wished -= 0.5) {
            double[] alone = two.parted(wished);
            double light = SURFACE
                    + (Lightness.toLuminance(alone[0]) - SURFACE)
                            * (Lightness.toLuminance(alone[1]) - SURFACE)
                            / (PAPER - SURFACE);
            assertEquals(wished, Lightness.ofLuminance(light), 1e-9);
            assertTrue(alone[0] < before && alone[1] <= darkBefore, "both plates fall with the tone");
            before = alone[0];
            darkBefore = alone[1];
        }
        double[] white = two.parted(range.paperLightness());
        assertEquals(lightness(.01), white[0], 1e-9);
        assertEquals(lightness(.01), white[1], 1e-9);
        double[] black = two.parted(range.darkestLightness());
        assertEquals(lightness(.46), black[0], 1e-6);
        assertEquals(lightness(1.31), black[1], 1e-6);
    }

    /** Whichever is printed first: the lights are the pale plate's. */
    @Test
    void theOrderOfPrintingChangesNoPlate() {
        ToneSeparation two = of(1.30, .45, 0);
        assertEquals(1, two.pale());
        assertEquals(of(.45, 1.30, 0).parted(60)[0], two.parted(60)[1], 1e-12);
    }
}
