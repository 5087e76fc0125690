package greyground.desk.picture;

import greyground.app.live.HandTones;
import greyground.app.live.ToneCounts;
import greyground.app.live.ToneCurves.Point;
import greyground.desk.look.Drawn;
import greyground.desk.look.Freshness;
import greyground.desk.look.Pen;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.scene.Cursor;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.text.TextAlignment;
import org.jspecify.annotations.Nullable;

/**
 * The tones of a station, how many of each. At the art, its black and white are grips to be pulled, and a curve between them takes points:
 * press on it for a new one, pull it, pull it out to be rid of it.
 */
public final class HistogramView extends Drawn {
    private static final double EDGE = 16;
    private static final double FOOT = 24;
    private static final double REACH = 10;

    /** Two points closer than that can't be told apart, in L*. */
    private static final double APART = 2;

    private static final int BLACK = -1;
    private static final int WHITE = -2;
    private static final int NONE = -3;

    private final Pulled pulled;
    private final Freshness freshness = new Freshness(canvas::setOpacity);
    private @Nullable ToneCounts counts;
    private @Nullable HandTones hand;
    private List<Point> points = List.of();
    private int held = NONE;
    private boolean away;

    /** Hears what is pulled. */
    public interface Pulled {
        /** The art's white, as linear luminance. */
        void white(double luminance);

        /** The art's black, as linear luminance. */
        void black(double luminance);

        /** Points of the curve, from dark to light, 0 to 100 both ways. */
        void points(List<Point> told);

        /** The hand has let go. */
        void letGo();
    }

    public HistogramView(Pulled pulled) {
        super("histogram");
        this.pulled = pulled;
        getChildren().add(canvas);
        setMinWidth(200);
        setAccessibleText("Histogram");
        setAccessibleHelp("At the art, left and right choose black, a point of the curve or white;"
                + " plus and minus move it, Insert adds a point, Delete takes it away");
        setOnMousePressed(this::press);
        setOnMouseDragged(this::drag);
        setOnMouseReleased(released -> release());
        setOnMouseMoved(over -> setCursor(at(over) == NONE && !onCurve(over) ? Cursor.DEFAULT : Cursor.HAND));
        setOnKeyPressed(this::key);
    }

    /**
     * Shows the tones of a station.
     *
     * @param grips null at other stations than the art
     */
    public void show(@Nullable ToneCounts seen, @Nullable HandTones grips) {
        freshness.fresh();
        counts = seen;
        hand = grips;
        if (grips == null || held == NONE) {
            points = grips == null ? List.of() : grips.points();
        }
        if (grips == null || held >= points.size()) {
            held = NONE;
        }
        draw();
    }

    /** Whether any tones are seen. */
    public boolean isPresent() {
        return counts != null;
    }

    /** Something has changed: what is seen is of before. */
    public void stale() {
        freshness.stale();
    }

    // ------------------------------------------------------------------ places

    private double x(double artLightness) {
        return EDGE + (canvas.getWidth() - 2 * EDGE) * artLightness / 100;
    }

    private double lightness(double x) {
        return 100 * (x - EDGE) / (canvas.getWidth() - 2 * EDGE);
    }

    private double y(double wished) {
        return canvas.getHeight() - FOOT - (canvas.getHeight() - FOOT - EDGE) * wished / 100;
    }

    private double wished(double y) {
        return 100 * (canvas.getHeight() - FOOT - y) / (canvas.getHeight() - FOOT - EDGE);
    }

    private int at(MouseEvent event) {
        HandTones grips = hand;
        if (grips == null) {
            return NONE;
        }
        for (int i = 0; i < points.size(); i++) {
            double px = x(grips.artLightness(points.get(i).in()));
            if (Math.hypot(event.getX() - px, event.getY() - y(points.get(i).out())) < REACH) {
                return i;
            }
        }
        boolean low = event.getY() > canvas.getHeight() - FOOT - REACH;
        if (low && Math.abs(event.getX() - x(grips.white())) < REACH) {
            return WHITE;
        }
        return low && Math.abs(event.getX() - x(grips.black())) < REACH ? BLACK : NONE;
    }

