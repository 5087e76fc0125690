package greyground.app;

import greyground.tone.ArtRange;
import java.util.Arrays;

/**
 * Finds the art's paper white and ink black: the greys that half a percent of its pixels pass, which a few specks of dust or
 * glints can't move (assumed share). Art that hardly spans any tone, such as a flat test field, keeps the whole scale: there is
 * no telling which end it is.
 */
final class AutomaticRange {
    private static final double TAIL_SHARE = 0.005;
    private static final double LEAST_SPAN = 0.1;
    private static final double CODES = 65_535;

    private AutomaticRange() {}

    /** Finds both points from 65 536 counts of linear grey. */
    static ArtRange of(long[] greys) {
        double tail = TAIL_SHARE * Arrays.stream(greys).sum();
        int black = 0;
        for (double passed = greys[0]; passed <= tail && black < greys.length - 1; passed += greys[black]) {
            black++;
        }
        int white = greys.length - 1;
        for (double passed = greys[white]; passed <= tail && white > 0; passed += greys[white]) {
            white--;
        }
        if (white - black < LEAST_SPAN * CODES) {
            return ArtRange.WHOLE;
        }
        return new ArtRange(white / CODES, black / CODES);
    }
}
