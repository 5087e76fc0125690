package greyground.desk.picture;

import greyground.app.live.ToneAt;
import greyground.app.live.ToneCurves;
import greyground.desk.look.Light;
import greyground.desk.model.LabelPlaces;
import greyground.desk.model.Viewport;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import org.jspecify.annotations.Nullable;

/**
 * The four-quadrant diagram of tone (after L. A. Jones): art to the right, black on the film down, ink in the plate to the left, print
 * up. The tone under the pointer goes round it.
 */
public final class DiagramView extends Region {
    private static final double LEAST_HEIGHT = 188;
    private static final double MOST_HEIGHT = 264;
    private static final double LETTER = 13;

    private final Canvas canvas = new Canvas();
    private @Nullable ToneCurves curves;
    private @Nullable ToneAt tone;
    private Light light = new Light(false);
    private double side;
    private double middleX;
    private double middleY;
    private double mostInk;
    private LabelPlaces room = new LabelPlaces();
    private Consumer<ToneAt> walked = walkedTo -> {};

    public DiagramView() {
        getChildren().add(canvas);
        setId("diagram");
        tall(MOST_HEIGHT);
        setAccessibleText("Tone diagram");
        setAccessibleHelp(
                "Left and right go from tone to tone, Page Up and Page Down in steps of ten, Home and End to the ends");
        setFocusTraversable(true);
        setOnMousePressed(press -> requestFocus());
        setOnKeyPressed(this::key);
        focusedProperty().addListener((what, was, is) -> draw());
    }

    /** Hears which tone the keys have gone to. */
    public void whenWalked(Consumer<ToneAt> hears) {
        walked = hears;
    }

    private void key(KeyEvent event) {
        ToneCurves shown = curves;
        if (shown == null || event.isShortcutDown() || event.isAltDown()) {
            return;
        }
        double present = tone == null ? 50 : tone.artLightness();
        double next = switch (event.getCode()) {
            case LEFT, DOWN -> Math.ceil(present) - 1;
            case RIGHT, UP -> Math.floor(present) + 1;
            case PAGE_DOWN -> present - 10;
            case PAGE_UP -> present + 10;
            case HOME -> 0;
            case END -> 100;
            default -> Double.NaN;
        };
        if (!Double.isNaN(next)) {
            ToneAt reached = shown.at(Math.max(0, Math.min(100, next)));
            follow(reached);
            walked.accept(reached);
            event.consume();
        }
    }

    /** As tall as the window has room for. */
    public void tall(double height) {
        double held = Math.max(LEAST_HEIGHT, Math.min(MOST_HEIGHT, height));
        setMinHeight(held);
        setPrefHeight(held);
        setMaxHeight(held);
    }

    public void show(@Nullable ToneCurves shown) {
        curves = shown;
        tone = null;
        draw();
    }

    public void follow(@Nullable ToneAt followed) {
        tone = followed;
        if (followed != null) {
            setAccessibleText("Tone diagram: " + words(followed));
        }
        draw();
    }

    public void look(Light shining) {
        light = shining;
        draw();
    }

    /** A tone's way in words. */
    public static String words(ToneAt tone) {
        return String.format(
                Locale.ROOT,
                "art L* %.0f, film %.0f %% black, ink %.1f \u00b5m, print L* %.0f",
                tone.artLightness(),
                100 * tone.coverage(),
                tone.inkMicrometres(),
                tone.printLightness());
    }

    @Override
    protected void layoutChildren() {
        canvas.setWidth(getWidth());
        canvas.setHeight(getHeight());
        draw();
    }

    private void draw() {
        GraphicsContext pen = canvas.getGraphicsContext2D();
        pen.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        side = Math.max(20, Math.min((canvas.getWidth() - 48) / 2, (canvas.getHeight() - 48) / 2));
        middleX = canvas.getWidth() / 2;
        middleY = canvas.getHeight() / 2;
        ToneCurves shown = curves;
        grid(pen);
        if (shown != null) {
            mostInk = 1.05
                    * shown.plate().stream()
                            .mapToDouble(ToneCurves.Point::out)
                            .max()
                            .orElse(1);
            room = new LabelPlaces();
            limits(pen, shown);
            curves(pen, shown);
            measured(pen, shown);
            ToneAt followed = tone;
            if (followed != null) {
                follow(pen, followed);
            }
            limitNames(pen, shown);
        }
        names(pen);
        if (isFocused()) {
            pen.setStroke(light.copper());
            pen.setLineWidth(2);
            pen.strokeRect(1, 1, canvas.getWidth() - 2, canvas.getHeight() - 2);
        }
    }