    private boolean onCurve(MouseEvent event) {
        HandTones grips = hand;
        if (grips == null) {
            return false;
        }
        double share = grips.share(lightness(event.getX()));
        int near = (int) Math.round(share);
        return near > 0
                && near < 100
                && Math.abs(event.getY() - y(grips.curve().get(near).out())) < REACH;
    }

    // ------------------------------------------------------------------ the hand

    private void press(MouseEvent event) {
        requestFocus();
        HandTones grips = hand;
        held = at(event);
        away = false;
        if (held == NONE && grips != null && onCurve(event)) {
            held = add(Math.rint(grips.share(lightness(event.getX()))), Math.rint(wished(event.getY())));
        }
        draw();
    }

    /** Puts a point in its place in the order; returns its index, or {@link #NONE} where another is too near. */
    private int add(double in, double out) {
        if (points.stream().anyMatch(point -> Math.abs(point.in() - in) < APART)) {
            return NONE;
        }
        List<Point> more = new ArrayList<>(points);
        int index = (int) points.stream().filter(point -> point.in() < in).count();
        more.add(index, held(more, index, in, out, false));
        points = List.copyOf(more);
        pulled.points(points);
        return index;
    }

    /** A point that keeps between its neighbours. */
    private static Point held(List<Point> among, int index, double in, double out, boolean itself) {
        int next = itself ? index + 1 : index;
        double leastIn = index > 0 ? among.get(index - 1).in() + APART : 0;
        double mostIn = next < among.size() ? among.get(next).in() - APART : 100;
        double leastOut = index > 0 ? among.get(index - 1).out() : 0;
        double mostOut = next < among.size() ? among.get(next).out() : 100;
        return new Point(
                Math.max(leastIn, Math.min(mostIn, Math.rint(in))),
                Math.max(leastOut, Math.min(mostOut, Math.rint(out))));
    }

    private void drag(MouseEvent event) {
        HandTones grips = hand;
        if (grips == null || held == NONE) {
            return;
        }
        double tone = lightness(event.getX());
        if (held >= 0) {
            away = event.getY() < -EDGE || event.getY() > canvas.getHeight() + EDGE;
            move(held, grips.share(tone), wished(event.getY()));
        } else {
            pull(grips, tone);
        }
    }

    private void move(int index, double in, double out) {
        List<Point> moved = new ArrayList<>(points);
        moved.set(index, held(moved, index, in, out, true));
        if (!moved.equals(points)) {
            points = List.copyOf(moved);
            pulled.points(points);
            draw();
        }
    }

    /** Pulls the art's white or black, which never pass each other. */
    private void pull(HandTones grips, double tone) {
        if (held == WHITE) {
            pulled.white(HandTones.luminance(Math.max(grips.black() + APART, Math.min(100, tone))));
        } else {
            pulled.black(HandTones.luminance(Math.max(0, Math.min(grips.white() - APART, tone))));
        }
    }

    private void release() {
        if (held >= 0 && away) {
            remove(held);
        }
        if (held != NONE) {
            pulled.letGo();
        }
    }

    private void remove(int index) {
        List<Point> fewer = new ArrayList<>(points);
        fewer.remove(index);
        points = List.copyOf(fewer);
        held = NONE;
        pulled.points(points);
        draw();
    }

    private void key(KeyEvent event) {
        HandTones grips = hand;
        if (grips == null || event.isShortcutDown() || event.isAltDown()) {
            return;
        }
        double step = event.isShiftDown() ? 5 : 1;
        switch (event.getCode()) {
            case RIGHT -> held = next();
            case LEFT -> held = held == WHITE ? points.size() - 1 : held <= 0 ? BLACK : held - 1;
            case PLUS, ADD, EQUALS, UP -> nudge(grips, step);
            case MINUS, SUBTRACT, DOWN -> nudge(grips, -step);
            case INSERT -> held = add(50, grips.curve().get(50).out());
            case DELETE, BACK_SPACE -> {
                if (held >= 0) {
                    remove(held);
                }
            }
            default -> {
                return;
            }
        }
        if (held == NONE && event.getCode().isArrowKey()) {
            held = BLACK;
        }
        event.consume();
        draw();
    }

