package greyground.desk.look;

import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;

/** Draws by hand in the window's colours. Nothing is told by colour alone. */
public final class Pen {
    public static final double LETTER = 13;

    /** The window's face, which the style sheet names too. */
    private static final Font FACE = face();

    private final Canvas canvas;
    private final GraphicsContext context;
    private final RoomLight light;

    /** A pen on a canvas that is wiped clean. */
    Pen(Canvas canvas, RoomLight light) {
        this.canvas = canvas;
        this.context = canvas.getGraphicsContext2D();
        this.light = light;
        context.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        context.setFont(FACE);
        context.setLineDashes();
    }

    private static Font face() {
        Font face = Font.loadFont(
                Pen.class.getResourceAsStream("/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf"), LETTER);
        return face == null ? Font.font(LETTER) : face;
    }

    /** What else it can draw. */
    public GraphicsContext context() {
        return context;
    }

    public static double width(String words) {
        Text measured = new Text(words);
        measured.setFont(FACE);
        return measured.getLayoutBounds().getWidth();
    }

    /** How lines are drawn from here on. */
    public void stroke(Color colour, double weight, double... dashes) {
        context.setStroke(colour);
        context.setLineWidth(weight);
        context.setLineDashes(dashes);
    }

    public void line(double fromX, double fromY, double toX, double toY) {
        context.strokeLine(fromX, fromY, toX, toY);
    }

    /** Words on a middle line. */
    public void words(String words, double x, double y, TextAlignment align, Color colour) {
        context.setFill(colour);
        context.setTextAlign(align);
        context.setTextBaseline(VPos.CENTER);
        context.fillText(words, x, y);
    }

    /** Words that run upwards from a place, or about it. */
    public void wordsUp(String words, double x, double y, TextAlignment align, Color colour) {
        context.save();
        context.translate(x, y);
        context.rotate(-90);
        words(words, 0, 0, align, colour);
        context.restore();
    }

    public void fill(Color colour, double left, double top, double width, double height) {
        context.setFill(colour);
        context.fillRect(left, top, width, height);
    }

    public void ring(double x, double y, double radius, Color inside) {
        context.setFill(inside);
        context.fillOval(x - radius, y - radius, 2 * radius, 2 * radius);
        context.strokeOval(x - radius, y - radius, 2 * radius, 2 * radius);
    }

    public void cross(double x, double y, double arm) {
        line(x - arm, y - arm, x + arm, y + arm);
        line(x - arm, y + arm, x + arm, y - arm);
    }

    /** A curve through points; {@code xs} and {@code ys} are as long as each other. */
    public void curve(double[] xs, double[] ys) {
        context.strokePolyline(xs, ys, xs.length);
    }

    /** A line that shows on light and on dark. */
    public void onAnything(Color colour, double weight, Runnable line, double... dashes) {
        stroke(Color.color(1, 1, 1, light.safe() ? 0 : 0.75), 3);
        line.run();
        stroke(colour, weight, dashes);
        line.run();
        context.setLineDashes();
    }

    /** The frame of what has the keys. */
    public void frame() {
        stroke(light.copper(), 2);
        context.strokeRect(1, 1, canvas.getWidth() - 2, canvas.getHeight() - 2);
    }
}
