package greyground.output;

import greyground.output.FilmDocument.CurvePoint;
import java.util.List;

/** The tone curve as a small plot: lightness of the art across, coverage of the film up. */
final class ToneCurvePlot {
    private static final double LETTER = 7.5;
    private static final int DIVISIONS = 4;
    private static final double GRID_GREY = 0.72;

    private ToneCurvePlot() {}

    /** Draws the plot's square with its lower left corner at ({@code x}, {@code y}); labels stand outside of it. */
    static void draw(PageDrawing page, double x, double y, double side, List<CurvePoint> curve) {
        for (int i = 0; i <= DIVISIONS; i++) {
            double at = side * i / DIVISIONS;
            if (i > 0 && i < DIVISIONS) {
                page.line(x + at, y, x + at, y - side, 0.35, GRID_GREY);
                page.line(x, y - at, x + side, y - at, 0.35, GRID_GREY);
            }
            String value = Integer.toString(100 * i / DIVISIONS);
            page.text(x + at - page.width(value, LETTER) / 2, y + LETTER + 3, LETTER, 0.2, value);
            page.textEndingAt(x - 4, y - at + LETTER * 0.35, LETTER, 0.2, value);
        }
        page.frame(x, y - side, side, side, 0.7, 0);
        String across = "art L*";
        page.text(x + (side - page.width(across, LETTER)) / 2, y + 2 * LETTER + 7, LETTER, 0, across);
        String up = "film coverage %";
        page.turnedText(x - 25, y - (side - page.width(up, LETTER)) / 2, LETTER, 3, up);
        double[] xs = new double[curve.size()];
        double[] ys = new double[curve.size()];
        for (int i = 0; i < xs.length; i++) {
            xs[i] = x + side * curve.get(i).artLightness() / 100;
            ys[i] = y - side * curve.get(i).filmCoverage();
        }
        page.path(xs, ys, 1.5, 0);
    }
}
