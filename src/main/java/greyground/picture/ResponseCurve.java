package greyground.picture;

import greyground.fit.MeasuredLevel;
import greyground.fit.MeasuredPatch;
import greyground.fit.MeasuredResponse;
import greyground.picture.Drawing.Anchor;
import greyground.picture.Drawing.Point;
import greyground.plate.VirtualResponse;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;

/**
 * A test plate's response: print lightness against black on the film, as measured with its band, and as it was predicted before and after
 * the plate taught the workshop.
 */
public final class ResponseCurve extends DrawnPage {
    private static final double WIDTH = 960;
    private static final double HEIGHT = 860;
    private static final double LEFT = 100;
    private static final double TOP = 110;
    private static final double ACROSS = 800;
    private static final double DOWN = 600;
    private static final int STEPS = 400;

    private final MeasuredResponse measured;
    private final VirtualResponse predicted;
    private final VirtualResponse taught;

    private ResponseCurve(String title, MeasuredResponse measured, VirtualResponse predicted, VirtualResponse taught) {
        super(WIDTH, HEIGHT, "Response: " + title);
        this.measured = measured;
        this.predicted = predicted;
        this.taught = taught;
    }

    /**
     * Draws.
     *
     * @param title one line
     * @param predicted with the workshop's numbers as they were
     * @param taught with those that the plate taught
     */
    public static ResponseCurve of(
            String title, MeasuredResponse measured, VirtualResponse predicted, VirtualResponse taught) {
        ResponseCurve curve = new ResponseCurve(title, measured, predicted, taught);
        curve.draw(title);
        return curve;
    }

    private void draw(String title) {
        heading(LEFT - 40, "What the test plate prints", title);
        grid();
        band();
        turn();
        line(taught, Palette.QUIET, 1.6, 0);
        line(predicted, Palette.QUIET, 1.6, 3);
        List<Point> curve = new ArrayList<>();
        double most = measured.usable().most();
        for (int i = 0; i <= STEPS; i++) {
            double coverage = most * i / STEPS;
            curve.add(new Point(x(coverage), y(measured.lightness(coverage))));
        }
        drawing.path(curve, 2.6, Palette.INK, 0);
        for (MeasuredLevel level : measured.levels()) {
            drawing.ring(
                    x(level.coverage()),
                    y(level.lightness()),
                    4,
                    Palette.PAGE,
                    level.coverage() <= most ? Palette.INK : Palette.ACCENT);
        }
        for (MeasuredPatch patch : measured.outliers()) {
            cross(x(patch.coverage()), y(patch.lightness()));
        }
        legend();
    }

    private void grid() {
        for (int i = 0; i <= 10; i++) {
            double x = LEFT + ACROSS * i / 10;
            double y = TOP + DOWN * i / 10;
            drawing.line(x, TOP, x, TOP + DOWN, 0.7, Palette.FAINT);
            drawing.line(LEFT, y, LEFT + ACROSS, y, 0.7, Palette.FAINT);
            drawing.words(x, TOP + DOWN + 22, SMALL, Anchor.MIDDLE, Palette.QUIET, Integer.toString(10 * i));
            drawing.words(LEFT - 10, y + 5, SMALL, Anchor.END, Palette.QUIET, Integer.toString(100 - 10 * i));
        }
        drawing.path(
                List.of(
                        new Point(LEFT, TOP),
                        new Point(LEFT + ACROSS, TOP),
                        new Point(LEFT + ACROSS, TOP + DOWN),
                        new Point(LEFT, TOP + DOWN),
                        new Point(LEFT, TOP)),
                1,
                Palette.RULE,
                0);
        drawing.words(
                LEFT + ACROSS / 2, TOP + DOWN + 48, LETTER, Anchor.MIDDLE, Palette.INK, "black on the film, %  \u2192");
        drawing.turnedWords(LEFT - 56, TOP + DOWN / 2, LETTER, 3, Palette.INK, "print, L* (100 is white)  \u2192");
    }

    private void band() {
        List<Point> outline = new ArrayList<>();
        List<Point> back = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            double coverage = (double) i / STEPS;
            double half = measured.halfWidth(coverage);
            double lightness = measured.lightness(coverage);
            outline.add(new Point(x(coverage), y(Math.min(100, lightness + half))));
            back.add(0, new Point(x(coverage), y(Math.max(0, lightness - half))));
        }
        outline.addAll(back);
        drawing.area(outline, Palette.WISH);
    }

    private void turn() {
        double most = measured.usable().most();
        if (most < 1) {
            drawing.dashed(x(most), TOP, x(most), TOP + DOWN, 1.2, Palette.ACCENT, 5);
            drawing.words(
                    x(most) - 8,
                    TOP + 20,
                    SMALL,
                    Anchor.END,
                    Palette.ACCENT,
                    "turning point, " + Refusal.plain(Math.rint(1000 * most) / 10) + " %: more black prints paler");
        }
    }

    private void line(VirtualResponse response, int colour, double weight, double dash) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            double coverage = (double) i / STEPS;
            points.add(new Point(x(coverage), y(response.lightness(coverage))));
        }
        drawing.path(points, weight, colour, dash);
    }

    private void cross(double x, double y) {
        drawing.line(x - 4, y - 4, x + 4, y + 4, 1.6, Palette.ACCENT);
        drawing.line(x - 4, y + 4, x + 4, y - 4, 1.6, Palette.ACCENT);
    }

    private void legend() {
        double y = HEIGHT - 42;
        double x = LEFT - 40;
        drawing.rectangle(x, y - 12, 36, 14, Palette.WISH);
        drawing.line(x, y - 5, x + 36, y - 5, 2.6, Palette.INK);
        drawing.ring(x + 18, y - 5, 4, Palette.PAGE, Palette.INK);
        drawing.words(x + 44, y, LETTER, Anchor.START, Palette.INK, "measured, with 95 % band");
        drawing.dashed(x + 250, y - 5, x + 286, y - 5, 1.6, Palette.QUIET, 3);
        drawing.words(x + 294, y, LETTER, Anchor.START, Palette.INK, "predicted before");
        drawing.line(x + 430, y - 5, x + 466, y - 5, 1.6, Palette.QUIET);
        drawing.words(x + 474, y, LETTER, Anchor.START, Palette.INK, "predicted once taught");
        if (!measured.outliers().isEmpty()) {
            cross(x + 660, y - 5);
            drawing.words(x + 672, y, LETTER, Anchor.START, Palette.INK, "left out");
        }
    }

    private static double x(double coverage) {
        return LEFT + ACROSS * coverage;
    }

    private static double y(double lightness) {
        return TOP + DOWN * (1 - lightness / 100);
    }
}
