package greyground.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.fit.SharedErrors.ToneScale;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Beliefs about what repeats can't show, each held against the change that it stands for, worked out directly. */
class SharedErrorsTest {
    private static final double BARE = 95;

    private static SharedErrors of(ToneScale scale) {
        return new SharedErrors(scale, SharedErrors.GLARE_UNTOLD, SharedErrors.PAPER_MEASURED, 180);
    }

    /** CIE 15. */
    private static double light(double lightness) {
        return lightness > 8 ? Math.pow((lightness + 16) / 116, 3) : lightness * 27 / 24_389.0;
    }

    private static double lightness(double light) {
        return light > 216.0 / 24_389 ? 116 * Math.cbrt(light) - 16 : light * 24_389.0 / 27;
    }

    /** IEC 61966-2-1. */
    private static double srgb(double code) {
        return code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }

    /** docs/reading.md: codes of power 1.8 read as sRGB are 7 L* off, and the 95 % band of a scanner of which nothing is said holds that. */
    @Test
    void aScannerOfAnotherPowerIsHeld() {
        double worst = 0;
        for (double power : new double[] {1.6, 1.8, 2.0, 2.2, 2.4, 2.6}) {
            for (double tone = 15; tone < 94; tone++) {
                double share = light(tone) / light(BARE);
                double read = lightness(srgb(Math.pow(share, 1 / power)) * light(BARE));
                double half = 1.96 * of(ToneScale.UNSTATED).scannerError(read, BARE);
                worst = power == 1.8 ? Math.max(worst, Math.abs(read - tone)) : worst;
                // The ends of an even spread lie 1.73 of its errors out, but sRGB's foot is no power.
                assertTrue(
                        Math.abs(read - tone) <= 1.25 * half, power + " at L* " + tone + ": " + read + " +- " + half);
            }
        }
        assertEquals(7, worst, 0.7);
    }

    /** Glare of 1.15 % of half of paper's light, added to a dark and taken from nothing. */
    @Test
    void glareLightensDarksAsItsErrorSays() {
        double dark = light(20);
        double strayed = dark + 0.0115 * 0.5 * (light(BARE) - dark);
        double moved = lightness(strayed) - 20;
        double without = new SharedErrors(ToneScale.UNSTATED, 0, 0.01, 180).scannerError(20, BARE);
        double with = of(ToneScale.UNSTATED).scannerError(20, BARE);
        // A first-order step in a curve that bends.
        assertEquals(moved, Math.sqrt(with * with - without * without), 0.15 * moved);
    }

    /** A sheet 0.01 D lighter makes every tone lighter by that share of its light. */
    @Test
    void paperMovesEveryTone() {
        SharedErrors paper = new SharedErrors(ToneScale.STATED, 0, 0.01, 180);
        assertEquals(lightness(light(BARE) * Math.pow(10, 0.01)) - BARE, paper.scannerError(BARE, BARE), 0.02);
    }

    /** The wider band never lies within the narrower, and knowing more never widens it. */
    @Test
    void whatIsKnownNarrowsTheBand() {
        List<MeasuredPatch> patches = new ArrayList<>(InventedPlate.read(3, 0.4, 5));
        MeasuredResponse measured = MeasuredResponse.of("invented", patches);
        for (MeasuredLevel level : measured.levels()) {
            double coverage = level.coverage();
            double stated = of(ToneScale.STATED).halfWidth(measured, coverage);
            assertTrue(stated > measured.halfWidth(coverage));
            assertTrue(of(ToneScale.UNSTATED).halfWidth(measured, coverage) >= stated);
            SharedErrors told =
                    new SharedErrors(ToneScale.STATED, SharedErrors.GLARE_TOLD, SharedErrors.PAPER_MEASURED, 180);
            assertTrue(told.halfWidth(measured, coverage) <= stated);
        }
    }
}
