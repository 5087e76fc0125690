package greyground.desk.look;

import greyground.app.teach.ResponseLines;
import greyground.finding.Findings;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;
import org.jspecify.annotations.Nullable;

/**
 * What a proof said, drawn: a test plate's tones as measured with their band and as predicted, or how far each tone of a check plate is
 * off. Lines differ by weight and dash, marks by shape.
 */
public final class ToneChart extends Drawn {
    private static final double LEFT = 64;
    private static final double RIGHT = 24;
    private static final double TOP = 24;
    private static final double FOOT = 56;
    private static final double LEGEND_LINE = 24;
    private static final double KEY = 32;

    private @Nullable ResponseLines response;
    private @Nullable Findings check;
    private double width;
    private double height;
    private double keyX;
    private double keyY;

    public ToneChart() {
        super("tone-chart");
        getStyleClass().add("chart-paper");
        setMinSize(120, 80);
        getChildren().add(canvas);
    }

    public void show(ResponseLines lines) {
        response = lines;
        check = null;
        setAccessibleText("Tones of the test plate: print L* against black on the film, "
                + lines.levels().size() + " measured levels, darkest at " + percent(lines.turning()));
        draw();
    }

    /** How far off each tone of a check plate is. */
    public void show(Findings tones) {
        check = tones;
        response = null;
        setAccessibleText("How far each tone is off: " + tones.text("verdict"));
        draw();
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }

    @Override
    protected void draw(Pen pen) {
        ResponseLines lines = response;
        Findings tones = check;
        double rows = canvas.getWidth() < 620 ? 2 : 1;
        width = Math.max(40, canvas.getWidth() - LEFT - RIGHT);
        height = Math.max(40, canvas.getHeight() - TOP - FOOT - rows * LEGEND_LINE - 8);
        keyX = LEFT;
        keyY = TOP + height + FOOT + LEGEND_LINE / 2;
        if (lines != null) {
            response(pen, lines);
        } else if (tones != null) {
            check(pen, tones);
        }
    }

    // ------------------------------------------------------------------ axes and words

    private double x(double share) {
        return LEFT + width * share;
    }

    private double y(double share) {
        return TOP + height * (1 - share);
    }

    private void axes(Pen pen, String across, String up) {
        for (int i = 0; i <= 10; i++) {
            double x = x(i / 10.0);
            pen.stroke(light.faint(), 1);
            pen.line(x, TOP, x, TOP + height);
            if (i % 2 == 0) {
                pen.words(Integer.toString(10 * i), x, TOP + height + 16, TextAlignment.CENTER, light.quiet());
            }
        }
        pen.words(across, LEFT + width / 2, TOP + height + 40, TextAlignment.CENTER, light.ink());
        pen.wordsUp(up, 16, TOP + height / 2, TextAlignment.CENTER, light.ink());
    }

    private void up(Pen pen, double share, String words) {
        pen.stroke(light.faint(), 1);
        pen.line(LEFT, y(share), LEFT + width, y(share));
        pen.words(words, LEFT - 10, y(share), TextAlignment.RIGHT, light.quiet());
    }

    /** The next entry of the legend: what draws its mark at the left, and its words. */
    private void key(Pen pen, String words, Runnable mark) {
        double wide = KEY + 8 + Pen.width(words) + 20;
        if (keyX > LEFT && keyX + wide > canvas.getWidth()) {
            keyX = LEFT;
            keyY += LEGEND_LINE;
        }
        mark.run();
        pen.words(words, keyX + KEY + 8, keyY, TextAlignment.LEFT, light.ink());
        keyX += wide;
    }

    // ------------------------------------------------------------------ a test plate's tones

    private void response(Pen pen, ResponseLines lines) {
        axes(pen, "black on the film, %", "print, L* (100 is white)");
        for (int i = 0; i <= 10; i++) {
            up(pen, i / 10.0, i % 2 == 0 ? Integer.toString(10 * i) : "");
        }
        band(pen, lines.steps());
        double turn = x(lines.turning());
        if (lines.turning() < 1) {
            pen.stroke(light.copper(), 1.25, 5, 4);
            pen.line(turn, TOP, turn, TOP + height);
            String words = "turns at " + percent(lines.turning());
            pen.words(words, turn - 8, TOP + 12, TextAlignment.RIGHT, light.copper());
        }
        pen.stroke(light.quiet(), 1.25, 6, 4);
        line(pen, lines.steps(), 1, ResponseLines.Step::foretold);
        pen.stroke(light.quiet(), 1.25);
        line(pen, lines.steps(), 1, ResponseLines.Step::taught);
        pen.stroke(light.ink(), 2.5);
        line(pen, lines.steps(), lines.turning(), ResponseLines.Step::measured);
        lines.levels().forEach(level -> ring(pen, x(level.coverage()), y(level.lightness() / 100)));
        lines.outliers().forEach(level -> cross(pen, x(level.coverage()), y(level.lightness() / 100)));
        key(pen, "measured, 95 % band", () -> {
            pen.fill(light.rule(), keyX, keyY - 7, KEY, 14);
            keyLine(pen, light.ink(), 2.5);
            ring(pen, keyX + KEY / 2, keyY);
        });
        key(pen, "predicted before", () -> keyLine(pen, light.quiet(), 1.25, 6, 4));
        key(pen, "predicted once taught", () -> keyLine(pen, light.quiet(), 1.25));
        if (!lines.outliers().isEmpty()) {
            key(pen, "left out", () -> cross(pen, keyX + KEY / 2, keyY));
        }
    }

