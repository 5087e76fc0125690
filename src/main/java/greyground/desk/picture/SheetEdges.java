package greyground.desk.picture;

import greyground.app.live.SheetOutline;
import greyground.app.live.SheetOutline.Edge;
import greyground.desk.look.Light;
import greyground.desk.model.Viewport;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;

/** The edges of a film sheet, each with a stroke of its own, and a key that tells them apart. */
final class SheetEdges {
    private static final int RULER = PictureView.RULER;
    private static final double LINE = 20;
    private static final double SAMPLE = 24;

    private final GraphicsContext pen;
    private final Light light;

    SheetEdges(GraphicsContext pen, Light light) {
        this.pen = pen;
        this.light = light;
    }

    void draw(Viewport port, List<SheetOutline> edges) {
        Map<Edge, SheetOutline> known = new EnumMap<>(Edge.class);
        pen.save();
        pen.beginPath();
        pen.rect(RULER, RULER, port.width(), port.height());
        pen.clip();
        int films = 0;
        for (SheetOutline each : edges) {
            known.putIfAbsent(each.edge(), each);
            double left = Math.rint(RULER + port.pixelX(each.left())) - 0.5;
            double top = Math.rint(RULER + port.pixelY(each.top())) - 0.5;
            double width = Math.rint(each.width() / port.perPixel()) + 1;
            double height = Math.rint(each.height() / port.perPixel()) + 1;
            stroke(each.edge(), () -> pen.strokeRect(left, top, width, height));
            if (each.edge() == Edge.TILE) {
                films++;
                pen.setFill(light.copper());
                pen.setTextAlign(TextAlignment.LEFT);
                pen.setTextBaseline(VPos.TOP);
                pen.setFont(Font.font(13));
                pen.fillText("film " + films, left + 4, top + 4);
            }
        }
        pen.restore();
        key(port, known);
    }

    private void stroke(Edge edge, Runnable line) {
        pen.setLineDashes();
        if (edge != Edge.SHEET) {
            pen.setStroke(Color.color(1, 1, 1, light.safe() ? 0 : 0.75));
            pen.setLineWidth(3);
            line.run();
        }
        pen.setStroke(edge == Edge.SHEET ? light.quiet() : edge == Edge.PLATE ? light.copper() : light.ink());
        pen.setLineWidth(edge == Edge.PLATE ? 1.5 : 1);
        pen.setLineDashes(dashes(edge));
        line.run();
        pen.setLineDashes();
    }

    private static double[] dashes(Edge edge) {
        return switch (edge) {
            case SHEET, PLATE -> new double[0];
            case BLEED -> new double[] {1.5, 3};
            case BEVEL -> new double[] {6, 4};
            case TILE -> new double[] {10, 3, 2, 3};
        };
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
        pen.setFont(Font.font(13));
        double width = 8 + known.keySet().stream().mapToDouble(SheetEdges::room).sum();
        double left = RULER + 8;
        double top = RULER + port.height() - LINE - 4;
        pen.setFill(light.panel());
        pen.fillRect(left, top, width, LINE);
        pen.setTextAlign(TextAlignment.LEFT);
        pen.setTextBaseline(VPos.CENTER);
        double x = left + 8;
        double y = Math.rint(top + LINE / 2) + 0.5;
        for (Edge edge : known.keySet()) {
            double from = x;
            stroke(edge, () -> pen.strokeLine(from, y, from + SAMPLE, y));
            pen.setFill(light.ink());
            pen.fillText(words(edge), from + SAMPLE + 6, y);
            x += room(edge);
        }
    }

    private static double room(Edge edge) {
        Text measured = new Text(words(edge));
        measured.setFont(Font.font(13));
        return SAMPLE + 6 + Math.ceil(measured.getLayoutBounds().getWidth()) + 16;
    }
}
