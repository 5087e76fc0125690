package greyground.desk.picture;

import greyground.app.live.SheetOutline;
import greyground.app.live.SheetOutline.Edge;
import greyground.desk.look.Pen;
import greyground.desk.look.RoomLight;
import greyground.desk.model.Viewport;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.text.TextAlignment;

/** The edges of a film sheet, each with a stroke of its own, and a key that tells them apart. */
final class SheetEdges {
    private static final double LINE = 20;
    private static final double SAMPLE = 24;

    private final Pen pen;
    private final RoomLight light;

    SheetEdges(Pen pen, RoomLight light) {
        this.pen = pen;
        this.light = light;
    }

    void draw(Viewport port, List<SheetOutline> edges) {
        Map<Edge, SheetOutline> known = new EnumMap<>(Edge.class);
        GraphicsContext window = pen.context();
        window.save();
        window.beginPath();
        window.rect(0, 0, port.width(), port.height());
        window.clip();
        int films = 0;
        for (SheetOutline each : edges) {
            known.putIfAbsent(each.edge(), each);
            double left = Math.rint(port.pixelX(each.left())) - 0.5;
            double top = Math.rint(port.pixelY(each.top())) - 0.5;
            double width = Math.rint(each.width() / port.perPixel()) + 1;
            double height = Math.rint(each.height() / port.perPixel()) + 1;
            stroke(each.edge(), () -> window.strokeRect(left, top, width, height));
            if (each.edge() == Edge.TILE) {
                films++;
                pen.words("film " + films, left + 4, top + 12, TextAlignment.LEFT, light.copper());
            }
        }
        window.restore();
        key(port, known);
    }

    private void stroke(Edge edge, Runnable line) {
        switch (edge) {
            case SHEET -> {
                pen.stroke(light.onSurround(), 1);
                line.run();
            }
            case PLATE -> pen.onAnything(light.copper(), 1.5, line);
            case BLEED -> pen.onAnything(light.ink(), 1, line, 1.5, 3);
            case BEVEL -> pen.onAnything(light.ink(), 1, line, 6, 4);
            case TILE -> pen.onAnything(light.ink(), 1, line, 10, 3, 2, 3);
        }
    }

    private static String words(Edge edge) {
        return switch (edge) {
            case SHEET -> "sheet";
            case PLATE -> "plate's edge";
            case BLEED -> "end of bleed";
            case BEVEL -> "bevel begins";
            case TILE -> "separate films";
        };
    }

    /** In one line along the foot, where the sheet leaves room when it is seen whole. */
    private void key(Viewport port, Map<Edge, SheetOutline> known) {
        double width = 8 + known.keySet().stream().mapToDouble(SheetEdges::room).sum();
        double left = 8;
        // The line below is where the window says which place is pointed at.
        double top = port.height() - 2 * LINE - 20;
        pen.fill(light.panel(), left, top, width, LINE);
        double x = left + 8;
        double y = Math.rint(top + LINE / 2) + 0.5;
        for (Edge edge : known.keySet()) {
            double from = x;
            stroke(edge, () -> pen.line(from, y, from + SAMPLE, y));
            pen.words(words(edge), from + SAMPLE + 6, y, TextAlignment.LEFT, light.ink());
            x += room(edge);
        }
    }

    private static double room(Edge edge) {
        return SAMPLE + 6 + Math.ceil(Pen.width(words(edge))) + 16;
    }
}
