package greyground.grain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class InterferenceTest {
    private static final Resolution FILM = new Resolution(1440);

    private static Grain.Halftone lines(double perCentimetre, double degrees) {
        return new Grain.Halftone(new Ruling(perCentimetre), degrees, Grain.DotShape.LINE);
    }

    private static DotSpectrum spectrum(Grain grain) {
        return DotSpectrum.of(ThresholdTile.of(grain, FILM), 0.5, FILM);
    }

    /** One wave and its opposite; angle as the film's rows of lines, so that the wave runs at right angles to it. */
    private static DotSpectrum wave(double perMillimetre, double degrees) {
        double across = perMillimetre * Math.sin(Math.toRadians(degrees));
        double up = perMillimetre * Math.cos(Math.toRadians(degrees));
        return new DotSpectrum(List.of(new DotSpectrum.Peak(across, up, 0.6), new DotSpectrum.Peak(-across, -up, 0.6)));
    }

    /** |6.0 - 6.2| = 0.2 to the millimetre. */
    @Test
    void sixtyAndSixtyTwoLinesToTheCentimetreBeatEveryFiveMillimetres() {
        Interference.Beat beat =
                Interference.between(wave(6, 0), wave(6.2, 0)).worst().orElseThrow();
        assertEquals(5, beat.spacingMillimetres(), 1e-9);
        assertEquals(90, beat.directionDegrees(), 1e-9);
        assertEquals(0.18, beat.strength(), 1e-12);
    }

    /** Two equal rulings of pitch p a small angle apart: p / (2 sin(angle / 2)), across the bisector. */
    @ParameterizedTest
    @CsvSource({"0.5", "1", "3", "5"})
    void equalRulingsALittleTurnedBeatByTheChord(double degrees) {
        double pitch = 1 / 6.0;
        Interference.Beat beat =
                Interference.between(wave(6, 0), wave(6, degrees)).worst().orElseThrow();
        assertEquals(pitch / (2 * Math.sin(Math.toRadians(degrees) / 2)), beat.spacingMillimetres(), 1e-9);
        double across = Math.min(beat.directionDegrees(), 180 - beat.directionDegrees());
        assertEquals(degrees / 2, across, 1e-9);
    }

    @Test
    void oneAndTheSameRulingDoesNotBeat() {
        assertTrue(Interference.between(wave(6, 0), wave(6, 0)).beats().isEmpty());
        assertEquals("none", Interference.between(wave(6, 0), wave(6, 0)).words());
    }

    @Test
    void finerThanTheEyePartsIsLeftOut() {
        assertTrue(Interference.between(wave(6, 0), wave(7.01, 0)).beats().isEmpty());
        assertEquals(1, Interference.between(wave(6, 0), wave(6.99, 0)).beats().size());
    }

    /** Lines to the centimetre and degrees. */
    static List<Arguments> rulings() {
        return Sweep.of(List.of(
                Arguments.of(48, 0),
                Arguments.of(60, 45),
                Arguments.of(60, 18.43),
                Arguments.of(33.3, 75),
                Arguments.of(80, 90)));
    }

    /** Two rulings that meet. */
    static List<Arguments> pairs() {
        return Sweep.of(
                List.of(Arguments.of(60, 0, 62, 0), Arguments.of(60, 45, 60, 47), Arguments.of(48, 15, 50, 18)));
    }

    /** Spacings in micrometres and seeds. */
    static List<Arguments> grains() {
        return Sweep.of(List.of(Arguments.of(150, 1), Arguments.of(180, 2), Arguments.of(400, 1)));
    }

    /** Half-black lines are a square wave: its first cosine has the amplitude 2/pi, its third a third of it. */
    @ParameterizedTest
    @MethodSource("rulings")
    void aHalftonesWavesAreThoseOfItsRealRuling(double perCentimetre, double degrees) {
        Grain.Halftone halftone = lines(perCentimetre, degrees);
        HalftoneGeometry real = HalftoneScreen.of(halftone, FILM).geometry();
        DotSpectrum.Peak first = spectrum(halftone).peaks().get(0);
        assertEquals(real.linesPerCentimetre() / 10, first.frequency(), 0.001);
        double wave = Math.toDegrees(Math.atan2(Math.abs(first.across()), Math.abs(first.up())));
        assertEquals(real.angleDegrees(), wave, 0.02);
        assertEquals(2 / Math.PI, first.amplitude(), 0.02);
    }

    /** As two real films would do it: the beat of the rulings that the film really has. */
    @ParameterizedTest
    @MethodSource("pairs")
    void realHalftonesBeatAtTheDifferenceOfTheirRealRulings(double one, double turned, double other, double again) {
        HalftoneGeometry first = HalftoneScreen.of(lines(one, turned), FILM).geometry();
        HalftoneGeometry second = HalftoneScreen.of(lines(other, again), FILM).geometry();
        double a = Math.toRadians(first.angleDegrees());
        double b = Math.toRadians(second.angleDegrees());
        double f = first.linesPerCentimetre() / 10;
        double g = second.linesPerCentimetre() / 10;
        double expected = Math.hypot(f * Math.sin(a) - g * Math.sin(b), f * Math.cos(a) - g * Math.cos(b));
        Interference.Beat beat = Interference.between(spectrum(lines(one, turned)), spectrum(lines(other, again)))
                .worst()
                .orElseThrow();
        assertEquals(expected, beat.perMillimetre(), 0.002);
        assertEquals(2 / Math.PI / Math.PI, beat.strength(), 0.015);
    }

    @ParameterizedTest
    @MethodSource("grains")
    void aStochasticGrainHasNoWavesAndBeatsWithNothing(double spacing, long seed) {
        ThresholdTile tile = ThresholdTile.of(new Grain.Stochastic(spacing, seed), FILM);
        for (double coverage : new double[] {0.2, 0.8}) {
            DotSpectrum grain = DotSpectrum.of(tile, coverage, FILM);
            assertTrue(grain.peaks().isEmpty(), grain.toString());
        }
        DotSpectrum grain = DotSpectrum.of(tile, 0.5, FILM);
        DotSpectrum dots = spectrum(new Grain.Halftone(new Ruling(60), 45, Grain.DotShape.ROUND));
        assertTrue(!dots.peaks().isEmpty());
        assertEquals("none", Interference.between(dots, grain).words());
        assertEquals(
                "none", Interference.between(DotSpectrum.ofPrinter(FILM), grain).words());
    }

    /** A positive in round dots of 60 to the centimetre on a ruled screen of 63, both at 45 degrees: 0.3 to the millimetre. */
    @Test
    void aPhotogravurePositivePrintedAsHalftoneBeatsWithARuledScreen() {
        DotSpectrum positive = spectrum(new Grain.Halftone(new Ruling(60), 45, Grain.DotShape.ROUND));
        DotSpectrum screen = spectrum(new Grain.Halftone(new Ruling(63), 45, Grain.DotShape.ROUND));
        Interference bands = Interference.between(positive, screen);
        assertEquals(0.3, bands.worst().orElseThrow().perMillimetre(), 0.015);
        // Bands run along both diagonals.
        assertTrue(bands.beats().stream().anyMatch(beat -> Math.abs(beat.directionDegrees() - 45) < 5));
        assertTrue(bands.beats().stream().anyMatch(beat -> Math.abs(beat.directionDegrees() - 135) < 5));
        assertTrue(bands.words().startsWith("bands 3."), bands.words());
    }

    @Test
    void blurOnlyWeakens() {
        SplittableRandom chance = new SplittableRandom(5);
        DotSpectrum dots = spectrum(lines(60, 30));
        double before = dots.peaks().get(0).amplitude();
        for (double blur = chance.nextDouble(2, 6); blur < 60; blur += chance.nextDouble(2, 6)) {
            double after = dots.blurred(blur).peaks().get(0).amplitude();
            assertTrue(after < before);
            before = after;
        }
        // exp(-2 (pi s f)^2), s 25 um, f 6 to the millimetre: 0.641381 (computed apart).
        assertEquals(0.641381, wave(6, 0).blurred(25).peaks().get(0).amplitude() / 0.6, 1e-6);
    }

    /** The printer's rows of 1440 dpi against a ruled screen of one tenth that: harmonics meet, nothing seen is left. */
    @Test
    void printersOwnRowsAreBlurredAwayBeforeTheyBeat() {
        DotSpectrum rows = DotSpectrum.ofPrinter(FILM);
        assertEquals(56.6929, rows.peaks().get(0).frequency(), 1e-4);
        DotSpectrum almost = wave(56.5, 90);
        assertEquals(
                1 / 0.1929,
                Interference.between(rows, almost).worst().orElseThrow().spacingMillimetres(),
                0.01);
        assertEquals(
                "none",
                Interference.between(rows.blurred(10), almost.blurred(10)).words());
    }

    @Test
    void theTransformIsTheDefinition() {
        SplittableRandom chance = new SplittableRandom(3);
        int size = 64;
        double[] real = chance.doubles(size).toArray();
        double[] imaginary = chance.doubles(size).toArray();
        double[] r = real.clone();
        double[] i = imaginary.clone();
        new FourierTransform(size).transform(r, i, 0, 1);
        for (int k = 0; k < size; k++) {
            double sumReal = 0;
            double sumImaginary = 0;
            for (int n = 0; n < size; n++) {
                double turn = -2 * Math.PI * k * n / size;
                sumReal += real[n] * Math.cos(turn) - imaginary[n] * Math.sin(turn);
                sumImaginary += real[n] * Math.sin(turn) + imaginary[n] * Math.cos(turn);
            }
            assertEquals(sumReal, r[k], 1e-10);
            assertEquals(sumImaginary, i[k], 1e-10);
        }
    }

    @Test
    void aToneWithoutDotsIsRefused() {
        ThresholdTile tile = ThresholdTile.of(lines(60, 0), FILM);
        assertThrows(Refusal.class, () -> DotSpectrum.of(tile, 0, FILM));
        assertThrows(Refusal.class, () -> DotSpectrum.of(tile, 1, FILM));
        assertThrows(IllegalArgumentException.class, () -> new FourierTransform(100));
    }
}
