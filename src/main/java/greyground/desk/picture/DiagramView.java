package greyground.desk.picture;

import greyground.app.live.ToneAt;
import greyground.app.live.ToneCurves;
import greyground.desk.look.Drawn;
import greyground.desk.look.Freshness;
import greyground.desk.look.Pen;
import greyground.desk.model.LabelPlaces;
import greyground.desk.model.Viewport;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;
import javafx.scene.input.KeyEvent;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;
import org.jspecify.annotations.Nullable;

/**
 * The four-quadrant diagram of tone (after L. A. Jones): art to the right, black on the film down, ink in the plate to the left, print
 * up. The tone under the pointer goes round it.
 */
public final class DiagramView extends Drawn {
    private static final double LEAST_HEIGHT = 188;
    private static final double MOST_HEIGHT = 264;

    private @Nullable ToneCurves curves;
    private @Nullable ToneAt tone;
    private double side;
    private double middleX;
    private double middleY;
    private double mostInk;
    private LabelPlaces room = new LabelPlaces();
    private final Freshness freshness = new Freshness(canvas::setOpacity);
    private Consumer<ToneAt> walked = walkedTo -> {};

    public DiagramView() {
        super("diagram");
        getChildren().add(canvas);
        tall(MOST_HEIGHT);
        setAccessibleText("Tone diagram");
        setAccessibleHelp(
                "Left and right go from tone to tone, Page Up and Page Down in steps of ten, Home and End to the ends");
        setOnMousePressed(press -> requestFocus());
        setOnKeyPressed(this::key);
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

    /** Something has changed: the curves are of before. */
    public void stale() {
        freshness.stale();
    }

    public void show(@Nullable ToneCurves shown) {
        freshness.fresh();
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
    protected void draw(Pen pen) {
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
        pen.words("print L* \u2191", middleX, middleY - side - 10, TextAlignment.CENTER, light.quiet());
        pen.words("\u2193 black on the film", middleX, middleY + side + 10, TextAlignment.CENTER, light.quiet());
        pen.wordsUp("ink \u2191", middleX - side - 11, middleY, TextAlignment.CENTER, light.quiet());
        pen.wordsUp("art L* \u2193", middleX + side + 11, middleY, TextAlignment.CENTER, light.quiet());
    }

    /** What a test plate measured, each with its band: crosses, so that they are told from the curve by shape. */
    private void measured(Pen pen, ToneCurves shown) {
        pen.stroke(light.ink(), 1);
        for (ToneCurves.Measured point : shown.measured()) {
            double x = left(point.inkMicrometres());
            double y = up(point.lightness());
            double half = side * point.halfWidth() / 100;
            pen.line(x, y - half, x, y + half);
            pen.line(x - 2, y - half, x + 2, y - half);
            pen.line(x - 2, y + half, x + 2, y + half);
            pen.cross(x, y, 3);
        }
    }

    private void grid(Pen pen) {
        pen.stroke(light.faint(), 1);
        for (int i = -4; i <= 4; i++) {
            double at = side * i / 4;
            pen.line(middleX + at, middleY - side, middleX + at, middleY + side);
            across(pen, middleY + at);
        }
        pen.stroke(light.quiet(), 1);
        across(pen, middleY);
        pen.line(middleX, middleY - side, middleX, middleY + side);
    }

    private void across(Pen pen, double y) {
        pen.line(middleX - side, y, middleX + side, y);
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

    /**
     * The turning point, a dashed line; the darkest print, a dotted one; and what the film may use and the print then reaches, bars along
     * the axis of black and along that of the print.
     */
    private void limits(Pen pen, ToneCurves shown) {
        if (shown.turningCoverage() < 1) {
            pen.stroke(light.copper(), 1, 5, 4);
            across(pen, down(shown.turningCoverage()));
        }
        pen.stroke(light.quiet(), 1, 1, 3);
        across(pen, up(shown.darkestLightness()));
        pen.stroke(light.copper(), 3);
        pen.line(middleX, down(shown.leastCoverage()), middleX, down(shown.mostCoverage()));
        pen.line(middleX, up(shown.lightestLightness()), middleX, up(shown.darkestLightness()));
        room.line(middleX, middleY - side, middleX, middleY + side);
        room.line(middleX - side, middleY, middleX + side, middleY);
    }

    /** Names of the two lines, over whatever curve runs there. */
    private void limitNames(Pen pen, ToneCurves shown) {
        if (shown.turningCoverage() < 1) {
            String turns = shown.mostCoverage() < shown.turningCoverage()
                    ? String.format(
                            Locale.ROOT,
                            "paler above %.0f %%, used to %.0f",
                            100 * shown.turningCoverage(),
                            100 * shown.mostCoverage())
                    : String.format(Locale.ROOT, "paler above %.0f %%", 100 * shown.turningCoverage());
            label(pen, turns, down(shown.turningCoverage()), light.copper());
        }
        String darkest = String.format(Locale.ROOT, "darkest %.0f", shown.darkestLightness());
        label(pen, darkest, up(shown.darkestLightness()), light.quiet());
    }

    /** A line's name, above or below it at either end or within, wherever neither a curve nor another name runs. */
    private void label(Pen pen, String words, double y, Color colour) {
        double width = Pen.width(words) + 6;
        double height = Pen.LETTER + 3;
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
        pen.fill(light.panel(), at.left(), at.top(), at.width(), at.height());
        pen.words(words, at.left() + 3, at.top() + height / 2, TextAlignment.LEFT, colour);
    }

    private void curves(Pen pen, ToneCurves shown) {
        pen.stroke(light.rule(), 5);
        line(pen, shown.wish(), this::right, this::up);
        pen.stroke(light.ink(), 1.75);
        line(pen, shown.film(), this::right, this::down);
        line(pen, shown.print(), this::right, this::up);
        // Past the turning point ink and print go back over themselves: dashed, since no tone uses it.
        int used = (int) shown.plate().stream()
                .filter(point -> point.in() <= shown.turningCoverage())
                .count();
        int all = shown.plate().size();
        plate(pen, shown, 0, used);
        pen.stroke(light.ink(), 1.75, 3, 3);
        plate(pen, shown, used, all);
    }

    /** Ink for the film's black, and print for ink, of some of the plate's points. */
    private void plate(Pen pen, ToneCurves shown, int from, int to) {
        List<ToneCurves.Point> inked = shown.plate().subList(from, to).stream()
                .map(point -> new ToneCurves.Point(point.out(), point.in()))
                .toList();
        line(pen, inked, this::left, this::down);
        line(pen, shown.ink().subList(from, to), this::left, this::up);
    }

    private void line(Pen pen, List<ToneCurves.Point> points, DoubleUnaryOperator across, DoubleUnaryOperator down) {
        double[] xs = points.stream()
                .mapToDouble(point -> across.applyAsDouble(point.in()))
                .toArray();
        double[] ys = points.stream()
                .mapToDouble(point -> down.applyAsDouble(point.out()))
                .toArray();
        pen.curve(xs, ys);
        for (int i = 1; i < xs.length; i++) {
            room.line(xs[i - 1], ys[i - 1], xs[i], ys[i]);
        }
    }

    private void follow(Pen pen, ToneAt followed) {
        double right = right(followed.artLightness());
        double left = left(followed.inkMicrometres());
        double down = down(followed.coverage());
        double up = up(followed.printLightness());
        double[] xs = {right, left, left, right, right};
        double[] ys = {down, down, up, up, down};
        pen.stroke(light.copper(), 1.5);
        pen.curve(xs, ys);
        for (int i = 0; i < 4; i++) {
            room.line(xs[i], ys[i], xs[i + 1], ys[i + 1]);
            pen.ring(xs[i], ys[i], 3.5, light.safe() ? light.bench() : Color.WHITE);
        }
    }
}