    private void keyLine(Pen pen, Color colour, double weight, double... dashes) {
        pen.stroke(colour, weight, dashes);
        pen.line(keyX, keyY, keyX + KEY, keyY);
    }

    private void band(Pen pen, List<ResponseLines.Step> steps) {
        int count = steps.size();
        double[] xs = new double[2 * count];
        double[] ys = new double[2 * count];
        for (int i = 0; i < count; i++) {
            ResponseLines.Step step = steps.get(i);
            int back = 2 * count - 1 - i;
            xs[i] = xs[back] = x(step.coverage());
            ys[i] = y(Math.min(100, step.measured() + step.half()) / 100);
            ys[back] = y(Math.max(0, step.measured() - step.half()) / 100);
        }
        pen.context().setFill(light.rule());
        pen.context().fillPolygon(xs, ys, 2 * count);
    }

    private void line(
            Pen pen, List<ResponseLines.Step> steps, double most, ToDoubleFunction<ResponseLines.Step> lightness) {
        List<ResponseLines.Step> drawn =
                steps.stream().takeWhile(step -> step.coverage() <= most).toList();
        pen.curve(
                drawn.stream().mapToDouble(step -> x(step.coverage())).toArray(),
                drawn.stream()
                        .mapToDouble(step -> y(Math.max(0, Math.min(100, lightness.applyAsDouble(step))) / 100))
                        .toArray());
    }

    private void ring(Pen pen, double x, double y) {
        pen.stroke(light.ink(), 1.25);
        pen.ring(x, y, 3.5, light.panel());
    }

    private void cross(Pen pen, double x, double y) {
        pen.stroke(light.copper(), 1.5);
        pen.cross(x, y, 4);
    }

    // ------------------------------------------------------------------ a check plate's misses

    private void check(Pen pen, Findings judged) {
        double tolerance = judged.number("tolerance").orElse(0);
        List<Findings> tones = judged.rows("tones");
        double reach = tones.stream()
                .mapToDouble(tone -> Math.abs(figure(tone, "off"))
                        + Math.min(tolerance, tone.number("half95").orElse(tolerance)))
                .max()
                .orElse(0);
        double most = Math.ceil(Math.max(2 * tolerance, reach));
        double step = most <= 6 ? 1 : most <= 12 ? 2 : 5;
        double good = off(tolerance, most);
        pen.fill(light.faint(), LEFT, good, width, off(-tolerance, most) - good);
        axes(pen, "L* at which it should print", "too light, L*");
        for (double off = -Math.floor(most / step) * step; off <= most; off += step) {
            up(pen, (off + most) / (2 * most), (off > 0 ? "+" : "") + Math.round(off));
        }
        pen.stroke(light.ink(), 1);
        pen.line(LEFT, off(0, most), LEFT + width, off(0, most));
        for (Findings tone : tones) {
            double x = x(figure(tone, "statedLightness") / 100);
            tone.number("offUncalibrated").ifPresent(before -> square(pen, x, off(before, most)));
        }
        for (Findings tone : tones) {
            double x = x(figure(tone, "statedLightness") / 100);
            double off = figure(tone, "off");
            tone.number("half95").ifPresent(half -> {
                pen.stroke(light.ink(), 1.25);
                pen.line(x, off(off - half, most), x, off(off + half, most));
            });
            dot(pen, x, off(off, most));
        }
        key(pen, "printed, 95 %", () -> dot(pen, keyX + KEY / 2, keyY));
        key(pen, "as good as right", () -> pen.fill(light.faint(), keyX, keyY - 7, KEY, 14));
        if (tones.stream().anyMatch(tone -> tone.number("offUncalibrated").isPresent())) {
            key(pen, "without the calibration", () -> square(pen, keyX + KEY / 2, keyY));
        }
    }

    private static double figure(Findings tone, String key) {
        return tone.number(key).orElseThrow();
    }

    /** Where so many L* too light lie; what goes off the chart stands at its edge. */
    private double off(double off, double most) {
        return y((Math.max(-most, Math.min(most, off)) + most) / (2 * most));
    }

    private void dot(Pen pen, double x, double y) {
        pen.context().setFill(light.copper());
        pen.context().fillOval(x - 4, y - 4, 8, 8);
    }

    private void square(Pen pen, double x, double y) {
        pen.stroke(light.quiet(), 1.25);
        pen.context().strokeRect(x - 3.5, y - 3.5, 7, 7);
    }
}