    /** What a test plate measured, each with its band: crosses, so that they are told from the curve by shape. */
    private void measured(GraphicsContext pen, ToneCurves shown) {
        pen.setStroke(light.ink());
        pen.setLineWidth(1);
        for (ToneCurves.Measured point : shown.measured()) {
            double x = left(point.inkMicrometres());
            double y = up(point.lightness());
            double half = side * point.halfWidth() / 100;
            pen.strokeLine(x, y - half, x, y + half);
            pen.strokeLine(x - 2, y - half, x + 2, y - half);
            pen.strokeLine(x - 2, y + half, x + 2, y + half);
            pen.strokeLine(x - 3, y - 3, x + 3, y + 3);
            pen.strokeLine(x - 3, y + 3, x + 3, y - 3);
        }
    }

    private void grid(GraphicsContext pen) {
        pen.setStroke(light.faint());
        pen.setLineWidth(1);
        for (int i = -4; i <= 4; i++) {
            double at = side * i / 4;
            pen.strokeLine(middleX + at, middleY - side, middleX + at, middleY + side);
            pen.strokeLine(middleX - side, middleY + at, middleX + side, middleY + at);
        }
        pen.setStroke(light.quiet());
        pen.strokeLine(middleX - side, middleY, middleX + side, middleY);
        pen.strokeLine(middleX, middleY - side, middleX, middleY + side);
    }

    private void names(GraphicsContext pen) {
        pen.setFont(Font.font(LETTER));
        pen.setFill(light.quiet());
        pen.setTextBaseline(VPos.CENTER);
        pen.setTextAlign(TextAlignment.CENTER);
        pen.fillText("print L* \u2191", middleX, middleY - side - 10);
        pen.fillText("\u2193 black on the film", middleX, middleY + side + 10);
        turned(pen, middleX - side - 11, "ink \u2191");
        turned(pen, middleX + side + 11, "art L* \u2193");
    }

    private void turned(GraphicsContext pen, double x, String words) {
        pen.save();
        pen.translate(x, middleY);
        pen.rotate(-90);
        pen.fillText(words, 0, 0);
        pen.restore();
    }

    private double right(double artLightness) {
        return middleX + side * artLightness / 100;
    }

    private double up(double printLightness) {
        return middleY - side * printLightness / 100;
    }

    private double down(double coverage) {
        return middleY + side * coverage;
    }

    private double left(double ink) {
        return middleX - side * ink / mostInk;
    }

    /** The turning point, a dashed line; the darkest print, a dotted one. */
    private void limits(GraphicsContext pen, ToneCurves shown) {
        pen.setLineWidth(1);
        if (shown.turningCoverage() < 1) {
            double y = down(shown.turningCoverage());
            pen.setStroke(light.copper());
            pen.setLineDashes(5, 4);
            pen.strokeLine(middleX - side, y, middleX + side, y);
        }
        double y = up(shown.darkestLightness());
        pen.setStroke(light.quiet());
        pen.setLineDashes(1, 3);
        pen.strokeLine(middleX - side, y, middleX + side, y);
        pen.setLineDashes();
        usable(pen, shown);
    }

    /** What the film may use and the print then reaches: bars along the axis of black and along that of the print. */
    private void usable(GraphicsContext pen, ToneCurves shown) {
        pen.setStroke(light.copper());
        pen.setLineWidth(3);
        room.line(middleX, middleY - side, middleX, middleY + side);
        room.line(middleX - side, middleY, middleX + side, middleY);
        pen.strokeLine(middleX, down(shown.leastCoverage()), middleX, down(shown.turningCoverage()));
        pen.strokeLine(middleX, up(shown.lightestLightness()), middleX, up(shown.darkestLightness()));
    }

    /** Names of the two lines, over whatever curve runs there. */
    private void limitNames(GraphicsContext pen, ToneCurves shown) {
        if (shown.turningCoverage() < 1) {
            label(
                    pen,
                    String.format(Locale.ROOT, "turns at %.0f %%", 100 * shown.turningCoverage()),
                    down(shown.turningCoverage()),
                    light.copper());
        }
        label(
                pen,
                String.format(Locale.ROOT, "darkest %.0f", shown.darkestLightness()),
                up(shown.darkestLightness()),
                light.quiet());
    }

