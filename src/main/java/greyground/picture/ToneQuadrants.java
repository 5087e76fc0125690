package greyground.picture;

import greyground.picture.Drawing.Anchor;
import greyground.picture.Drawing.Point;
import greyground.quantity.Refusal;
import java.util.List;

/** The four quadrants of a tone diagram: where a number of each axis lies, the grid, and the axes with their words. */
final class ToneQuadrants {
    /** Length of each axis, in the drawing's units. */
    static final double SIDE = 360;

    static final double MIDDLE_X = 480;
    static final double MIDDLE_Y = 472;

    private final Drawing drawing;
    private final double mostInk;

    /**
     * For ink up to a thickness.
     *
     * @param mostInkMicrometres that any tone holds
     */
    ToneQuadrants(Drawing drawing, double mostInkMicrometres) {
        this.drawing = drawing;
        this.mostInk = roundUp(mostInkMicrometres);
    }

    /** Where an L* of the art lies, 0 to 100. */
    double right(double artLightness) {
        return MIDDLE_X + SIDE * artLightness / 100;
    }

    /** Where an L* of the print lies, 0 to 100. */
    double up(double printLightness) {
        return MIDDLE_Y - SIDE * printLightness / 100;
    }

    /** Where a film coverage lies, 0 to 1. */
    double down(double coverage) {
        return MIDDLE_Y + SIDE * coverage;
    }

    /** Where ink in the plate lies. */
    double left(double inkMicrometres) {
        return MIDDLE_X - SIDE * inkMicrometres / mostInk;
    }

    /** Fifths of every axis. */
    void grid() {
        for (int i = 1; i < 5; i++) {
            double at = SIDE * i / 5;
            for (int sign = -1; sign <= 1; sign += 2) {
                double x = MIDDLE_X + sign * at;
                double y = MIDDLE_Y + sign * at;
                drawing.line(x, MIDDLE_Y - SIDE, x, MIDDLE_Y + SIDE, 0.7, Palette.FAINT);
                drawing.line(MIDDLE_X - SIDE, y, MIDDLE_X + SIDE, y, 0.7, Palette.FAINT);
            }
        }
    }

    /**
     * The axes with their numbers and words, and what each quadrant shows.
     *
     * @param predicted whether to say that the copper is predicted where the print is measured
     */
    void frame(boolean predicted) {
        double left = MIDDLE_X - SIDE;
        double right = MIDDLE_X + SIDE;
        double top = MIDDLE_Y - SIDE;
        double bottom = MIDDLE_Y + SIDE;
        drawing.path(
                List.of(
                        new Point(left, top),
                        new Point(right, top),
                        new Point(right, bottom),
                        new Point(left, bottom),
                        new Point(left, top)),
                1,
                Palette.RULE,
                0);
        drawing.line(left, MIDDLE_Y, right, MIDDLE_Y, 1.6, Palette.INK);
        drawing.line(MIDDLE_X, top, MIDDLE_X, bottom, 1.6, Palette.INK);
        for (int i = 0; i <= 5; i++) {
            String percent = Integer.toString(20 * i);
            double x = SIDE * i / 5;
            String ink = Refusal.plain(Math.rint(mostInk * i / 5 * 100) / 100);
            if (i > 0) {
                drawing.words(MIDDLE_X + x, bottom + 20, DrawnPage.SMALL, Anchor.MIDDLE, Palette.QUIET, percent);
                drawing.words(MIDDLE_X - x, bottom + 20, DrawnPage.SMALL, Anchor.MIDDLE, Palette.QUIET, ink);
                drawing.words(left - 8, MIDDLE_Y - x + 5, DrawnPage.SMALL, Anchor.END, Palette.QUIET, percent);
                drawing.words(left - 8, MIDDLE_Y + x + 5, DrawnPage.SMALL, Anchor.END, Palette.QUIET, percent);
                drawing.words(right + 8, MIDDLE_Y - x + 5, DrawnPage.SMALL, Anchor.START, Palette.QUIET, percent);
                drawing.words(right + 8, MIDDLE_Y + x + 5, DrawnPage.SMALL, Anchor.START, Palette.QUIET, percent);
            } else {
                drawing.words(MIDDLE_X, bottom + 20, DrawnPage.SMALL, Anchor.MIDDLE, Palette.QUIET, "0");
                drawing.words(left - 8, MIDDLE_Y + 5, DrawnPage.SMALL, Anchor.END, Palette.QUIET, "0");
                drawing.words(right + 8, MIDDLE_Y + 5, DrawnPage.SMALL, Anchor.START, Palette.QUIET, "0");
            }
        }
        drawing.words(
                MIDDLE_X + SIDE / 2,
                bottom + 44,
                DrawnPage.LETTER,
                Anchor.MIDDLE,
                Palette.INK,
                "art, L* (100 is white)  \u2192");
        drawing.words(
                MIDDLE_X - SIDE / 2,
                bottom + 44,
                DrawnPage.LETTER,
                Anchor.MIDDLE,
                Palette.INK,
                "\u2190  ink in the plate, \u00b5m");
        drawing.turnedWords(left - 48, MIDDLE_Y - SIDE / 2, DrawnPage.LETTER, 3, Palette.INK, "print, L*  \u2192");
        drawing.turnedWords(
                left - 48, MIDDLE_Y + SIDE / 2, DrawnPage.LETTER, 3, Palette.INK, "\u2190  black on the film, %");
        drawing.turnedWords(right + 54, MIDDLE_Y - SIDE / 2, DrawnPage.LETTER, 3, Palette.INK, "print, L*  \u2192");
        drawing.turnedWords(
                right + 54, MIDDLE_Y + SIDE / 2, DrawnPage.LETTER, 3, Palette.INK, "\u2190  black on the film, %");
        quadrant(right - 12, bottom - 14, Anchor.END, "1  art to film: the tone curve");
        quadrant(
                left + 12,
                MIDDLE_Y + 24,
                Anchor.START,
                predicted ? "2  film to copper, predicted" : "2  film to copper");
        quadrant(left + 12, top + 24, Anchor.START, "3  copper to print");
        quadrant(right - 12, MIDDLE_Y - 14, Anchor.END, "4  print against art");
    }

    private void quadrant(double x, double y, Anchor anchor, String words) {
        drawing.heavyWords(x, y, DrawnPage.LETTER, anchor, Palette.INK, words);
    }

    /** The next of 1, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10 times a power of ten, so that fifths of it are short to write. */
    private static double roundUp(double value) {
        double power = StrictMath.pow(10, Math.floor(StrictMath.log10(Math.max(1e-6, value))));
        for (double step : new double[] {1, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10}) {
            if (step * power >= value * 1.04) {
                return step * power;
            }
        }
        return 10 * power;
    }
}
