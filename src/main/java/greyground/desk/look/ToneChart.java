package greyground.desk.look;

import greyground.app.teach.ResponseLines;
import greyground.finding.Findings;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import org.jspecify.annotations.Nullable;

/**
 * What a proof said, drawn: a test plate's tones as measured with their band and as predicted, or how far each tone of a check plate is
 * off. Lines differ by weight and dash, marks by shape.
 */
public final class ToneChart extends Region {
    private static final double LETTER = 13;
    private static final double LEFT = 64;
    private static final double RIGHT = 24;
    private static final double TOP = 24;
    private static final double FOOT = 56;
    private static final double LEGEND_LINE = 24;
    private static final double KEY = 32;

    private final Canvas canvas = new Canvas();
    private final Font font = Font.font(LETTER);
    private Light light = new Light(false);
    private @Nullable ResponseLines response;
    private @Nullable Findings check;
    private double width;
    private double height;
    private double keyX;
    private double keyY;

    public ToneChart() {
        getStyleClass().add("chart-paper");
        setId("tone-chart");
        setFocusTraversable(true);
        setMinSize(120, 80);
        getChildren().add(canvas);
        focusedProperty().addListener((what, was, is) -> draw());
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

    public void look(Light shining) {
        light = shining;
        draw();
    }

    @Override
    protected void layoutChildren() {
        canvas.setWidth(getWidth());
        canvas.setHeight(getHeight());
        draw();
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }

    private void draw() {
        GraphicsContext pen = canvas.getGraphicsContext2D();
        pen.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        pen.setFont(font);
        pen.setLineDashes();
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
        if (isFocused()) {
            pen.setStroke(light.copper());
            pen.setLineWidth(2);
            pen.strokeRect(1, 1, canvas.getWidth() - 2, canvas.getHeight() - 2);
        }
    }

    // ------------------------------------------------------------------ axes and words

    private double x(double share) {
        return LEFT + width * share;
    }

    private double y(double share) {
        return TOP + height * (1 - share);
    }

    private void words(GraphicsContext pen, String words, double x, double y, TextAlignment align, Color colour) {
        pen.setFill(colour);
        pen.setTextAlign(align);
        pen.setTextBaseline(VPos.CENTER);
        pen.fillText(words, x, y);
    }

    private void axisNames(GraphicsContext pen, String across, String up) {
        words(pen, across, LEFT + width / 2, TOP + height + 40, TextAlignment.CENTER, light.ink());
        pen.save();
        pen.translate(16, TOP + height / 2);
        pen.rotate(-90);
        words(pen, up, 0, 0, TextAlignment.CENTER, light.ink());
        pen.restore();
    }

    private void across(GraphicsContext pen, double share, String words) {
        pen.setStroke(light.faint());
        pen.setLineWidth(1);
        pen.strokeLine(x(share), TOP, x(share), TOP + height);
        words(pen, words, x(share), TOP + height + 16, TextAlignment.CENTER, light.quiet());
    }

    private void up(GraphicsContext pen, double share, String words) {
        pen.setStroke(light.faint());
        pen.setLineWidth(1);
        pen.strokeLine(LEFT, y(share), LEFT + width, y(share));
        words(pen, words, LEFT - 10, y(share), TextAlignment.RIGHT, light.quiet());
    }

    /** The next entry of the legend: what draws its mark at the left, and its words. */
    private void key(GraphicsContext pen, String words, Runnable mark) {
        Text measured = new Text(words);
        measured.setFont(font);
        double wide = KEY + 8 + measured.getLayoutBounds().getWidth() + 20;
        if (keyX > LEFT && keyX + wide > canvas.getWidth()) {
            keyX = LEFT;
            keyY += LEGEND_LINE;
        }
        mark.run();
        words(pen, words, keyX + KEY + 8, keyY, TextAlignment.LEFT, light.ink());
        keyX += wide;
    }

    // ------------------------------------------------------------------ a test plate's tones

    private void response(GraphicsContext pen, ResponseLines lines) {
        for (int i = 0; i <= 10; i++) {
            boolean named = i % 2 == 0;
            across(pen, i / 10.0, named ? Integer.toString(10 * i) : "");
            up(pen, i / 10.0, named ? Integer.toString(10 * i) : "");
        }
        axisNames(pen, "black on the film, %", "print, L* (100 is white)");
        band(pen, lines.steps());
        if (lines.turning() < 1) {
            pen.setStroke(light.copper());
            pen.setLineWidth(1.25);
            pen.setLineDashes(5, 4);
            pen.strokeLine(x(lines.turning()), TOP, x(lines.turning()), TOP + height);
            pen.setLineDashes();
            words(
                    pen,
                    "turns at " + percent(lines.turning()),
                    x(lines.turning()) - 8,
                    TOP + 12,
                    TextAlignment.RIGHT,
                    light.copper());
        }
        pen.setStroke(light.quiet());
        pen.setLineWidth(1.25);
        pen.setLineDashes(6, 4);
        line(pen, lines.steps(), 1, ResponseLines.Step::foretold);
        pen.setLineDashes();
        line(pen, lines.steps(), 1, ResponseLines.Step::taught);
        pen.setStroke(light.ink());
        pen.setLineWidth(2.5);
        line(pen, lines.steps(), lines.turning(), ResponseLines.Step::measured);
        lines.levels().forEach(level -> ring(pen, x(level.coverage()), y(level.lightness() / 100)));
        lines.outliers().forEach(level -> cross(pen, x(level.coverage()), y(level.lightness() / 100)));
        key(pen, "measured, 95 % band", () -> {
            pen.setFill(light.rule());
            pen.fillRect(keyX, keyY - 7, KEY, 14);
            stroke(pen, light.ink(), 2.5);
            ring(pen, keyX + KEY / 2, keyY);
        });
        key(pen, "predicted before", () -> {
            pen.setLineDashes(6, 4);
            stroke(pen, light.quiet(), 1.25);
            pen.setLineDashes();
        });
        key(pen, "predicted once taught", () -> stroke(pen, light.quiet(), 1.25));
        if (!lines.outliers().isEmpty()) {
            key(pen, "left out", () -> cross(pen, keyX + KEY / 2, keyY));
        }
    }

    private void stroke(GraphicsContext pen, Color colour, double weight) {
        pen.setStroke(colour);
        pen.setLineWidth(weight);
        pen.strokeLine(keyX, keyY, keyX + KEY, keyY);
    }

    private void band(GraphicsContext pen, List<ResponseLines.Step> steps) {
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
        pen.setFill(light.rule());
        pen.fillPolygon(xs, ys, 2 * count);
    }

    private void line(
            GraphicsContext pen, List<ResponseLines.Step> steps, double most, ToDoubleFunction<ResponseLines.Step> of) {
        pen.beginPath();
        boolean begun = false;
        for (ResponseLines.Step step : steps) {
            if (step.coverage() > most) {
                break;
            }
            double y = y(Math.max(0, Math.min(100, of.applyAsDouble(step))) / 100);
            if (begun) {
                pen.lineTo(x(step.coverage()), y);
            } else {
                pen.moveTo(x(step.coverage()), y);
                begun = true;
            }
        }
        pen.stroke();
    }

    private void ring(GraphicsContext pen, double x, double y) {
        pen.setStroke(light.ink());
        pen.setLineWidth(1.25);
        pen.setFill(light.panel());
        pen.fillOval(x - 3.5, y - 3.5, 7, 7);
        pen.strokeOval(x - 3.5, y - 3.5, 7, 7);
    }

    private void cross(GraphicsContext pen, double x, double y) {
        pen.setStroke(light.copper());
        pen.setLineWidth(1.5);
        pen.strokeLine(x - 4, y - 4, x + 4, y + 4);
        pen.strokeLine(x - 4, y + 4, x + 4, y - 4);
    }

    // ------------------------------------------------------------------ a check plate's misses

    private void check(GraphicsContext pen, Findings judged) {
        double tolerance = judged.number("tolerance").orElse(0);
        List<Findings> tones = judged.rows("tones");
        double reach = tones.stream()
                .mapToDouble(tone -> Math.abs(figure(tone, "off"))
                        + Math.min(tolerance, tone.number("half95").orElse(tolerance)))
                .max()
                .orElse(0);
        double most = Math.ceil(Math.max(2 * tolerance, reach));
        double step = most <= 6 ? 1 : most <= 12 ? 2 : 5;
        pen.setFill(light.faint());
        pen.fillRect(LEFT, off(tolerance, most), width, off(-tolerance, most) - off(tolerance, most));
        for (int i = 0; i <= 10; i++) {
            across(pen, i / 10.0, i % 2 == 0 ? Integer.toString(10 * i) : "");
        }
        for (double off = -Math.floor(most / step) * step; off <= most; off += step) {
            up(pen, (off + most) / (2 * most), (off > 0 ? "+" : "") + Math.round(off));
        }
        pen.setStroke(light.ink());
        pen.strokeLine(LEFT, off(0, most), LEFT + width, off(0, most));
        axisNames(pen, "L* at which it should print", "too light, L*");
        for (Findings tone : tones) {
            double x = x(figure(tone, "statedLightness") / 100);
            tone.number("offUncalibrated").ifPresent(before -> square(pen, x, off(before, most)));
        }
        for (Findings tone : tones) {
            double x = x(figure(tone, "statedLightness") / 100);
            double off = figure(tone, "off");
            tone.number("half95").ifPresent(half -> {
                pen.setStroke(light.ink());
                pen.setLineWidth(1.25);
                pen.strokeLine(x, off(off - half, most), x, off(off + half, most));
            });
            dot(pen, x, off(off, most));
        }
        key(pen, "printed, 95 %", () -> dot(pen, keyX + KEY / 2, keyY));
        key(pen, "as good as right", () -> {
            pen.setFill(light.faint());
            pen.fillRect(keyX, keyY - 7, KEY, 14);
        });
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

    private void dot(GraphicsContext pen, double x, double y) {
        pen.setFill(light.copper());
        pen.fillOval(x - 4, y - 4, 8, 8);
    }

    private void square(GraphicsContext pen, double x, double y) {
        pen.setStroke(light.quiet());
        pen.setLineWidth(1.25);
        pen.strokeRect(x - 3.5, y - 3.5, 7, 7);
    }
}