    private int next() {
        if (held == NONE) {
            return BLACK;
        }
        int following = held == BLACK ? 0 : held + 1;
        return held == WHITE || following >= points.size() ? WHITE : following;
    }

    private void nudge(HandTones grips, double by) {
        if (held >= 0) {
            move(held, points.get(held).in(), points.get(held).out() + by);
        } else if (held != NONE) {
            pull(grips, (held == WHITE ? grips.white() : grips.black()) + by);
        }
    }

    // ------------------------------------------------------------------ drawing

    @Override
    protected void draw(Pen pen) {
        ToneCounts seen = counts;
        double foot = canvas.getHeight() - FOOT;
        pen.stroke(light.rule(), 1);
        pen.line(EDGE, foot + 0.5, canvas.getWidth() - EDGE, foot + 0.5);
        if (seen == null) {
            return;
        }
        double most = seen.shares().stream()
                .sorted(java.util.Comparator.reverseOrder())
                .skip(1)
                .findFirst()
                .orElse(1.0);
        double width = (canvas.getWidth() - 2 * EDGE) / (ToneCounts.STEPS - 1);
        for (int i = 0; i < seen.shares().size(); i++) {
            double height = (foot - EDGE) * Math.min(1, seen.shares().get(i) / Math.max(1e-9, most));
            pen.fill(light.rule(), x(i) - width / 2, foot - height, Math.max(1, width - 0.5), height);
        }
        pen.words(seen.first(), EDGE, foot + 13, TextAlignment.LEFT, light.quiet());
        pen.words(seen.last(), canvas.getWidth() - EDGE, foot + 13, TextAlignment.RIGHT, light.quiet());
        HandTones grips = hand;
        if (grips != null) {
            drawHand(pen, grips, foot);
        }
    }

    private void drawHand(Pen pen, HandTones grips, double foot) {
        double[] xs = new double[grips.curve().size()];
        double[] ys = new double[xs.length];
        for (int i = 0; i < xs.length; i++) {
            xs[i] = x(grips.artLightness(grips.curve().get(i).in()));
            ys[i] = y(grips.curve().get(i).out());
        }
        pen.stroke(light.ink(), 1.75);
        pen.curve(xs, ys);
        grip(pen, x(grips.black()), foot, held == BLACK, "black", grips.black());
        grip(pen, x(grips.white()), foot, held == WHITE, "white", grips.white());
        for (int i = 0; i < points.size(); i++) {
            double px = x(grips.artLightness(points.get(i).in()));
            double py = y(points.get(i).out());
            pen.stroke(light.copper(), 2);
            pen.ring(px, py, i == held ? 6 : 4, i == held ? light.copper() : light.field());
        }
    }

    private void grip(Pen pen, double x, double foot, boolean taken, String name, double lightness) {
        pen.stroke(light.copper(), taken ? 2.5 : 1.25);
        pen.line(x, EDGE - 8, x, foot);
        pen.context().setFill(light.copper());
        double size = taken ? 8 : 6;
        pen.context().fillPolygon(new double[] {x, x - size, x + size}, new double[] {foot - 8, foot + 3, foot + 3}, 3);
        String words = String.format(Locale.ROOT, "%s %.0f", name, lightness);
        boolean right = name.equals("white");
        double half = Pen.width(words) + 10;
        boolean turned = right ? x + half > canvas.getWidth() - EDGE : x - half < EDGE;
        pen.words(
                words,
                right != turned ? x + 5 : x - 5,
                EDGE - 4,
                right != turned ? TextAlignment.LEFT : TextAlignment.RIGHT,
                light.copper());
    }
}
