package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import greyground.tone.ColourSight.Emulsion;
import greyground.tone.ColourSight.Filter;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ColourSightTest {
    /** Reflectances by which Smits B. 1999, An RGB-to-Spectrum Conversion for Reflectances, J. Graphics Tools 4(4), paints the lights. */
    private static final double[][] REFLECTANCES = {
        {.1012, .0515, 0, 0, 0, 0, .8325, 1.0149, 1.0149, 1.0149},
        {0, 0, .0273, .7937, 1, .9418, .1719, 0, 0, .0025},
        {1, 1, .8916, .3323, 0, 0, .0003, .0369, .0483, .0496}
    };

    private static DoubleUnaryOperator rising(double from, double to) {
        return nm -> nm < from ? 0 : nm > to ? 1 : .5 - .5 * Math.cos(Math.PI * (nm - from) / (to - from));
    }

    private static DoubleUnaryOperator block(double to) {
        return nm -> rising(380, 420).applyAsDouble(nm)
                * (1 - rising(to - 20, to + 20).applyAsDouble(nm));
    }

    /** Wyman C., Sloan P. and Shirley P. 2013, JCGT 2(2): y-bar as two lobes (from memory). */
    private static double eye(double nm) {
        double wide = (nm - 568.8) * (nm < 568.8 ? .0213 : .0247);
        double narrow = (nm - 530.9) * (nm < 530.9 ? .0613 : .0322);
        return .821 * Math.exp(-.5 * wide * wide) + .286 * Math.exp(-.5 * narrow * narrow);
    }

    private static DoubleUnaryOperator sensitivity(Emulsion emulsion) {
        return switch (emulsion) {
            case LUMINANCE -> ColourSightTest::eye;
            case PANCHROMATIC -> block(650);
            case ORTHOCHROMATIC -> block(580);
            case BLUE_SENSITIVE -> block(500);
        };
    }

    private static DoubleUnaryOperator transmittance(Filter filter) {
        return switch (filter) {
            case NONE -> nm -> 1;
            case YELLOW -> rising(460, 510);
            case ORANGE -> rising(530, 570);
            case RED -> rising(575, 615);
            case GREEN ->
                nm -> rising(470, 510).applyAsDouble(nm) * (1 - rising(560, 600).applyAsDouble(nm));
            case BLUE -> nm -> 1 - rising(470, 510).applyAsDouble(nm);
        };
    }

    /** The weights are sums over a spectrum; 0.06 is what the eye's own come out wrong by, against 0.2126, 0.7152, 0.0722 of BT.709. */
    @Test
    void weightsAreWhatEmulsionAndFilterReceive() {
        for (Emulsion emulsion : Emulsion.values()) {
            for (Filter filter : Filter.values()) {
                double[] sums = new double[3];
                double light = 0;
                double all = 0;
                for (int nm = 380; nm < 720; nm++) {
                    double seen = sensitivity(emulsion).applyAsDouble(nm);
                    double through = seen * transmittance(filter).applyAsDouble(nm);
                    all += seen;
                    light += through;
                    for (int c = 0; c < 3; c++) {
                        sums[c] += through * REFLECTANCES[c][(nm - 380) / 34];
                    }
                }
                ColourSight sight = new ColourSight(filter, emulsion, Optional.empty());
                if (light < 0.01 * all) {
                    String said = assertThrows(Refusal.class, sight::weights).getMessage();
                    assertTrue(said.contains("sees next to nothing") && said.contains("choose"), said);
                } else if (!sight.equals(ColourSight.EYE)) {
                    double sum = DoubleStream.of(sums).sum();
                    double[] expected =
                            DoubleStream.of(sums).map(each -> each / sum).toArray();
                    assertArrayEquals(expected, sight.weights().orElseThrow().shares(), 0.06, filter + " " + emulsion);
                }
            }
        }
        assertEquals(Optional.empty(), ColourSight.EYE.weights());
    }

    /** L* of greys, computed from the weights and sRGB's own curve by numpy. */
    @ParameterizedTest
    @CsvSource({
        "RED, LUMINANCE, 200, 40, 30, 76.719",
        "ORANGE, LUMINANCE, 200, 40, 30, 58.596",
        "GREEN, LUMINANCE, 200, 40, 30, 20.803",
        "NONE, ORTHOCHROMATIC, 200, 40, 30, 21.411",
        "NONE, BLUE_SENSITIVE, 200, 40, 30, 22.498",
        "RED, LUMINANCE, 120, 170, 220, 54.005",
        "YELLOW, LUMINANCE, 120, 170, 220, 66.432",
        "NONE, ORTHOCHROMATIC, 120, 170, 220, 79.717",
        "NONE, BLUE_SENSITIVE, 120, 170, 220, 84.840",
        "RED, LUMINANCE, 224, 172, 140, 87.117",
        "NONE, ORTHOCHROMATIC, 224, 172, 140, 65.190",
        "BLUE, LUMINANCE, 240, 210, 40, 54.986",
        "NONE, BLUE_SENSITIVE, 240, 210, 40, 42.766"
    })
    void coloursComeOutAsTheirWeightsSay(
            Filter filter, Emulsion emulsion, int red, int green, int blue, double expected) {
        ColourWeights weights =
                new ColourSight(filter, emulsion, Optional.empty()).weights().orElseThrow();
        double[] light = {Srgb.decode(red / 255.0), Srgb.decode(green / 255.0), Srgb.decode(blue / 255.0)};
        double[] shares = weights.shares();
        double straight = shares[0] * light[0] + shares[1] * light[1] + shares[2] * light[2];
        assertEquals(expected, Lightness.ofLuminance(straight), 1e-3);
        double[] luminances = Primaries.SRGB.luminances();
        double[] beside = weights.besideLuminance(Primaries.SRGB.toD50());
        double grey = luminances[0] * light[0]
                + luminances[1] * light[1]
                + luminances[2] * light[2]
                + beside[0] * (light[0] - light[1])
                + beside[1] * (light[2] - light[1]);
        assertEquals(straight, grey, 1e-12, "as luminance and what colour adds to it");
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.5,0.5,0.5", "1.2,-0.1,-0.1", "0,0,0"})
    void weightsThatMakeNoOneAreRefused(String words) {
        double[] weights = DoubleStream.of(java.util.Arrays.stream(words.split(","))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray();
        String said = assertThrows(Refusal.class, () -> new ColourWeights(weights[0], weights[1], weights[2]))
                .getMessage();
        assertTrue(said.contains("such as 0.3,0.6,0.1"), said);
    }

    /** X and Z over white's: what lies beside luminance is the whole of the one and nothing of the other. */
    @Test
    void xAndZAreGreysOfTheirOwn() {
        assertArrayEquals(new double[] {1, 0}, ColourWeights.ofX().besideLuminance(), 1e-9);
        assertArrayEquals(new double[] {0, 1}, ColourWeights.ofZ().besideLuminance(), 1e-9);
    }

    @Test
    void aFilterBeforeWeightsOfOnesOwnIsRefused() {
        ColourSight both =
                new ColourSight(Filter.RED, Emulsion.LUMINANCE, Optional.of(new ColourWeights(0.3, 0.6, 0.1)));
        String said = assertThrows(Refusal.class, both::weights).getMessage();
        assertTrue(said.contains("leave out --through"), said);
    }
}
