package greyground.picture;

import greyground.fit.CheckResult;
import greyground.picture.Drawing.Anchor;
import greyground.quantity.Refusal;
import java.util.Locale;

/**
 * How far each tone of a check plate prints from where it should: its wished lightness to the right, what it is off upwards, with 95 %
 * intervals. The band is what counts as right; under the axis lie the tones themselves.
 */
public final class ResidualPlot extends DrawnPage {
    private static final double WIDTH = 960;
    private static final double HEIGHT = 600;
    private static final double LEFT = 92;
    private static final double RIGHT = WIDTH - 48;
    private static final double TOP = 128;
    private static final double BOTTOM = HEIGHT - 128;
    private static final double LEAST_REACH = 4;
    private static final double MOST_REACH = 40;
    private static final double DOT = 5;

    private final CheckResult result;
    private final double reach;
    private final double darkest;

    private ResidualPlot(String title, CheckResult result) {
        super(WIDTH, HEIGHT, "Check plate: " + title);
        this.result = result;
        double most = LEAST_REACH;
        for (CheckResult.Line line : result.lines()) {
            double bar = Double.isFinite(line.half95()) ? line.half95() : 0;
            most = Math.max(most, Math.abs(line.off()) + Math.min(bar, LEAST_REACH));
            most = Math.max(most, Math.abs(line.before().orElse(0)));
        }
        this.reach = Math.min(MOST_REACH, 2 * Math.ceil((most + 0.5) / 2));
        this.darkest = 10
                * Math.floor(result.lines().stream()
                                .mapToDouble(CheckResult.Line::stated)
                                .min()
                                .orElse(0)
                        / 10);
    }

    /**
     * Draws the plot.
     *
     * @param title whose plate it is, one line
     */
    public static ResidualPlot of(String title, CheckResult result) {
        ResidualPlot plot = new ResidualPlot(title, result);
        plot.draw(title);
        return plot;
    }

    private void draw(String title) {
        heading(LEFT, "How near the tones print", title);
        String verdict = result.verdict();
        drawing.words(
                LEFT,
                98,
                LETTER,
                Anchor.START,
                Palette.INK,
                verdict.substring(0, 1).toUpperCase(Locale.ROOT) + verdict.substring(1) + ".");
        double right = CheckResult.TOLERANCE;
        drawing.rectangle(LEFT, y(right), RIGHT - LEFT, y(-right) - y(right), 0xEFEFEF);
        axes();
        before();
        tones();
        legend();
    }

    private void axes() {
        double step = reach <= 6 ? 1 : reach <= 12 ? 2 : reach <= 20 ? 5 : 10;
        for (double off = -Math.floor(reach / step) * step; off <= reach; off += step) {
            drawing.line(LEFT, y(off), RIGHT, y(off), off == 0 ? 1.4 : 0.7, off == 0 ? Palette.INK : Palette.FAINT);
            drawing.words(
                    LEFT - 10, y(off) + 5, SMALL, Anchor.END, Palette.QUIET, (off > 0 ? "+" : "") + Refusal.plain(off));
        }
        for (double lightness = darkest; lightness <= 100; lightness += 10) {
            drawing.line(x(lightness), BOTTOM, x(lightness), BOTTOM + 5, 1, Palette.RULE);
            drawing.words(x(lightness), BOTTOM + 60, SMALL, Anchor.MIDDLE, Palette.QUIET, Refusal.plain(lightness));
        }
        drawing.line(LEFT, BOTTOM, RIGHT, BOTTOM, 1, Palette.RULE);
        drawing.words(
                (LEFT + RIGHT) / 2,
                BOTTOM + 84,
                LETTER,
                Anchor.MIDDLE,
                Palette.INK,
                "L* at which the tone should print");
        drawing.turnedWords(32, (TOP + BOTTOM) / 2, LETTER, 3, Palette.INK, "too light, in L*");
        for (CheckResult.Line line : result.lines()) {
            double side = 20;
            drawing.rectangle(x(line.stated()) - side / 2, BOTTOM + 14, side, side, Palette.RULE);
            drawing.rectangle(
                    x(line.stated()) - side / 2 + 0.7,
                    BOTTOM + 14.7,
                    side - 1.4,
                    side - 1.4,
                    Palette.ofLightness(line.stated()));
        }
    }

    private void before() {
        for (CheckResult.Line line : result.lines()) {
            line.before().ifPresent(off -> drawing.ring(x(line.stated()), y(off), DOT, Palette.PAGE, Palette.QUIET));
        }
    }

    private void tones() {
        for (CheckResult.Line line : result.lines()) {
            double x = x(line.stated());
            if (Double.isFinite(line.half95())) {
                double low = y(line.off() - line.half95());
                double high = y(line.off() + line.half95());
                drawing.line(x, low, x, high, 1.6, Palette.ACCENT);
                drawing.line(x - 4, low, x + 4, low, 1.6, Palette.ACCENT);
                drawing.line(x - 4, high, x + 4, high, 1.6, Palette.ACCENT);
            }
            drawing.dot(x, y(line.off()), DOT, Palette.ACCENT);
        }
    }

    private void legend() {
        double y = HEIGHT - 20;
        drawing.dot(LEFT + 6, y - 5, DOT, Palette.ACCENT);
        drawing.words(LEFT + 20, y, LETTER * 0.93, Anchor.START, Palette.INK, "printed, with its 95 % interval");
        drawing.rectangle(LEFT + 262, y - 13, 26, 16, 0xE4E4E4);
        drawing.words(LEFT + 296, y, LETTER * 0.93, Anchor.START, Palette.INK, "as good as right");
        if (result.rootMeanSquareBefore().isPresent()) {
            drawing.ring(LEFT + 446, y - 5, DOT, Palette.PAGE, Palette.QUIET);
            drawing.words(
                    LEFT + 460,
                    y,
                    LETTER * 0.93,
                    Anchor.START,
                    Palette.INK,
                    "a film made without the calibration would have printed");
        }
    }

    private double x(double lightness) {
        return LEFT + (RIGHT - LEFT) * (lightness - darkest + 2) / (100 - darkest + 4);
    }

    private double y(double off) {
        double within = Math.max(-reach, Math.min(reach, off));
        return TOP + (BOTTOM - TOP) * (reach - within) / (2 * reach);
    }
}