    /** A line's name, above or below it at either end or within, wherever neither a curve nor another name runs. */
    private void label(GraphicsContext pen, String words, double y, Color colour) {
        Text measured = new Text(words);
        measured.setFont(Font.font(LETTER));
        double width = measured.getLayoutBounds().getWidth() + 6;
        double height = LETTER + 3;
        List<Viewport.Area> candidates = new ArrayList<>();
        for (double left = middleX + side - width - 1; left >= middleX - side + 1; left -= 8) {
            for (double top : new double[] {y - height - 2, y + 3}) {
                if (top > middleY - side && top + height < middleY + side) {
                    candidates.add(new Viewport.Area(left, top, width, height));
                }
            }
        }
        Viewport.Area at = candidates.isEmpty()
                ? new Viewport.Area(middleX + side - width - 1, y - height - 2, width, height)
                : room.place(candidates);
        pen.setFill(light.panel());
        pen.fillRect(at.left(), at.top(), at.width(), at.height());
        pen.setFont(Font.font(LETTER));
        pen.setTextAlign(TextAlignment.LEFT);
        pen.setTextBaseline(VPos.CENTER);
        pen.setFill(colour);
        pen.fillText(words, at.left() + 3, at.top() + height / 2);
    }

    private interface Place {
        double[] of(ToneCurves.Point point);
    }

    private void curves(GraphicsContext pen, ToneCurves shown) {
        pen.setStroke(light.rule());
        pen.setLineWidth(5);
        line(pen, shown.wish(), point -> new double[] {right(point.in()), up(point.out())});
        pen.setStroke(light.ink());
        pen.setLineWidth(1.75);
        line(pen, shown.film(), point -> new double[] {right(point.in()), down(point.out())});
        line(pen, shown.print(), point -> new double[] {right(point.in()), up(point.out())});
        // Past the turning point ink and print go back over themselves: dashed, since no tone uses it.
        List<ToneCurves.Point> used = new ArrayList<>();
        List<ToneCurves.Point> past = new ArrayList<>();
        List<ToneCurves.Point> usedInk = new ArrayList<>();
        List<ToneCurves.Point> pastInk = new ArrayList<>();
        for (int i = 0; i < shown.plate().size(); i++) {
            boolean before = shown.plate().get(i).in() <= shown.turningCoverage();
            (before ? used : past).add(shown.plate().get(i));
            (before ? usedInk : pastInk).add(shown.ink().get(i));
        }
        line(pen, used, point -> new double[] {left(point.out()), down(point.in())});
        line(pen, usedInk, point -> new double[] {left(point.in()), up(point.out())});
        pen.setLineDashes(3, 3);
        line(pen, past, point -> new double[] {left(point.out()), down(point.in())});
        line(pen, pastInk, point -> new double[] {left(point.in()), up(point.out())});
        pen.setLineDashes();
    }

    private void line(GraphicsContext pen, List<ToneCurves.Point> points, Place place) {
        pen.beginPath();
        double[] before = null;
        for (int i = 0; i < points.size(); i++) {
            double[] at = place.of(points.get(i));
            if (before != null) {
                room.line(before[0], before[1], at[0], at[1]);
            }
            before = at;
            if (i == 0) {
                pen.moveTo(at[0], at[1]);
            } else {
                pen.lineTo(at[0], at[1]);
            }
        }
        pen.stroke();
    }

    private void follow(GraphicsContext pen, ToneAt followed) {
        double[] xs = {
            right(followed.artLightness()),
            left(followed.inkMicrometres()),
            left(followed.inkMicrometres()),
            right(followed.artLightness())
        };
        double[] ys = {
            down(followed.coverage()),
            down(followed.coverage()),
            up(followed.printLightness()),
            up(followed.printLightness())
        };
        pen.setStroke(light.copper());
        pen.setLineWidth(1.5);
        pen.strokePolygon(xs, ys, 4);
        for (int i = 0; i < 4; i++) {
            room.line(xs[i], ys[i], xs[(i + 1) % 4], ys[(i + 1) % 4]);
        }
        for (int i = 0; i < 4; i++) {
            pen.setFill(light.safe() ? light.bench() : Color.WHITE);
            pen.fillOval(xs[i] - 3.5, ys[i] - 3.5, 7, 7);
            pen.strokeOval(xs[i] - 3.5, ys[i] - 3.5, 7, 7);
        }
    }
}
